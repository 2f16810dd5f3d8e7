/**
 * A line that stands for one side by itself (`right { rocker { … } }`, `front.right.rocker.third …`): where it is in the tree,
 * what it says, and what the same would be on the other side.
 *
 * In: the tree of a file and a place in such a line. Out: parts of the tree and text; nothing is changed here.
 */
import type { Document, Entry, Path, Span, Statement } from "../../grammar/index.js";
import type { Side } from "../model/origin.js";
import { contains } from "./tree.js";

export interface SidedLine {
  readonly side: Side;
  /** From the declaration down to the line itself. */
  readonly chain: readonly Statement[];
  readonly line: Statement;
  /** The outermost statement that holds nothing but the line. */
  readonly shell: Statement;
}

export function sidedLineAt(document: Document, place: Span): SidedLine | undefined {
  return sidedLine(chainTo(document, place));
}

/** @param chain the statements around a line, from the declaration down to it */
export function sidedLine(chain: readonly Statement[]): SidedLine | undefined {
  const whole = wholeLine(chain);
  const line = whole.at(-1);
  const side = whole.map(({ head }) => sideIn(head)).find((found) => found !== undefined);
  return line && side && { side, chain: whole, line, shell: shellOf(whole, line) };
}

function sideIn({ segments }: Path): Side | undefined {
  for (const { text } of segments) if (text === "left" || text === "right") return text;
  return undefined;
}

export function chainTo({ entries }: Document, place: Span): readonly Statement[] {
  const holding = (inside: readonly Entry[]): readonly Statement[] => {
    const found = inside.find((entry) => entry.kind === "statement" && contains(entry, place));
    return found?.kind === "statement" ? [found, ...holding(found.block?.entries ?? [])] : [];
  };
  return holding(entries);
}

/** A lever is said as a whole or not at all. */
export function wholeLine(chain: readonly Statement[]): readonly Statement[] {
  const lever = chain.findIndex(({ head }) => head.segments.at(-1)?.text === "lever");
  return lever === -1 ? chain : chain.slice(0, lever + 1);
}

/** Never the declaration itself. */
function shellOf(chain: readonly Statement[], line: Statement): Statement {
  let shell = line;
  for (const around of [...chain].reverse().slice(1, -1)) {
    if (around.block?.entries.length !== 1) break;
    shell = around;
  }
  return shell;
}

/** Where a line says what it says: behind its word, and an eye's name. */
export function valueSpan({ head, items, block }: Statement): Span | undefined {
  const isNamed = head.segments.at(-1)?.text === "eye";
  const first = items[isNamed ? 1 : 0] ?? block;
  const last = block ?? items.at(-1);
  return first && last && { start: first.start, end: last.end };
}

/** What a line of one side says, as the other side would say it; undefined where a point is not of plain numbers. */
export function mirroredValue(written: string): string | undefined {
  const mirrored = written.replace(/\([^()]*\)/g, (tuple) => mirroredTuple(tuple) ?? "?");
  return mirrored.includes("?") ? undefined : mirrored;
}

/** The tuple with its y turned round; undefined where it is not a plain number. */
function mirroredTuple(tuple: string): string | undefined {
  const match = /^(\((?:[^,]+,(?=[^,]*,))?\s*)([-+]?)([\d.]+)(\s*,[^,]*\))$/.exec(tuple);
  if (match === null) return undefined;
  const [, before = "", sign = "", digits = "", after = ""] = match;
  return before + (sign === "-" || Number(digits) === 0 ? "" : "-") + digits + after;
}

/** The path to the line without its side: heads, and the names of what is opened by name. */
export function pathWithoutSide(chain: readonly Statement[]): string {
  const steps = chain.slice(1).flatMap(({ head, items, block }, index, { length }) => {
    const own = head.segments.map(({ text }) => text).filter((text) => text !== "left" && text !== "right");
    const [name] = items;
    const opened = index < length - 1 && block !== undefined && name?.kind === "path" ? name : undefined;
    if (opened !== undefined) return opened.segments.map(({ text }) => text);
    return own.at(-1) === "eye" && name?.kind === "path"
      ? [...own.slice(0, -1), ...name.segments.map(({ text }) => text)]
      : own;
  });
  return steps.join(".");
}
