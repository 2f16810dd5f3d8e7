/** Which lines fold together. A block keeps its last line, the brace, in sight. */
import type { Entry, LineTable, Parsed, Span } from "../../grammar/index.js";

export interface Folding {
  readonly startLine: number;
  readonly endLine: number;
  readonly comment: boolean;
}

export function foldingsOf(parsed: Parsed): readonly Folding[] {
  const blocks: Folding[] = [];
  collect(parsed.document.entries, parsed.lines, blocks);
  const notes = parsed.document.entries.length === 0 ? [] : notesOf(parsed.document.entries);
  return [
    ...blocks,
    ...runs(
      [...parsed.comments, ...notes].sort((a, b) => a.start - b.start),
      parsed.lines,
    ),
  ];
}

function collect(entries: readonly Entry[], lines: LineTable, into: Folding[]): void {
  for (const entry of entries) {
    if (entry.kind !== "statement" || entry.block === undefined) continue;
    const startLine = lines.position(entry.block.start).line;
    const endLine = lines.position(entry.block.end).line - 1;
    if (endLine > startLine) into.push({ startLine, endLine, comment: false });
    collect(entry.block.entries, lines, into);
  }
}

function notesOf(entries: readonly Entry[]): readonly Span[] {
  return entries.flatMap((entry) => [
    ...entry.notes,
    ...(entry.kind === "statement" && entry.block !== undefined ? notesOf(entry.block.entries) : []),
  ]);
}

/** Neighbouring comment lines fold as one. */
function runs(comments: readonly Span[], lines: LineTable): readonly Folding[] {
  const found: Folding[] = [];
  let first: number | undefined;
  let last = -2;
  for (const comment of comments) {
    const { line } = lines.position(comment.start);
    if (first !== undefined && line === last + 1) {
      last = line;
      continue;
    }
    if (first !== undefined && last > first) found.push({ startLine: first, endLine: last, comment: true });
    first = line;
    last = line;
  }
  if (first !== undefined && last > first) found.push({ startLine: first, endLine: last, comment: true });
  return found;
}
