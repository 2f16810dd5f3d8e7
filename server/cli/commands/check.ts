/** `bellcrank check`: every finding of the files and folders named, or only what is new since they were last looked through. */
import { availableParallelism } from "node:os";
import { type Command, Option } from "commander";
import type { Severity } from "../../findings/finding.js";
import { checkFiles } from "../checking/check-files.js";
import { touchedSince } from "../checking/changed-since.js";
import type { CheckedFile } from "../checking/checked-file.js";
import { heldAgainst, readKnown, writeKnown } from "../checking/known-findings.js";
import { newFindings, type Report } from "../checking/report.js";
import { jobsOf } from "../crew.js";
import { exitCodes } from "../exit-codes.js";
import { githubReport } from "../output/check-github.js";
import { jsonReport } from "../output/check-json.js";
import { junitReport } from "../output/check-junit.js";
import { sarifReport } from "../output/check-sarif.js";
import { textReport } from "../output/check-text.js";
import type { Ends } from "../ends.js";
import { UsageError } from "../usage-error.js";
import { openPaths } from "../workspace.js";

const reports = {
  text: textReport,
  json: jsonReport,
  sarif: sarifReport,
  github: githubReport,
  junit: junitReport,
} as const;

interface Options {
  readonly format: keyof typeof reports;
  readonly failOn: "error" | "warning" | "never";
  readonly baseline?: string;
  readonly writeBaseline?: boolean;
  readonly changedSince?: string;
  readonly jobs?: string;
}

/** On two, a second worker saves nothing: one thread with its collector and compiler keeps both busy (300 and 1,500 files). */
const WORTH_CORES = 4;

export function checkCommand(root: Command, ends: Ends): void {
  root
    .command("check")
    .description("Check set-ups: every finding, with the line that it is about.")
    .argument("[paths...]", "files, or folders that are searched for .crank files", ["."])
    .addOption(
      new Option("--format <format>", "how findings are written").choices(Object.keys(reports)).default("text"),
    )
    .addOption(
      new Option("--fail-on <severity>", "the least severity that ends with exit code 1")
        .choices(["error", "warning", "never"])
        .default("error"),
    )
    .option("--baseline <file>", "a list of known findings: only what is not on it is told and fails")
    .option("--write-baseline", "writes what is found now to the file of --baseline, and fails on nothing")
    .option("--changed-since <rev>", "only files that changed since the merge base with it, and what rests on them")
    .option("--jobs <n>", "how many cores to use, else all where there are four or more")
    .addHelpText(
      "after",
      `
Examples:
  bellcrank check samples/quill --fail-on warning
  bellcrank check --baseline known.json --write-baseline
  bellcrank check --baseline known.json --format sarif > findings.sarif
  bellcrank check --changed-since origin/main --fail-on warning`,
    )
    .action(async (paths: string[], options: Options) => {
      const { baseline } = options;
      if (options.writeBaseline === true && baseline === undefined)
        throw new UsageError("--write-baseline needs --baseline FILE: where to write");
      const workers = options.jobs === undefined && availableParallelism() < WORTH_CORES ? 1 : jobsOf(options.jobs);
      const known = baseline === undefined || options.writeBaseline === true ? undefined : readKnown(baseline);
      const opened = openPaths(paths);
      const asked =
        options.changedSince === undefined
          ? opened.uris
          : touchedSince(options.changedSince, paths[0] ?? ".", opened.files).map(({ uri }) => uri);
      const files = await checkFiles(paths, opened.workspace, asked, workers);
      if (baseline !== undefined && known === undefined) {
        process.stdout.write(writtenWords(writeKnown(baseline, files), baseline));
        return;
      }
      const report: Report =
        baseline === undefined || known === undefined
          ? { files }
          : { files, against: heldAgainst(baseline, known, files) };
      process.stdout.write(reports[options.format](report));
      ends(fails(report, options.failOn) ? exitCodes.findings : exitCodes.fine);
    });
}

const writtenWords = (count: number, list: string): string =>
  `${list} holds ${count === 1 ? "1 finding" : `${count} findings`}\n`;

function fails(report: Report, failOn: Options["failOn"]): boolean {
  if (failOn === "never") return false;
  const failing: readonly Severity[] = failOn === "error" ? ["error"] : ["error", "warning"];
  const isFailing = ({ severity, rule }: CheckedFile["findings"][number]): boolean =>
    failing.includes(severity) || rule === "missed-expectation";
  return report.files.some((file) => newFindings(report, file).some(isFailing));
}
