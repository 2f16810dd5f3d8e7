/** From a view of the workspace to plain data with lines and columns: all that reports need to know of a file. */
import type { Finding } from "../../findings/finding.js";
import { rulesInBrief } from "../../snapshot/rules.js";
import type { FileView } from "../../snapshot/workspace.js";
import { type JudgedExpectation, judgedCars } from "../../views/expectations.js";
import { shown } from "../workspace.js";
import type { CheckedExpectation, CheckedFile, CheckedFinding, LineColumn, RelatedPlace } from "./checked-file.js";
import { fingerprintOf, markedWords, stepSign, treePlace, withoutFigures } from "./identity.js";

type Origin = JudgedExpectation["origin"];
type Parsed = FileView["parsed"];

export function checkedFile(file: FileView): CheckedFile {
  const findings = file.findings();
  return {
    uri: file.uri,
    path: shown(file.uri),
    findings: findings.map((finding) => placed(file, finding)),
    expectations: expectationsOf(file, findings),
  };
}

const isOfFigures: ReadonlySet<string> = new Set(
  rulesInBrief.filter(({ cost }) => cost === "solved").map(({ id }) => id),
);

function placed(file: FileView, finding: Finding): CheckedFinding {
  const { rule, severity, message, span, related } = finding;
  const place = treePlace(file.parsed, span);
  const about = isOfFigures.has(rule)
    ? [place.split(stepSign)[0] ?? "", withoutFigures(message)]
    : [place, markedWords(file.text, span)];
  return {
    rule,
    severity,
    message,
    start: lineColumn(file.parsed, span.start),
    end: lineColumn(file.parsed, span.end),
    related: related.map(({ origin, message: words }) => relatedPlace(file, origin, words)),
    line: firstLine(file, span),
    place,
    fingerprint: fingerprintOf([rule, severity, ...about]),
  };
}

function lineColumn({ lines }: Parsed, offset: number): LineColumn {
  const { line, character } = lines.position(offset);
  return { line: line + 1, column: character + 1 };
}

const parsedAt = (file: FileView, uri: string): Parsed | undefined =>
  uri === file.uri ? file.parsed : file.parsedOf(uri);

function relatedPlace(file: FileView, origin: Origin, message: string): RelatedPlace {
  const parsed = parsedAt(file, origin.uri);
  const place = parsed && { start: lineColumn(parsed, origin.start), end: lineColumn(parsed, origin.end) };
  return { file: shown(origin.uri), ...place, message };
}

function firstLine(file: FileView, span: Finding["span"]): CheckedFinding["line"] {
  const from = file.parsed.lines.position(span.start).character;
  const start = span.start - from;
  const rest = file.text.slice(start).search(/[\r\n]/);
  const text = rest < 0 ? file.text.slice(start) : file.text.slice(start, start + rest);
  return { text, from, length: Math.max(1, Math.min(span.end, start + text.length) - span.start) };
}

const expectationsOf = (file: FileView, findings: readonly Finding[]): readonly CheckedExpectation[] =>
  judgedCars(file).flatMap(({ name, expectations }) =>
    expectations.map(({ text, verdict, message, origin }) => {
      const index = verdict === "missed" ? findings.findIndex((finding) => tellsOf(finding, name, origin)) : -1;
      return {
        of: name,
        text,
        verdict,
        message,
        place: placeWords(file, origin),
        finding: index < 0 ? undefined : index,
      };
    }),
  );

/** Whether a finding is about this expectation of this car: it stands there, or says that it does. */
function tellsOf({ rule, message, uri, span, related }: Finding, name: string, origin: Origin): boolean {
  if (rule !== "missed-expectation" || !message.includes(` of ${name} is `)) return false;
  const places: readonly Origin[] = related.length > 0 ? related.map((one) => one.origin) : [{ uri, ...span }];
  return places.some((place) => place.uri === origin.uri && place.start === origin.start);
}

function placeWords(file: FileView, origin: Origin): string {
  const parsed = parsedAt(file, origin.uri);
  if (parsed === undefined) return shown(origin.uri);
  const { line, column } = lineColumn(parsed, origin.start);
  return `${shown(origin.uri)}:${line}:${column}`;
}
