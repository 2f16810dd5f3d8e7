/**
 * The canonical layout of a text, as a whole or as edits.
 *
 * Invariants: formatting twice changes nothing more; every comment and note stays; the tree stays
 * the same; what could not be read stays byte for byte. Only blanks, line breaks and the commas
 * between statements ever change, so formatted and unformatted text match character for character
 * apart from these: that is how the edits are found, in time proportional to the text.
 */
import { layOut } from "./layout.js";
import { LineTable } from "./line-table.js";
import { parse } from "./parse.js";
import type { Span } from "./span.js";
import { unreadableLines } from "./unreadable.js";

const byteOrderMark = "\ufeff";

/** A piece of text put in the place of another. */
export interface TextEdit {
  readonly span: Span;
  readonly newText: string;
}

export function format(text: string): string {
  if (text.startsWith(byteOrderMark)) return byteOrderMark + format(text.slice(1));
  const parsed = parse(text);
  const kept = unreadableLines(parsed);
  if (kept === undefined) return text;
  const lines = layOut({ text, document: parsed.document, comments: parsed.comments, kept });
  const lineBreak = lineBreakOf(text);
  return lines.length === 0 ? "" : lines.join(lineBreak) + lineBreak;
}

/** One line break for the whole text; which, does not change with what is laid out. */
function lineBreakOf(text: string): string {
  if (text.includes("\r\n")) return "\r\n";
  return text.includes("\r") && !text.includes("\n") ? "\r" : "\n";
}

/** The smallest edits that format the text, in text order; none where it is formatted already. */
export function formatEdits(text: string): readonly TextEdit[] {
  const formatted = format(text);
  const edits: TextEdit[] = [];
  let from = 0; // in the text, where the gap before the next character that stays begins
  let to = 0; // likewise in the formatted text
  for (;;) {
    const end = gapEnd(text, from);
    const newEnd = gapEnd(formatted, to);
    const newText = formatted.slice(to, newEnd);
    if (text.slice(from, end) !== newText) edits.push({ span: { start: from, end }, newText });
    if (end >= text.length) return edits;
    from = end + 1;
    to = newEnd + 1;
  }
}

/** Formats the lines that `span` touches; `undefined` where nothing changes there. */
export function formatRange(text: string, span: Span): TextEdit | undefined {
  const lines = new LineTable(text);
  const start = lines.lineStart(lines.position(span.start).line);
  const end = lines.lineEnd(lines.position(span.end).line);
  const edits = formatEdits(text).filter((edit) => start <= edit.span.end && edit.span.start <= end);
  const first = edits[0];
  const last = edits[edits.length - 1];
  if (first === undefined || last === undefined) return undefined;
  const whole = { start: first.span.start, end: last.span.end };
  return { span: whole, newText: edited(text, whole, edits) };
}

/** The part of the text with the edits made in it. */
function edited(text: string, { start, end }: Span, edits: readonly TextEdit[]): string {
  let result = "";
  let behind = start;
  for (const { span, newText } of edits) {
    result += text.slice(behind, span.start) + newText;
    behind = span.end;
  }
  return result + text.slice(behind, end);
}

function gapEnd(text: string, from: number): number {
  let at = from;
  while (at < text.length && /[\s,]/.test(text.charAt(at))) at++;
  return at;
}
