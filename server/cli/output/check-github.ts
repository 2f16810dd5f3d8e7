/** Findings as workflow commands of a hosted CI: annotations on the lines of a pull request. Known ones are left out. */
import type { Severity } from "../../findings/finding.js";
import { newFindings, type Report } from "../checking/report.js";
import { workflowCommand } from "./workflow-command.js";

const levels: Record<Severity, "notice" | "warning" | "error"> = {
  error: "error",
  warning: "warning",
  information: "notice",
  hint: "notice",
};

export function githubReport(report: Report): string {
  return report.files
    .flatMap((file) =>
      newFindings(report, file).map(({ severity, rule, message, start, end }) => {
        const columns = start.line === end.line ? { col: start.column, endColumn: end.column } : {};
        const place = { file: file.path, line: start.line, endLine: end.line, ...columns };
        return workflowCommand(levels[severity], { ...place, title: `bellcrank: ${rule}` }, message);
      }),
    )
    .join("");
}
