/** Findings as SARIF 2.1.0 (OASIS): what code-scanning services read. */
import { rulesInBrief } from "../../snapshot/rules.js";
import type { Severity } from "../../findings/finding.js";
import type { CheckedFile, CheckedFinding, LineColumn } from "../checking/checked-file.js";
import { type GoneFinding, isKnown, type Report } from "../checking/report.js";
import { version } from "../version.js";

const levels: Record<Severity, "error" | "warning" | "note"> = {
  error: "error",
  warning: "warning",
  information: "note",
  hint: "note",
};

export function sarifReport(report: Report): string {
  const results = [
    ...report.files.flatMap((file) => resultsOf(report, file)),
    ...(report.against?.gone ?? []).map(goneResult),
  ];
  const log = {
    $schema: "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
    version: "2.1.0",
    runs: [{ tool: { driver: driver() }, columnKind: "utf16CodeUnits", results }],
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

const ruleIndex: ReadonlyMap<string, number> = new Map(rulesInBrief.map(({ id }, index) => [id, index]));

const ruleOf = (rule: string): object => ({ ruleId: rule, ruleIndex: ruleIndex.get(rule) ?? -1 });

function resultsOf(report: Report, { path, findings }: CheckedFile): readonly object[] {
  const seen = new Map<string, number>();
  return findings.map((finding) => {
    const nth = (seen.get(finding.fingerprint) ?? 0) + 1;
    seen.set(finding.fingerprint, nth);
    return {
      ...ruleOf(finding.rule),
      level: levels[finding.severity],
      message: { text: finding.message },
      locations: [location(path, finding, { logicalLocations: logical(finding.place) })],
      ...relatedOf(finding),
      partialFingerprints: fingerprints(finding, nth),
      ...(report.against === undefined ? {} : { baselineState: isKnown(report, finding) ? "unchanged" : "new" }),
    };
  });
}

const logical = (place: string): object[] => (place === "" ? [] : [{ fullyQualifiedName: place }]);

/**
 * The second name is the one that a hosted code scanning matches by, instead of a hash that it would make from the
 * line's text (name and form from memory of its documentation).
 */
const fingerprints = ({ fingerprint }: { readonly fingerprint: string }, nth: number): object => ({
  "bellcrankPlace/v1": fingerprint,
  primaryLocationLineHash: `${fingerprint}:${nth}`,
});

function relatedOf({ related }: CheckedFinding): object {
  if (related.length === 0) return {};
  return {
    relatedLocations: related.map(({ file, start, end, message }, id) =>
      location(file, start && end && { start, end }, { id, message: { text: message } }),
    ),
  };
}

/** What the list knows and nobody finds any more: it has no line to stand at. */
function goneResult(gone: GoneFinding): object {
  return {
    ...ruleOf(gone.rule),
    level: levels[gone.severity],
    message: { text: `No longer found: ${gone.rule} at ${gone.place || gone.path}.` },
    locations: [location(gone.path, undefined, { logicalLocations: logical(gone.place) })],
    partialFingerprints: fingerprints(gone, 1),
    baselineState: "absent",
  };
}

function location(
  path: string,
  place: { readonly start: LineColumn; readonly end: LineColumn } | undefined,
  more: object,
): object {
  const artifactLocation = { uri: path.split("/").map(encodeURIComponent).join("/") };
  const region = place && {
    region: {
      startLine: place.start.line,
      startColumn: place.start.column,
      endLine: place.end.line,
      endColumn: place.end.column,
    },
  };
  return { physicalLocation: { artifactLocation, ...region }, ...more };
}
