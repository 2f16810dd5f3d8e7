/** `bellcrank rates`: rates, sensitivities and leaks of one car or set-up. */
import { type Command, Option } from "commander";
import { ratesAt } from "../output/rates-at.js";
import { ratesCsv } from "../output/rates-csv.js";
import { ratesJson } from "../output/rates-json.js";
import { ratesText } from "../output/rates-text.js";
import { ratesMarkdown } from "../../views/rates-markdown.js";
import type { Ends } from "../ends.js";
import { noteErrors } from "../error-note.js";
import { UsageError } from "../usage-error.js";
import { carOf, openPaths } from "../workspace.js";

const outputs = { text: ratesText, json: ratesJson, csv: ratesCsv, markdown: ratesMarkdown } as const;

interface Options {
  readonly setup?: string;
  readonly at?: string;
  readonly format: keyof typeof outputs;
}

export function ratesCommand(root: Command, ends: Ends): void {
  root
    .command("rates")
    .description("Rates, motion in each mode and leaks at static trim, of one car or set-up.")
    .argument("<file>", "the file that declares the car or set-up")
    .option("--setup <name>", "which one, where the file declares several")
    .option("--at <case>", "rates and motions at the positions of a load case, instead of at rest")
    .addOption(
      new Option("--format <format>", "how the figures are written").choices(Object.keys(outputs)).default("text"),
    )
    .addHelpText("after", "\nExample:\n  bellcrank rates samples/quill/wet.crank --format markdown")
    .action((path: string, options: Options) => {
      const [file] = openPaths([path]).files;
      if (file === undefined) throw new UsageError(`${path}: not a file`);
      const car = carOf(file, options.setup);
      const { at, format } = options;
      process.stdout.write(at === undefined ? outputs[format](car) : ratesAt[format](car, at));
      noteErrors(file, ends);
    });
}
