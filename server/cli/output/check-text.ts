/** Findings for a person: place, severity, rule, the line with a caret below, the message, and a count. */
import pc from "picocolors";
import type { Finding, Severity } from "../../findings/finding.js";
import type { FileView } from "../../snapshot/workspace.js";
import type { CheckedFile } from "../checked-file.js";
import { shown } from "../workspace.js";

const paint: Record<Severity, (text: string) => string> = {
  error: pc.red,
  warning: pc.yellow,
  information: pc.cyan,
  hint: pc.dim,
};

export function textReport(checked: readonly CheckedFile[]): string {
  const texts = checked.flatMap(({ file, findings }) => findings.map((finding) => findingText(file, finding)));
  return [...texts, summary(checked)].join("\n");
}

function findingText(file: FileView, finding: Finding): string {
  const { line, character } = file.parsed.lines.position(finding.span.start);
  const place = `${shown(file.uri)}:${line + 1}:${character + 1}`;
  const head = `${pc.bold(place)}  ${paint[finding.severity](finding.severity)}  ${finding.rule}`;
  const related = finding.related.map(
    ({ origin, message }) => `  ${pc.dim(`${relatedPlace(file, origin)}: ${message}`)}`,
  );
  return [head, excerpt(file, finding), `  ${finding.message}`, ...related, ""].join("\n");
}

function relatedPlace(file: FileView, origin: { readonly uri: string; readonly start: number }): string {
  const parsed = origin.uri === file.uri ? file.parsed : file.parsedOf(origin.uri);
  const position = parsed?.lines.position(origin.start);
  return position === undefined
    ? shown(origin.uri)
    : `${shown(origin.uri)}:${position.line + 1}:${position.character + 1}`;
}

const longestExcerpt = 160;

/** The first line of the place; tabs are widened so that the caret stands where it should. */
function excerpt(file: FileView, { span }: Finding): string {
  const { line, character } = file.parsed.lines.position(span.start);
  const start = span.start - character;
  const rest = file.text.slice(start).search(/[\r\n]/);
  const text = rest < 0 ? file.text.slice(start) : file.text.slice(start, start + rest);
  const length = Math.max(1, Math.min(span.end, start + text.length) - span.start);
  const number = String(line + 1).padStart(5);
  const carets = `${" ".repeat(character)}${"^".repeat(length)}`.slice(0, longestExcerpt);
  return `${pc.dim(`${number} | `)}${text.slice(0, longestExcerpt).replaceAll("\t", " ")}\n${pc.dim("      | ")}${carets}`;
}

const severities: readonly Severity[] = ["error", "warning", "information", "hint"];

export function summary(checked: readonly CheckedFile[]): string {
  const all = checked.flatMap(({ findings }) => findings);
  const counts = severities
    .map((severity) => ({ severity, count: all.filter((finding) => finding.severity === severity).length }))
    .filter(({ count }) => count > 0)
    .map(({ severity, count }) => paint[severity](counted(count, severity)));
  const files = checked.length === 1 ? "1 file" : `${checked.length} files`;
  return counts.length === 0 ? `${pc.green("no findings")} in ${files}\n` : `${counts.join(", ")} in ${files}\n`;
}

function counted(count: number, severity: Severity): string {
  if (severity === "information") return `${count} of information`;
  return `${count} ${severity}${count === 1 ? "" : "s"}`;
}
