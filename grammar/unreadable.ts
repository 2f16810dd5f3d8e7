/**
 * Which lines of a text the formatter keeps as they are: those with anything that the grammar could
 * not read. In: what was parsed. Out: runs of whole lines, in text order; `undefined` where braces
 * do not match, since then nobody can say which block a line belongs to.
 *
 * Invariant: a run holds entries and comments wholly or not at all, and never a brace of a block
 * that it does not hold whole.
 */
import type { Block, Entry } from "./ast.js";
import type { LineTable } from "./line-table.js";
import type { Parsed } from "./parse.js";
import type { SyntaxProblem } from "./problem.js";
import type { Span } from "./span.js";

export function unreadableLines({ text, document, problems, lines }: Parsed): readonly Span[] | undefined {
  if (problems.some(isBraceFault)) return undefined;
  const places = problems.filter(isUnreadable);
  return runsIn(document.entries, { start: 0, end: text.length }, places, lines);
}

function isBraceFault(problem: SyntaxProblem): boolean {
  return problem.kind === "unclosed-block" || (problem.kind === "stray-closing" && problem.found === "}");
}

/** Some problems are told about things that were read all the same. */
function isUnreadable({ kind }: SyntaxProblem): boolean {
  return kind !== "not-utf8" && kind !== "too-long-name";
}

/** The runs of one block; `undefined` where one would have to reach beyond its braces. */
function runsIn(
  entries: readonly Entry[],
  inside: Span,
  places: readonly Span[],
  lines: LineTable,
): readonly Span[] | undefined {
  const deeper: Span[] = [];
  const here: Span[] = [];
  for (const place of places) {
    if (!entries.some((entry) => isInBlock(entry, place))) here.push(place);
  }
  for (const entry of entries) {
    const inner = places.filter((place) => isInBlock(entry, place));
    if (inner.length === 0) continue;
    const block = (entry as { block: Block }).block;
    const runs = runsIn(block.entries, { start: block.start + 1, end: block.end - 1 }, inner, lines);
    if (runs === undefined) here.push(entry);
    else deeper.push(...runs);
  }
  const runs = here.map((place) => grown(place, entries, lines));
  if (runs.some(({ start, end }) => start < inside.start || end > inside.end)) return undefined;
  const covering = merged(runs);
  const uncovered = deeper.filter((run) => !covering.some(({ start, end }) => start <= run.start && run.end <= end));
  return [...covering, ...uncovered].sort((a, b) => a.start - b.start);
}

function isInBlock(entry: Entry, { start, end }: Span): boolean {
  if (entry.kind === "row" || entry.block === undefined) return false;
  return entry.block.start < start && end < entry.block.end;
}

/** The whole lines around the place, and around every entry that reaches into them. */
function grown(place: Span, entries: readonly Entry[], lines: LineTable): Span {
  let run = wholeLines(place, lines);
  for (;;) {
    const touched = entries.filter(({ start, end }) => start <= run.end && run.start <= end);
    const start = Math.min(run.start, ...touched.map((entry) => entry.start));
    const end = Math.max(run.end, ...touched.map((entry) => entry.end));
    const next = wholeLines({ start, end }, lines);
    if (next.start === run.start && next.end === run.end) return run;
    run = next;
  }
}

function wholeLines({ start, end }: Span, lines: LineTable): Span {
  return { start: lines.lineStart(lines.position(start).line), end: lines.lineEnd(lines.position(end).line) };
}

function merged(runs: readonly Span[]): readonly Span[] {
  const result: Span[] = [];
  for (const run of [...runs].sort((a, b) => a.start - b.start)) {
    const last = result[result.length - 1];
    if (last === undefined || run.start > last.end) result.push(run);
    else result[result.length - 1] = { start: last.start, end: Math.max(last.end, run.end) };
  }
  return result;
}
