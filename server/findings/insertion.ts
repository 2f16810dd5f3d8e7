/**
 * Where a new statement goes into a block, and how it is laid out there.
 *
 * In: the text, the block, the statement's text and the words that usually stand before it.
 * Out: one edit. Invariant: a block on one line stays on one line; otherwise the new statement
 * has its own line, indented as its neighbours are.
 */
import type { Block, Entry, Span } from "../../grammar/index.js";

export interface Insertion {
  readonly span: Span;
  readonly newText: string;
}

/** @param before words that the canonical order puts before the new statement's. */
export function insertionInto(text: string, block: Block, statement: string, before: ReadonlySet<string>): Insertion {
  const neighbour = [...block.entries].reverse().find((entry) => before.has(wordOf(entry)));
  if (block.entries.length === 0) return intoEmpty(text, block, statement);
  return isOneLine(text, block) && !statement.includes("\n")
    ? inLine(block, neighbour, statement)
    : onNewLine(text, block, neighbour, statement);
}

function wordOf(entry: Entry): string {
  return entry.kind === "statement" ? (entry.head.segments.at(-1)?.text ?? "") : "";
}

function isOneLine(text: string, block: Block): boolean {
  return !text.slice(block.start, block.end).includes("\n");
}

function at(place: number, newText: string): Insertion {
  return { span: { start: place, end: place }, newText };
}

function inLine(block: Block, neighbour: Entry | undefined, statement: string): Insertion {
  if (neighbour) return at(neighbour.end, `, ${statement}`);
  const first = block.entries[0];
  return first ? at(first.start, `${statement}, `) : at(block.start + 1, ` ${statement} `);
}

function onNewLine(text: string, block: Block, neighbour: Entry | undefined, statement: string): Insertion {
  const model = neighbour ?? block.entries[0];
  const indent = model ? indentOf(text, model.start) : "";
  if (!neighbour) return at(block.start + 1, `\n${indented(statement, indent)}`);
  return at(endOfLineBehind(text, neighbour.end), `\n${indented(statement, indent)}`);
}

function intoEmpty(text: string, block: Block, statement: string): Insertion {
  const indent = indentOf(text, block.start);
  const inner = { start: block.start + 1, end: block.closed ? block.end - 1 : block.start + 1 };
  // A comment inside keeps its place: the statement goes on a line of its own above the closing brace.
  if (text.slice(inner.start, inner.end).trim() !== "")
    return at(inner.start, `\n${indented(statement, `${indent}  `)}`);
  return { span: inner, newText: `\n${indented(statement, `${indent}  `)}\n${indent}` };
}

function indented(statement: string, indent: string): string {
  return statement
    .split("\n")
    .map((line) => indent + line)
    .join("\n");
}

function indentOf(text: string, place: number): string {
  const lineStart = text.lastIndexOf("\n", place - 1) + 1;
  return /^[ \t]*/.exec(text.slice(lineStart, place))?.[0] ?? "";
}

/** Behind a comment on the same line; directly behind the statement where another one follows it there. */
function endOfLineBehind(text: string, place: number): number {
  const rest = /^[ \t]*,?[ \t]*(#[^\n]*)?(?=\n|$)/.exec(text.slice(place));
  return rest ? place + rest[0].trimEnd().length : place;
}
