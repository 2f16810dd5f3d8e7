/** Finds places in a text. */
import type { Place } from "./editor-under-test.js";

/** Where the pattern's first group (or all of it) first matches. */
export function placeOf(text: string, pattern: RegExp): Place & { readonly found: string } {
  const match = new RegExp(pattern.source, `${pattern.flags.replace("d", "")}d`).exec(text);
  const span = match?.indices?.[1] ?? match?.indices?.[0];
  if (span === undefined) throw new Error(`The sample has nothing like ${pattern.source}.`);
  const before = text.slice(0, span[0]).split("\n");
  return { line: before.length, column: (before.at(-1) ?? "").length + 1, found: text.slice(...span) };
}
