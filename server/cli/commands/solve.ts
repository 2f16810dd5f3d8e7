/** `bellcrank solve`: which values, adjuster steps or parts meet what is expected of a car or set-up. */
import { type Command, Option } from "commander";
import { solveCar, type Vary } from "../../snapshot/solve.js";
import type { Ends } from "../ends.js";
import { exitCodes } from "../exit-codes.js";
import { solveOutputs } from "../output/solve.js";
import { UsageError } from "../usage-error.js";
import { variedPath, variedRange } from "../vary.js";
import { carOf, openFile } from "../workspace.js";

interface Options {
  readonly setup?: string;
  readonly vary: readonly string[];
  readonly meet: readonly string[];
  readonly format: keyof typeof solveOutputs;
}

const collect = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];

export function solveCommand(root: Command, ends: Ends): void {
  root
    .command("solve")
    .description("The values, adjuster steps and catalogue parts that meet what is expected of a car or set-up.")
    .argument("<file>", "the file that declares the car or set-up")
    .option("--setup <name>", "which one, where the file declares several")
    .addOption(
      new Option("--vary <path[=from..to]>", "what may change, as a set-up writes it; once for each")
        .argParser(collect)
        .makeOptionMandatory(),
    )
    .addOption(
      new Option("--meet <expectation>", "what has to hold, as it stands behind `expect`; once for each")
        .argParser(collect)
        .makeOptionMandatory(),
    )
    .addOption(
      new Option("--format <format>", "how the answer is written").choices(Object.keys(solveOutputs)).default("text"),
    )
    .addHelpText(
      "after",
      `
Exit code 1 where it cannot be met; the answer then says what comes nearest.

Examples:
  bellcrank solve samples/quill/quill.crank --vary front.third.rate --meet 'front.heave-rate between 165 and 170 N/mm'
  bellcrank solve samples/quill/quill.crank --vary front.third.rate=30..90N/mm --vary front.bar.fit \\
    --meet 'front.heave-rate above 175 N/mm' --meet 'load-transfer-front at hairpin between 46 and 47 %'`,
    )
    .action((path: string, { setup, vary, meet, format }: Options) => {
      const { file } = openFile(path);
      const car = carOf(file, setup);
      const found = solveCar(file, car, vary.map(askedOf), meet);
      if ("why" in found) throw new UsageError(found.why);
      process.stdout.write(solveOutputs[format](car, found, meet));
      if (!found.answer.isMet) ends(exitCodes.findings);
    });
}

function askedOf(text: string): Vary {
  const { path, rest } = variedPath(text);
  if (rest === undefined) return { path };
  const range = variedRange(rest);
  if (range === undefined || range.count !== undefined)
    throw new UsageError(`--vary "${text}": write a range with its unit, such as ${path}=40..80N/mm`);
  return { path, within: { low: range.from, high: range.to, unit: range.unit } };
}
