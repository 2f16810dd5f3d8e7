/** `bellcrank weights`: masses and corner weights, and the turns that bring the cross weight to what is wanted. */
import { type Command, Option } from "commander";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { weightsPage } from "../../views/weights-page.js";
import type { Ends } from "../ends.js";
import { noteErrors } from "../error-note.js";
import { pageText } from "../output/rates-text.js";
import { weightsJson } from "../output/weights-json.js";
import { UsageError } from "../usage-error.js";
import { carOf, openPaths } from "../workspace.js";

const outputs = {
  text: (car: Parameters<typeof weightsPage>[0]) => pageText(weightsPage(car)),
  json: weightsJson,
  markdown: (car: Parameters<typeof weightsPage>[0]) => pageMarkdown(weightsPage(car)),
} as const;

interface Options {
  readonly setup?: string;
  readonly format: keyof typeof outputs;
}

export function weightsCommand(root: Command, ends: Ends): void {
  root
    .command("weights")
    .description("Masses and corner weights of one car or set-up; from `scales` the turns to the wanted cross weight.")
    .argument("<file>", "the file that declares the car or set-up")
    .option("--setup <name>", "which one, where the file declares several")
    .addOption(
      new Option("--format <format>", "how the figures are written").choices(Object.keys(outputs)).default("text"),
    )
    .addHelpText("after", "\nExample:\n  bellcrank weights samples/quill/wet.crank --format markdown")
    .action((path: string, options: Options) => {
      const [file] = openPaths([path]).files;
      if (file === undefined) throw new UsageError(`${path}: not a file`);
      const car = carOf(file, options.setup);
      process.stdout.write(outputs[options.format](car));
      noteErrors(file, ends);
    });
}
