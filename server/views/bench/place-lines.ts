/**
 * Where imported lines go in a text: the block of an element (`front.side`, `pitch-line`) or of a part (`V-14`), or a
 * set-up, as overrides (`front.side.bump { … }`); in place of the statements that they stand for.
 *
 * Invariant: nothing else in the text changes.
 */
import { format, type Block, type Entry, parse, type Statement } from "../../../grammar/index.js";
import type { Variant } from "./bench.js";

/**
 * The text with the lines in it, or undefined where it has no such element or part, and no one set-up.
 *
 * @param setup the set-up that they are to stand in; undefined for the element or part itself, or else the only set-up
 */
export function withLines(
  text: string,
  path: string,
  { lines, replaces }: Variant,
  setup?: string,
): string | undefined {
  const { entries } = parse(text).document;
  const block = setup === undefined ? blockAt(entries, path.split(".")) : undefined;
  if (block !== undefined) return placed(text, block, lines, replaces);
  const overridden = setupBlock(entries, setup);
  // A part that is fitted stays: what is written below it goes before its own figures.
  const heads = replaces.filter((word) => word !== "fit").map((word) => `${path}.${word}`);
  const overrides = lines.map((line) => `${path}.${line}`);
  return overridden && placed(text, overridden, overrides, heads, overridden.end - 1);
}

function setupBlock(entries: readonly Entry[], name: string | undefined): Block | undefined {
  const all = entries.flatMap((entry) => (entry.kind === "statement" && headOf(entry) === "setup" ? [entry] : []));
  const nameOf = ({ items: [first] }: Statement): string =>
    first?.kind === "path" ? first.segments.map((segment) => segment.text).join(".") : "";
  const found = name === undefined ? all : all.filter((one) => nameOf(one) === name);
  return found.length === 1 ? found[0]?.block : undefined;
}

/** @param atEnd where they go if nothing gives way to them; undefined for the beginning of the block */
function placed(
  text: string,
  block: Block,
  lines: readonly string[],
  replaces: readonly string[],
  atEnd?: number,
): string {
  const old = block.entries.flatMap((entry) =>
    entry.kind === "statement" && replaces.includes(headOf(entry)) ? [entry] : [],
  );
  const [first] = old;
  // Notes above the first stay: they tell what the lines are for.
  const at = first === undefined ? (atEnd ?? block.start + 1) : first.head.start;
  const cuts = [
    { start: at, end: first === undefined ? at : endWithComma(text, first.end) },
    ...old.slice(1).map((entry) => lineOf(text, entry.start, endWithComma(text, entry.end))),
  ];
  const rest = text.slice(cuts[0]?.end ?? at);
  const put = `${first === undefined && !/\n[ \t]*$/.test(text.slice(0, at)) ? "\n" : ""}${lines.join("\n")}${/^[ \t]*(?:\r?\n|#|\})/.test(rest) ? "" : "\n"}`;
  let made = "";
  let from = 0;
  for (const [i, { start, end }] of cuts.entries()) {
    made += text.slice(from, start) + (i === 0 ? put : "");
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
