/** Findings as workflow commands of a hosted CI: annotations on the lines of a pull request. */
import type { Severity } from "../../findings/finding.js";
import type { CheckedFile } from "../checked-file.js";
import { shown } from "../workspace.js";
import { placeOf } from "./check-json.js";

const levels: Record<Severity, string> = { error: "error", warning: "warning", information: "notice", hint: "notice" };

export function githubReport(checked: readonly CheckedFile[]): string {
  return checked
    .flatMap(({ file, findings }) =>
      findings.map(({ severity, rule, message, span }) => {
        const { start, end } = placeOf(file, span);
        const columns = start.line === end.line ? `,col=${start.column},endColumn=${end.column}` : "";
        const place = `file=${property(shown(file.uri))},line=${start.line},endLine=${end.line}${columns}`;
        return `::${levels[severity]} ${place},title=${property(`bellcrank: ${rule}`)}::${data(message)}\n`;
      }),
    )
    .join("");
}

const data = (text: string): string => text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
const property = (text: string): string => data(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
