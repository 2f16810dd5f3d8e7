/** `bellcrank adjust`: what one step of each adjuster does to the car, and how far each keeps to what it is for. */
import { type Command, Option } from "commander";
import { adjustmentMatrix } from "../../snapshot/adjust.js";
import type { Ends } from "../ends.js";
import { noteErrors } from "../error-note.js";
import { adjustOutputs } from "../output/adjust.js";
import { carOf, openFile } from "../workspace.js";

interface Options {
  readonly setup?: string;
  readonly format: keyof typeof adjustOutputs;
}

export function adjustCommand(root: Command, ends: Ends): void {
  root
    .command("adjust")
    .description("One step of each adjuster against rates, damping, ride heights and balance of one car or set-up.")
    .argument("<file>", "the file that declares the car or set-up")
    .option("--setup <name>", "which one, where the file declares several")
    .addOption(
      new Option("--format <format>", "how the figures are written")
        .choices(Object.keys(adjustOutputs))
        .default("text"),
    )
    .addHelpText("after", "\nExample:\n  bellcrank adjust samples/quill/quill.crank")
    .action((path: string, { setup, format }: Options) => {
      const { file } = openFile(path);
      const car = carOf(file, setup);
      process.stdout.write(adjustOutputs[format](car, adjustmentMatrix(file, car)));
      noteErrors(file, ends);
    });
}
