/** One edit that turns a text into another and touches no more than it must, so that cursors and marks stay. */
import type { Span } from "../../grammar/index.js";

export function minimalEdit(before: string, after: string): { span: Span; newText: string } | undefined {
  if (before === after) return undefined;
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start += 1;
  let tail = 0;
  while (tail < shorter - start && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail += 1;
  return { span: { start, end: before.length - tail }, newText: after.slice(start, after.length - tail) };
}
