/** Spans of the engine to ranges of the protocol and back. Both count UTF-16 code units. */
import type { Range } from "vscode-languageserver";
import type { LineTable, Position, Span } from "../../grammar/index.js";

export function rangeOf(lines: LineTable, span: Span): Range {
  return { start: lines.position(span.start), end: lines.position(span.end) };
}

export function spanOf(lines: LineTable, range: { readonly start: Position; readonly end: Position }): Span {
  return { start: lines.offset(range.start), end: lines.offset(range.end) };
}
