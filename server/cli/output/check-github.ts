/** Findings as workflow commands of a hosted CI: annotations on the lines of a pull request. Known ones are left out. */
import type { Severity } from "../../findings/finding.js";
import { newFindings, type Report } from "../checking/report.js";

const levels: Record<Severity, string> = { error: "error", warning: "warning", information: "notice", hint: "notice" };

export function githubReport(report: Report): string {
  return report.files
    .flatMap((file) =>
      newFindings(report, file).map(({ severity, rule, message, start, end }) => {
        const columns = start.line === end.line ? `,col=${start.column},endColumn=${end.column}` : "";
        const place = `file=${property(file.path)},line=${start.line},endLine=${end.line}${columns}`;
        return `::${levels[severity]} ${place},title=${property(`bellcrank: ${rule}`)}::${data(message)}\n`;
      }),
    )
    .join("");
}

const data = (text: string): string => text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
const property = (text: string): string => data(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
