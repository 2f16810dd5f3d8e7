/**
 * Reads a text of which the last version is at hand: what stands at the outermost level before the change, and behind
 * it where nothing has moved, is taken over as it was read.
 *
 * In: the new text and the last one with its tree. Out: what `parse` would give, node by node.
 * Only between two texts without a problem: where the grammar has to help itself, a brace may reach anywhere.
 */
import type { Entry } from "./ast.js";
import { LineTable } from "./line-table.js";
import { parse, type Parsed, read } from "./parse.js";

export function reparse(text: string, before: Parsed): Parsed {
  if (before.problems.length > 0) return parse(text);
  return spliced(text, before) ?? parse(text);
}

/** Where the changed part begins and ends, in entries and in the text; the end is the same in both texts, or their ends. */
interface Change {
  readonly kept: number;
  readonly from: number;
  readonly next: number;
  readonly to: number;
}

function spliced(text: string, before: Parsed): Parsed | undefined {
  const { kept, from, next, to } = changeIn(text, before);
  const old = before.document.entries;
  const { parsed: middle } = read(text.slice(0, to), { from });
  if (middle.problems.length > 0 || (next < old.length && endsInNote(middle))) return undefined;
  const entries = [...old.slice(0, kept), ...middle.document.entries, ...old.slice(next)];
  const comments = [
    ...before.comments.filter(({ start }) => start < from),
    ...middle.comments,
    ...(next < old.length ? before.comments.filter(({ start }) => start >= to) : []),
  ];
  const document = { kind: "document", start: 0, end: text.length, entries } as const;
  return { text, document, comments, problems: [], lines: new LineTable(text) };
}

function changeIn(text: string, before: Parsed): Change {
  const { entries } = before.document;
  const prefix = samePrefix(text, before.text);
  let kept = entries.length - 1;
  while (kept > 0 && !(beginsLine(entries, kept, before) && lineOf(entries[kept], before) <= prefix)) kept--;
  kept = Math.max(kept, 0);
  const from = kept === 0 ? 0 : lineOf(entries[kept], before);
  const whole = { kept, from, next: entries.length, to: text.length };
  if (text.length !== before.text.length) return whole;
  const same = text.length - sameSuffix(text, before.text);
  let next = kept + 1;
  while (next < entries.length && !(beginsLine(entries, next, before) && lineOf(entries[next], before) >= same)) next++;
  return next < entries.length ? { ...whole, next, to: lineOf(entries[next], before) } : whole;
}

/** The first line of an entry: that of its notes, where it has any. */
function lineOf(entry: Entry | undefined, { lines }: Parsed): number {
  const start = entry?.notes[0]?.start ?? entry?.start ?? 0;
  return lines.lineStart(lines.position(start).line);
}

/** Nothing else stands on its first line. */
const beginsLine = (entries: readonly Entry[], index: number, before: Parsed): boolean =>
  index === 0 || lineOf(entries[index], before) >= (entries[index - 1]?.end ?? 0);

function samePrefix(a: string, b: string): number {
  const end = Math.min(a.length, b.length);
  let at = 0;
  while (at < end && a.charCodeAt(at) === b.charCodeAt(at)) at++;
  return at;
}

function sameSuffix(a: string, b: string): number {
  const end = Math.min(a.length, b.length);
  let count = 0;
  while (count < end && a.charCodeAt(a.length - 1 - count) === b.charCodeAt(b.length - 1 - count)) count++;
  return count;
}

/** A note behind the last entry belongs to the one that follows. */
function endsInNote({ document, comments }: Parsed): boolean {
  const end = document.entries.at(-1)?.end ?? 0;
  return comments.some(({ text, start }) => start >= end && text.startsWith("##"));
}
