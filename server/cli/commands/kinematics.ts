/** `bellcrank kinematics`: where wheels and elements are at each heave and roll. */
import { type Command, Option } from "commander";
import { gridOf } from "../grid.js";
import { kinematicsCsv } from "../output/kinematics-csv.js";
import { kinematicsJson } from "../output/kinematics-json.js";
import { kinematicsText } from "../output/kinematics-text.js";
import { UsageError } from "../usage-error.js";
import { carOf, openFile } from "../workspace.js";

const outputs = { text: kinematicsText, json: kinematicsJson, csv: kinematicsCsv } as const;

interface Options {
  readonly axle: "front" | "rear";
  readonly heave: string;
  readonly roll: string;
  readonly setup?: string;
  readonly format: keyof typeof outputs;
}

export function kinematicsCommand(root: Command): void {
  root
    .command("kinematics")
    .description("Wheel centre, camber, toe, rocker angle and every element's deflection, row by row.")
    .argument("<file>", "the file that declares the car or set-up")
    .addOption(new Option("--axle <axle>", "which axle").choices(["front", "rear"]).default("front"))
    .option("--heave <range>", "wheel travel of both wheels together, bump positive", "-30..25mm:12")
    .option("--roll <range>", "body roll against the axle, left side up positive", "0deg")
    .option("--setup <name>", "which car or set-up, where the file declares several")
    .addOption(
      new Option("--format <format>", "how the rows are written").choices(Object.keys(outputs)).default("text"),
    )
    .addHelpText(
      "after",
      "\nExample:\n  bellcrank kinematics samples/quill/quill.crank --axle front --heave -30..25mm:12 --roll -1..1deg:3",
    )
    .action((path: string, options: Options) => {
      const heaves = gridOf("--heave", options.heave, "length");
      const rolls = gridOf("--roll", options.roll, "angle");
      const { workspace, file } = openFile(path);
      const { model } = carOf(file, options.setup);
      if (model.axles[options.axle] === undefined)
        throw new UsageError(`${model.setup ?? model.name} has no ${options.axle} axle`);
      const rows = workspace.kinematics(model, options.axle, heaves, rolls);
      process.stdout.write(outputs[options.format](model, options.axle, rows));
    });
}
