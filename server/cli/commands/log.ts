/** `bellcrank log`: one value or figure through the history of a file. */
import { type Command, Option } from "commander";
import { historyOf } from "../comparing/history.js";
import { inWords } from "../comparing/in-words.js";
import { logCsv, logJson, logText } from "../output/log.js";
import { UsageError } from "../usage-error.js";

const outputs = { text: logText, csv: logCsv, json: logJson } as const;

interface Asked {
  readonly setup?: string;
  readonly max: string;
  readonly since?: string;
  readonly format: keyof typeof outputs;
}

export function logCommand(root: Command): void {
  root
    .command("log")
    .description("Follow one value or figure of a car through git history: which commit made it what it is.")
    .argument("<file>", "the file that declares the car or set-up, or FILE#NAME")
    .argument(
      "<path...>",
      "a property (front.third.rate) or a figure (front.heave-rate, front.ride-height at top-speed)",
    )
    .option("--setup <name>", "which one, where the file declares several")
    .option("--max <n>", "at most so many changes", "50")
    .option("--since <rev>", "only what came after that revision")
    .addOption(new Option("--format <format>", "how it is written").choices(Object.keys(outputs)).default("text"))
    .addHelpText(
      "after",
      `
Examples:
  bellcrank log samples/quill/quill.crank front.third.rate
  bellcrank log samples/quill/wet.crank front.ride-height at top-speed --format csv`,
    )
    .action((file: string, path: string[], { setup, max, since, format }: Asked) => {
      const most = Number(max);
      if (!Number.isInteger(most) || most < 1) throw new UsageError(`--max "${max}": a whole number above 0`);
      process.stdout.write(outputs[format](inWords(() => historyOf(file, path.join(" "), { setup, most, since }))));
    });
}
