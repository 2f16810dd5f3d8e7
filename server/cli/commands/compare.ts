/** `bellcrank compare`: what differs between two set-ups or versions, and what that does to the car. */
import { type Command, Option } from "commander";
import { reviewHtml } from "../../views/comparison/html.js";
import { reviewMarkdown } from "../../views/comparison/markdown.js";
import { compareRevisions } from "../comparing/between.js";
import type { Compared, CompareOptions } from "../comparing/compared.js";
import { inWords } from "../comparing/in-words.js";
import { shareOf } from "../comparing/threshold.js";
import { compareTwo, compareWithBase } from "../comparing/two.js";
import type { Ends } from "../ends.js";
import { exitCodes } from "../exit-codes.js";
import { compareGithub } from "../output/compare-github.js";
import { compareJson } from "../output/compare-json.js";
import { compareText } from "../output/compare-text.js";
import { writeText } from "../text-file.js";
import { UsageError } from "../usage-error.js";

interface Asked extends CompareOptions {
  readonly git?: readonly string[];
  readonly format: keyof typeof outputs;
  readonly output?: string;
  readonly threshold?: string;
  readonly full?: boolean;
  readonly detailedExitCode?: boolean;
}

const outputs = {
  text: (found: Compared, { full }: Asked) => compareText(found, full === true),
  markdown: ({ review }: Compared) => reviewMarkdown(review),
  json: compareJson,
  html: ({ review }: Compared) => reviewHtml(review),
  github: compareGithub,
} as const;

export function compareCommand(root: Command, ends: Ends): void {
  root
    .command("compare")
    .description("What differs between two set-ups or versions as resolved, and what that does to the car.")
    .argument("[operands...]", "OLD and NEW, or one set-up against its base: FILE, FILE#SETUP, REV:FILE")
    .option("--git <rev...>", "everything that changed since REV in the work tree, or between REV and REV")
    .option("--merge-base", "start from the merge base of the two (usual where CI is set)")
    .option("--no-merge-base", "start from the revision itself")
    .option("--setup <name>", "the car or set-up, on both sides")
    .addOption(new Option("--format <format>", "how it is written").choices(Object.keys(outputs)).default("text"))
    .option("--output <file>", "write it there instead")
    .option("--threshold <share>", "figures that move less are only counted", "0.5%")
    .option("--full", "in the terminal, also tell every figure of elements and wheels that moved")
    .option("--detailed-exit-code", "end with exit code 3 where anything differs")
    .option("--across-cars", "compare two cars of different names all the same")
    .option("--label-old <text>", "what the older side is called")
    .option("--label-new <text>", "what the newer side is called")
    .option("--name <path>", "the file that both operands are versions of: what it uses is found beside it")
    .addHelpText("after", examples)
    .action((operands: string[], asked: Asked) => {
      const found = inWords(() => compared(operands, asked));
      const text = outputs[asked.format](found, asked);
      if (asked.output === undefined) process.stdout.write(text);
      else writeText(asked.output, text);
      for (const trouble of found.troubles) process.stderr.write(`bellcrank: ${trouble}\n`);
      ends(codeOf(found, asked));
    });
}

const examples = `
Examples:
  bellcrank compare samples/quill/dry.crank samples/quill/wet.crank
  bellcrank compare samples/quill/wet.crank              against what it derives from
  bellcrank compare --git main                           the work tree against main
  bellcrank compare --git v1.2 v1.3 --format markdown -- samples/quill
  bellcrank compare main:samples/quill/wet.crank samples/quill/wet.crank`;

function compared(operands: readonly string[], asked: Asked): Compared {
  const { threshold, git, ...rest } = asked;
  const options: CompareOptions = { ...rest, share: shareOf(threshold) };
  if (git !== undefined) return compareRevisions(git, operands, options);
  const [old, now, more] = operands;
  if (old === undefined)
    throw new UsageError("nothing to compare: name two files, one set-up, or a revision with --git");
  if (more !== undefined) throw new UsageError("two operands at most: OLD and NEW");
  return now === undefined ? compareWithBase(old, options) : compareTwo(old, now, options);
}

function codeOf({ review, troubles }: Compared, { detailedExitCode }: Asked): number {
  if (troubles.length > 0) return exitCodes.unusable;
  return detailedExitCode === true && review.differs ? exitCodes.differs : exitCodes.fine;
}
