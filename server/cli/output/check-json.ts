/** Findings for a machine. The form is described by `schema/check.json` of the package. */
import type { Finding } from "../../findings/finding.js";
import type { FileView } from "../../snapshot/workspace.js";
import type { CheckedFile } from "../checked-file.js";
import { shown } from "../workspace.js";
import { json } from "./json.js";

export function jsonReport(checked: readonly CheckedFile[]): string {
  return json({ files: checked.map(({ file }) => shown(file.uri)), findings: checked.flatMap(findingsOf) });
}

function findingsOf({ file, findings }: CheckedFile): readonly object[] {
  return findings.map((finding) => ({
    file: shown(file.uri),
    ...placeOf(file, finding.span),
    severity: finding.severity,
    rule: finding.rule,
    message: finding.message,
    related: finding.related.map(({ origin, message }) => ({
      file: shown(origin.uri),
      ...relatedPlace(file, origin),
      message,
    })),
  }));
}

/** Lines and columns from 1, the end behind the last character. */
export function placeOf(file: Pick<FileView, "parsed">, span: Finding["span"]): { start: LineColumn; end: LineColumn } {
  return { start: lineColumn(file, span.start), end: lineColumn(file, span.end) };
}

interface LineColumn {
  readonly line: number;
  readonly column: number;
}

function lineColumn(file: Pick<FileView, "parsed">, offset: number): LineColumn {
  const { line, character } = file.parsed.lines.position(offset);
  return { line: line + 1, column: character + 1 };
}

function relatedPlace(
  file: FileView,
  origin: { readonly uri: string; readonly start: number; readonly end: number },
): object {
  const parsed = origin.uri === file.uri ? file.parsed : file.parsedOf(origin.uri);
  return parsed === undefined ? {} : placeOf({ parsed }, origin);
}
