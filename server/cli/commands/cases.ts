/** `bellcrank cases`: the equilibrium of one car or set-up in every load case. */
import { type Command, Option } from "commander";
import { casesPage } from "../../views/cases-page.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import type { Ends } from "../ends.js";
import { noteErrors } from "../error-note.js";
import { casesCsv } from "../output/cases-csv.js";
import { casesJson } from "../output/cases-json.js";
import { pageText } from "../output/rates-text.js";
import { UsageError } from "../usage-error.js";
import { carOf, openPaths } from "../workspace.js";

type Car = Parameters<typeof casesPage>[0];

const outputs = {
  text: (car: Car) => pageText(casesPage(car)),
  json: casesJson,
  csv: casesCsv,
  markdown: (car: Car) => pageMarkdown(casesPage(car)),
} as const;

interface Options {
  readonly setup?: string;
  readonly format: keyof typeof outputs;
}

export function casesCommand(root: Command, ends: Ends): void {
  root
    .command("cases")
    .description("Ride heights, loads, travel left, forces and balance in every load case of one car or set-up.")
    .argument("<file>", "the file that declares the car or set-up")
    .option("--setup <name>", "which one, where the file declares several")
    .addOption(
      new Option("--format <format>", "how the figures are written").choices(Object.keys(outputs)).default("text"),
    )
    .addHelpText("after", "\nExample:\n  bellcrank cases samples/quill/dry.crank --format markdown")
    .action((path: string, options: Options) => {
      const [file] = openPaths([path]).files;
      if (file === undefined) throw new UsageError(`${path}: not a file`);
      const car = carOf(file, options.setup);
      if (car.cases.names.length === 0) throw new UsageError(`${car.model.setup ?? car.model.name} has no load case`);
      process.stdout.write(outputs[options.format](car));
      noteErrors(file, ends);
    });
}
