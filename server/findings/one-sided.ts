/**
 * Lines that stand for one side (`right { rocker { … } }`, `front.right.rocker.third …`): taking one out so
 * that its side mirrors the other again, or giving the other side the same.
 *
 * In: the tree of the file and a place in such a line. Out: edits of that file, or nothing where the line
 * is not for one side by itself. Whether they do what they are for is the caller's to prove.
 */
import type { Document, Entry, Path, Span, Statement } from "../../grammar/index.js";
import type { CarModel } from "../model/car.js";
import type { RuleContext } from "./context.js";
import type { Difference } from "./difference.js";
import { removal } from "./edits.js";
import type { TextEdit } from "./finding.js";
import { isInside, lineAdded } from "./setup-lines.js";
import { contains } from "./tree.js";

interface OneSided {
  /** From the declaration down to the line itself. */
  readonly chain: readonly Statement[];
  readonly line: Statement;
  /** The outermost statement that holds nothing but the line. */
  readonly shell: Statement;
}

/** The difference seen from the line that stands for one side: which of the two lines that is, only the tree can tell. */
export function seenFromOwnLine(context: RuleContext, difference: Difference): Difference {
  const { side, origin, other, statement } = difference;
  if (other === undefined || oneSidedAt(context, statement) !== undefined) return difference;
  const found = oneSidedAt(context, other);
  if (found === undefined) return difference;
  const { start, end } = found.line;
  const own = { uri: context.uri, start, end };
  return { ...difference, side: side === "left" ? "right" : "left", origin: other, statement: own, other: origin };
}

/** The edits that take the one-sided line out. */
export function mirrorAgain(context: RuleContext, { statement }: Difference): readonly TextEdit[] | undefined {
  const found = oneSidedAt(context, statement);
  return found && [removed(context, found.shell)];
}

/** The edits that give both sides what the one-sided line says. */
export function sameOnBoth(
  context: RuleContext,
  car: CarModel,
  difference: Difference,
): readonly TextEdit[] | undefined {
  const found = oneSidedAt(context, difference.statement);
  const value = found && valueText(context, found.line, difference.side);
  if (found === undefined || value === undefined) return undefined;
  return car.setup === undefined
    ? inCar(context, found, difference, value)
    : inSetup(context, car, found, difference, value);
}

function oneSidedAt(context: RuleContext, place: Span & { readonly uri: string }): OneSided | undefined {
  if (place.uri !== context.uri) return undefined;
  const chain = wholeLine(chainTo(context.parsed.document, place));
  const line = chain.at(-1);
  if (line === undefined || !chain.some(({ head }) => sideIn(head) !== undefined)) return undefined;
  return { chain, line, shell: shellOf(chain, line) };
}

const sideIn = ({ segments }: Path) => segments.find(({ text }) => text === "left" || text === "right");

function chainTo({ entries }: Document, place: Span): readonly Statement[] {
  const holding = (inside: readonly Entry[]): readonly Statement[] => {
    const found = inside.find((entry) => entry.kind === "statement" && contains(entry, place));
    return found?.kind === "statement" ? [found, ...holding(found.block?.entries ?? [])] : [];
  };
  return holding(entries);
}

/** A lever is said as a whole or not at all. */
function wholeLine(chain: readonly Statement[]): readonly Statement[] {
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

/** With the notes that are about it. */
function removed({ uri, text }: RuleContext, { start, end, notes }: Statement): TextEdit {
  return { uri, span: removal(text, { start: notes[0]?.start ?? start, end }), newText: "" };
}

/** Where a line says what it says: behind its word, and an eye's name. */
function valueSpan({ head, items, block }: Statement): Span | undefined {
  const isNamed = head.segments.at(-1)?.text === "eye";
  const first = items[isNamed ? 1 : 0] ?? block;
  const last = block ?? items.at(-1);
  return first && last && { start: first.start, end: last.end };
}

/** What the line says, as it would be said of the left side and so of both. */
function valueText({ text }: RuleContext, line: Statement, side: Difference["side"]): string | undefined {
  const span = valueSpan(line);
  const written = span && text.slice(span.start, span.end);
  if (written === undefined || side === "left") return written;
  const mirrored = written.replace(/\([^()]*\)/g, (tuple) => mirroredText(tuple) ?? "?");
  return mirrored.includes("?") ? undefined : mirrored;
}

/** The tuple with its y turned round; undefined where it is not a plain number. */
function mirroredText(tuple: string): string | undefined {
  const match = /^(\((?:[^,]+,(?=[^,]*,))?\s*)([-+]?)([\d.]+)(\s*,[^,]*\))$/.exec(tuple);
  if (match === null) return undefined;
  const [, before = "", sign = "", digits = "", after = ""] = match;
  return before + (sign === "-" || Number(digits) === 0 ? "" : "-") + digits + after;
}

/** The shared line takes the value over; the one-sided one goes. */
function inCar(
  context: RuleContext,
  { shell }: OneSided,
  { other }: Difference,
  value: string,
): readonly TextEdit[] | undefined {
  const shared = other && wholeLine(chainTo(context.parsed.document, other)).at(-1);
  const span = shared && valueSpan(shared);
  if (other?.uri !== context.uri || span === undefined) return undefined;
  return [{ uri: context.uri, span, newText: value }, removed(context, shell)];
}

/** A line for both sides in place of the one-sided one; one of the other side's own goes too. */
function inSetup(
  context: RuleContext,
  car: CarModel,
  { chain, shell }: OneSided,
  { other, axle }: Difference,
  value: string,
): readonly TextEdit[] | undefined {
  const line = `${pathOf(chain)} ${value}`;
  const own = other !== undefined && isInside(other, car.origin) ? oneSidedAt(context, other) : undefined;
  const also = own === undefined ? [] : [removed(context, own.shell)];
  if (chain[1] === shell) {
    const span = { start: shell.start, end: shell.end };
    return [{ uri: context.uri, span, newText: line }, ...also];
  }
  const added = lineAdded(context, car, axle, line);
  return added && [added, removed(context, shell), ...also];
}

/** The path to the line without its side: heads, and the names of what is opened by name. */
function pathOf(chain: readonly Statement[]): string {
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
