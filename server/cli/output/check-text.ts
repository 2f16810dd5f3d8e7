/** Findings for a person: place, severity, rule, the line with a caret below, the message, and a count. */
import pc from "picocolors";
import type { Severity } from "../../findings/finding.js";
import type { CheckedFinding, RelatedPlace } from "../checking/checked-file.js";
import { newFindings, type Report } from "../checking/report.js";

const paint: Record<Severity, (text: string) => string> = {
  error: pc.red,
  warning: pc.yellow,
  information: pc.cyan,
  hint: pc.dim,
};

export function textReport(report: Report): string {
  const texts = report.files.flatMap((file) =>
    newFindings(report, file).map((finding) => findingText(file.path, finding)),
  );
  return [...texts, summary(report)].join("\n");
}

function findingText(path: string, finding: CheckedFinding): string {
  const { start, severity, rule, message } = finding;
  const place = `${path}:${start.line}:${start.column}`;
  const head = `${pc.bold(place)}  ${paint[severity](severity)}  ${rule}`;
  const related = finding.related.map((one) => `  ${pc.dim(`${relatedPlace(one)}: ${one.message}`)}`);
  return [head, excerpt(finding), `  ${message}`, ...related, ""].join("\n");
}

const relatedPlace = ({ file, start }: RelatedPlace): string =>
  start === undefined ? file : `${file}:${start.line}:${start.column}`;

const longestExcerpt = 160;

/** The first line of the place; tabs are widened so that the caret stands where it should. */
function excerpt({ start, line: { text, from, length } }: CheckedFinding): string {
  const number = String(start.line).padStart(5);
  const carets = `${" ".repeat(from)}${"^".repeat(length)}`.slice(0, longestExcerpt);
  return `${pc.dim(`${number} | `)}${text.slice(0, longestExcerpt).replaceAll("\t", " ")}\n${pc.dim("      | ")}${carets}`;
}

const severities: readonly Severity[] = ["error", "warning", "information", "hint"];

function summary(report: Report): string {
  const all = report.files.flatMap((file) => newFindings(report, file));
  const counts = severities
    .map((severity) => ({ severity, count: all.filter((finding) => finding.severity === severity).length }))
    .filter(({ count }) => count > 0)
    .map(({ severity, count }) => paint[severity](counted(count, severity)));
  const files = report.files.length === 1 ? "1 file" : `${report.files.length} files`;
  const none = pc.green(report.against === undefined ? "no findings" : "no new findings");
  return `${counts.length === 0 ? none : counts.join(", ")} in ${files}${knownWords(report)}\n`;
}

function counted(count: number, severity: Severity): string {
  if (severity === "information") return `${count} of information`;
  return `${count} ${severity}${count === 1 ? "" : "s"}`;
}

function knownWords({ against }: Report): string {
  if (against === undefined || (against.known.size === 0 && against.gone.length === 0)) return "";
  const gone =
    against.gone.length === 0 ? "" : `, ${against.gone.length} on it no more (--write-baseline takes them off)`;
  return `; ${against.known.size} known by ${against.list}${gone}`;
}
