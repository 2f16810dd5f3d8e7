/** `bellcrank curves`: force against deflection or speed of one element, and what it gives at the wheels over the travel. */
import { type Command, Option } from "commander";
import type { CheckedCar } from "../../findings/context.js";
import { curveSheet } from "../../views/curve-sheet.js";
import { elementsCalled, everyElement } from "../../views/subject.js";
import { curvesCsv } from "../output/curves-csv.js";
import { curvesJson } from "../output/curves-json.js";
import { curvesSvg } from "../output/curves-svg.js";
import { curvesText } from "../output/curves-text.js";
import { UsageError } from "../usage-error.js";
import { carOf, openFile } from "../workspace.js";

const outputs = { text: curvesText, csv: curvesCsv, json: curvesJson, svg: curvesSvg } as const;

interface Options {
  readonly element: string;
  readonly setup?: string;
  readonly format: keyof typeof outputs;
}

/** The element of that path; of a pair at the corners that is named without its side, the left one. */
function elementOf(car: CheckedCar, path: string) {
  const [found] = elementsCalled(car, path);
  if (found !== undefined) return found;
  const name = car.model.setup ?? car.model.name;
  const paths = everyElement(car).map(({ model }) => model.path);
  throw new UsageError(`${name} has no element "${path}"; it has ${paths.join(", ") || "none"}`);
}

export function curvesCommand(root: Command): void {
  root
    .command("curves")
    .description("Force against deflection or speed of one element, and its rate at the wheel over the travel.")
    .argument("<file>", "the file that declares the car or set-up")
    .requiredOption("--element <path>", "which element: front.third, front.left.side, pitch-line")
    .option("--setup <name>", "which car or set-up, where the file declares several")
    .addOption(
      new Option("--format <format>", "how the curves are written").choices(Object.keys(outputs)).default("text"),
    )
    .addHelpText(
      "after",
      "\nExample:\n  bellcrank curves samples/quill/quill.crank --element front.third --format svg > third.svg",
    )
    .action((path: string, options: Options) => {
      const { file } = openFile(path);
      const car = carOf(file, options.setup);
      const sheet = curveSheet(elementOf(car, options.element));
      if (sheet === undefined) throw new UsageError(`${options.element}: its axle is incomplete; see bellcrank check`);
      process.stdout.write(outputs[options.format](car.model, sheet));
    });
}
