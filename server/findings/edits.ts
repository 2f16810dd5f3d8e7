/**
 * Edits to a text: applying them, and choosing the ones that can be applied together.
 *
 * Invariant: edits of one call refer to the text before any of them; they never overlap, and two
 * insertions at the same place keep their order.
 */
import type { Span } from "../../grammar/index.js";
import type { Fix, TextEdit } from "./finding.js";

type LocalEdit = Pick<TextEdit, "span" | "newText">;

/**
 * The text after the edits.
 *
 * @throws RangeError if edits overlap or leave the text: that is a bug of whoever made them, and
 *   half-applied edits would be worse than none.
 */
export function applyEdits(text: string, edits: readonly LocalEdit[]): string {
  const ordered = [...edits].sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
  let out = "";
  let done = 0;
  for (const { span, newText } of ordered) {
    if (span.start < done || span.end < span.start || span.end > text.length) {
      throw new RangeError(`edit ${span.start}..${span.end} overlaps another or leaves the text`);
    }
    out += text.slice(done, span.start) + newText;
    done = span.end;
  }
  return out + text.slice(done);
}

/** The edits of every fix that still fits beside the ones before it; a fix is taken whole or not at all. */
export function fittingEdits(fixes: readonly Fix[]): readonly TextEdit[] {
  const taken: TextEdit[] = [];
  for (const fix of fixes) {
    if (fix.edits.every((edit) => !taken.some((other) => clash(edit, other)))) taken.push(...fix.edits);
  }
  return taken;
}

function clash(a: TextEdit, b: TextEdit): boolean {
  if (a.uri !== b.uri) return false;
  if (sameSpan(a.span, b.span)) return true;
  return a.span.start < b.span.end && b.span.start < a.span.end;
}

function sameSpan(a: Span, b: Span): boolean {
  return a.start === b.start && a.end === b.end;
}

/**
 * The edit that takes a statement out together with what is only there for it: its notes are
 * inside `span` already; here the rest of its line goes too if nothing else stands on it.
 * In a one-line block the comma that parts it from its neighbour goes with it.
 */
export function removal(text: string, span: Span): Span {
  const lineStart = text.lastIndexOf("\n", span.start - 1) + 1;
  const nextBreak = text.indexOf("\n", span.end);
  const lineEnd = nextBreak === -1 ? text.length : nextBreak;
  const before = text.slice(lineStart, span.start);
  const after = text.slice(span.end, lineEnd);
  if (/^\s*$/.test(before) && /^\s*,?\s*(#.*)?$/.test(after)) {
    return { start: lineStart, end: nextBreak === -1 ? text.length : nextBreak + 1 };
  }
  const comma = /^\s*,[ \t]*/.exec(after);
  if (comma) return { start: span.start, end: span.end + comma[0].length };
  const leading = /,\s*$/.exec(before);
  if (leading) return { start: span.start - leading[0].length, end: span.end };
  return span;
}

/** A fix of one edit. */
export function oneEdit(
  title: string,
  uri: string,
  span: Span,
  newText: string,
  how: { readonly preferred?: boolean; readonly safe?: boolean } = {},
): Fix {
  return {
    title,
    edits: [{ uri, span: { start: span.start, end: span.end }, newText }],
    preferred: how.preferred ?? false,
    safe: how.safe ?? false,
  };
}
