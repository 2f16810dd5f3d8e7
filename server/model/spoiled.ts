/**
 * One mistake, one message: where the grammar could not read a line in full, what is left of the
 * line does not have the form that its word takes, and nobody needs to be told that as well.
 */
import type { Entry, Parsed, Span } from "../../grammar/index.js";
import type { ModelProblem } from "./problem.js";

const consequences: ReadonlySet<ModelProblem["kind"]> = new Set(["wrong-form", "missing-unit", "dimension"]);

export function withoutSpoiled(problems: readonly ModelProblem[], parsed: Parsed): readonly ModelProblem[] {
  if (parsed.problems.length === 0 || !problems.some(({ kind }) => consequences.has(kind))) return problems;
  const spoiled = parsed.problems
    .flatMap((problem) => lineAround(problem, parsed) ?? [])
    .sort((a, b) => a.start - b.start);
  return problems.filter((problem) => !consequences.has(problem.kind) || !isInAny(problem, spoiled));
}

/** The latest line that begins before the problem is the only one that it can lie in: lines do not overlap. */
function isInAny({ start }: Span, lines: readonly Span[]): boolean {
  let low = 0;
  let high = lines.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lines[middle] as Span).start <= start) low = middle + 1;
    else high = middle;
  }
  const line = lines[low - 1];
  return line !== undefined && start <= line.end;
}

/** From the head of the innermost line with the place in it to its block, or to the place where that is behind its end. */
function lineAround(place: Span, { document, text }: Parsed): Span | undefined {
  let entries: readonly Entry[] | undefined = document.entries;
  let found: Entry | undefined;
  while (entries !== undefined) {
    const entry: Entry | undefined = lastBefore(entries, place.start);
    if (entry === undefined) break;
    found = entry;
    const block = entry.kind === "statement" ? entry.block : undefined;
    const isInside = block !== undefined && place.start > block.start && (place.start < block.end || !block.closed);
    entries = isInside ? block.entries : undefined;
  }
  if (found === undefined) return undefined;
  const head = found.kind === "statement" && found.block !== undefined ? found.block.start : found.end;
  if (place.start <= head) return { start: found.start, end: head };
  return /[\n,{}]/.test(text.slice(found.end, place.start)) ? undefined : { start: found.start, end: place.end };
}

/** Entries are in the order of the text. */
function lastBefore(entries: readonly Entry[], offset: number): Entry | undefined {
  let low = 0;
  let high = entries.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((entries[middle] as Entry).start <= offset) low = middle + 1;
    else high = middle;
  }
  return entries[low - 1];
}
