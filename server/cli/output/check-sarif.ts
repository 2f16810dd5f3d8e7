/** Findings as SARIF 2.1.0 (OASIS): what code-scanning services read. */
import { rulesInBrief } from "../../snapshot/rules.js";
import type { Finding, Severity } from "../../findings/finding.js";
import type { CheckedFile } from "../checked-file.js";
import { shown } from "../workspace.js";
import { version } from "../version.js";
import { placeOf } from "./check-json.js";

const levels: Record<Severity, "error" | "warning" | "note"> = {
  error: "error",
  warning: "warning",
  information: "note",
  hint: "note",
};

export function sarifReport(checked: readonly CheckedFile[]): string {
  const log = {
    $schema: "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
    version: "2.1.0",
    runs: [{ tool: { driver: driver() }, columnKind: "utf16CodeUnits", results: checked.flatMap(resultsOf) }],
  };
  return `${JSON.stringify(log, undefined, 2)}\n`;
}

function driver(): object {
  return {
    name: "bellcrank",
    semanticVersion: version,
    rules: rulesInBrief.map(({ id, title, severity }) => ({
      id,
      shortDescription: { text: title },
      defaultConfiguration: { level: levels[severity] },
    })),
  };
}

function resultsOf({ file, findings }: CheckedFile): readonly object[] {
  return findings.map((finding) => ({
    ruleId: finding.rule,
    level: levels[finding.severity],
    message: { text: finding.message },
    locations: [location(shown(file.uri), regionOf(file, finding))],
  }));
}

function regionOf(file: CheckedFile["file"], finding: Finding): object {
  const { start, end } = placeOf(file, finding.span);
  return { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column };
}

function location(path: string, region: object): object {
  return { physicalLocation: { artifactLocation: { uri: path.split("/").map(encodeURIComponent).join("/") }, region } };
}
