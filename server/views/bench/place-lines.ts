/**
 * Where imported lines go in a text: the block of an element (`front.side`, `pitch-line`) or of a part (`V-14`), in place
 * of the statements that they stand for.
 *
 * Invariant: nothing else in the text changes.
 */
import { format, type Block, type Entry, parse, type Statement } from "../../../grammar/index.js";
import type { Variant } from "./bench.js";

/** The text with the lines in it, or undefined where it has no such element or part. */
export function withLines(text: string, path: string, { lines, replaces }: Variant): string | undefined {
  const block = blockAt(parse(text).document.entries, path.split("."));
  if (block === undefined) return undefined;
  const old = block.entries.flatMap((entry) =>
    entry.kind === "statement" && replaces.includes(headOf(entry)) ? [entry] : [],
  );
  const [first] = old;
  // Notes above the first stay: they tell what the lines are for.
  const at = first === undefined ? block.start + 1 : first.head.start;
  const cuts = [
    { start: at, end: first === undefined ? at : endWithComma(text, first.end) },
    ...old.slice(1).map((entry) => lineOf(text, entry.start, endWithComma(text, entry.end))),
  ];
  const rest = text.slice(cuts[0]?.end ?? at);
  const placed = `${first === undefined ? "\n" : ""}${lines.join("\n")}${/^[ \t]*(?:\r?\n|#|\})/.test(rest) ? "" : "\n"}`;
  let made = "";
  let from = 0;
  for (const [i, { start, end }] of cuts.entries()) {
    made += text.slice(from, start) + (i === 0 ? placed : "");
    from = end;
  }
  return format(made + text.slice(from));
}

/** With the line that it stands on, if nothing else does. */
function lineOf(text: string, start: number, end: number): { readonly start: number; readonly end: number } {
  const before = /\n[ \t]*$/.exec(text.slice(0, start));
  return before !== null && /^[ \t]*(?:\r?\n|$)/.test(text.slice(end)) ? { start: before.index, end } : { start, end };
}

const endWithComma = (text: string, end: number): number =>
  end + (/^[ \t]*,/.exec(text.slice(end, end + 80))?.[0].length ?? 0);

/** `ratio heave` for a ratio, since there may be one a mode; else the word. */
function headOf({ head, items: [first] }: Statement): string {
  const word = head.segments.map(({ text }) => text).join(".");
  const isMode = word === "ratio" && first?.kind === "path" && first.segments[0]?.text !== "curve";
  return isMode ? `${word} ${first.segments.map(({ text }) => text).join(".")}` : word;
}

/** The first statement of that name, whatever its word is: `axle front`, `damper side`, `valving V-14`, in any car or shelf. */
function blockAt(entries: readonly Entry[], [name, ...inner]: readonly string[]): Block | undefined {
  if (name === undefined) return undefined;
  for (const entry of entries) {
    if (entry.kind === "row" || entry.block === undefined) continue;
    const [first] = entry.items;
    const isIt = first?.kind === "path" && first.segments.length === 1 && first.segments[0]?.text === name;
    const isAround = ["car", "catalogue"].includes(entry.head.segments[0]?.text ?? "");
    const found =
      isIt && !isAround ? (inner.length === 0 ? entry.block : blockAt(entry.block.entries, inner)) : undefined;
    const within = found ?? (isAround ? blockAt(entry.block.entries, [name, ...inner]) : undefined);
    if (within !== undefined) return within;
  }
  return undefined;
}
