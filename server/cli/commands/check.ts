/** `bellcrank check`: every finding of the files and folders named. */
import { type Command, Option } from "commander";
import type { Severity } from "../../findings/finding.js";
import type { CheckedFile } from "../checked-file.js";
import { exitCodes } from "../exit-codes.js";
import { githubReport } from "../output/check-github.js";
import { jsonReport } from "../output/check-json.js";
import { junitReport } from "../output/check-junit.js";
import { sarifReport } from "../output/check-sarif.js";
import { textReport } from "../output/check-text.js";
import type { Ends } from "../ends.js";
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
}

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
    .addHelpText("after", "\nExample:\n  bellcrank check samples/quill --fail-on warning")
    .action((paths: string[], options: Options) => {
      const checked = openPaths(paths).files.map((file) => ({ file, findings: file.findings() }));
      process.stdout.write(reports[options.format](checked));
      ends(fails(checked, options.failOn) ? exitCodes.findings : exitCodes.fine);
    });
}

function fails(checked: readonly CheckedFile[], failOn: Options["failOn"]): boolean {
  if (failOn === "never") return false;
  const failing: readonly Severity[] = failOn === "error" ? ["error"] : ["error", "warning"];
  return checked.some(({ findings }) =>
    findings.some(({ severity, rule }) => failing.includes(severity) || rule === "missed-expectation"),
  );
}
