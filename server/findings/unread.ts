/**
 * Where the grammar could not read all of a line, what the resolver misses there is no second
 * mistake: one mistake, one finding.
 */
import type { Parsed, Span } from "../../grammar/index.js";
import { contains, entryAt } from "./tree.js";

/** Whether something in the statement or row around the place (its block left out) could not be read. */
export function isHalfRead(parsed: Parsed, place: Span): boolean {
  if (parsed.problems.length === 0) return false;
  const entry = entryAt(parsed.document, place);
  const end = entry?.kind === "statement" && entry.block ? entry.block.start : (entry ?? place).end;
  // What is skipped at the end of a line is no part of the statement any more, hence whole lines.
  const lines = { first: lineOf(parsed, (entry ?? place).start), last: lineOf(parsed, end) };
  return parsed.problems.some(
    ({ start }) => lines.first <= lineOf(parsed, start) && lineOf(parsed, start) <= lines.last,
  );
}

/** Whether something in the block could not be read. */
export function holdsUnread(parsed: Parsed, block: Span): boolean {
  return parsed.problems.some((problem) => contains(block, problem));
}

function lineOf({ lines }: Parsed, offset: number): number {
  return lines.position(offset).line;
}
