/**
 * Lines that stand for one side (`right { rocker { … } }`, `front.right.rocker.third …`): taking one out so
 * that its side mirrors the other again, or giving the other side the same.
 *
 * In: the tree of the file and a place in such a line. Out: edits of that file, or nothing where the line
 * is not for one side by itself. Whether they do what they are for is the caller's to prove.
 */
import type { Statement } from "../../grammar/index.js";
import type { CarModel } from "../model/car.js";
import type { RuleContext } from "./context.js";
import type { Difference } from "./difference.js";
import { removal } from "./edits.js";
import type { TextEdit } from "./finding.js";
import { isInside, lineAdded } from "./setup-lines.js";
import {
  chainTo,
  mirroredValue,
  pathWithoutSide,
  type SidedLine,
  sidedLineAt,
  valueSpan,
  wholeLine,
} from "./sided-line.js";

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

function oneSidedAt(context: RuleContext, place: Difference["statement"]): SidedLine | undefined {
  return place.uri === context.uri ? sidedLineAt(context.parsed.document, place) : undefined;
}

/** With the notes that are about it. */
function removed({ uri, text }: RuleContext, { start, end, notes }: Statement): TextEdit {
  return { uri, span: removal(text, { start: notes[0]?.start ?? start, end }), newText: "" };
}

/** What the line says, as it would be said of the left side and so of both. */
function valueText({ text }: RuleContext, line: Statement, side: Difference["side"]): string | undefined {
  const span = valueSpan(line);
  const written = span && text.slice(span.start, span.end);
  return written === undefined || side === "left" ? written : mirroredValue(written);
}

/** The shared line takes the value over; the one-sided one goes. */
function inCar(
  context: RuleContext,
  { shell }: SidedLine,
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
  { chain, shell }: SidedLine,
  { other, axle }: Difference,
  value: string,
): readonly TextEdit[] | undefined {
  const line = `${pathWithoutSide(chain)} ${value}`;
  const own = other !== undefined && isInside(other, car.origin) ? oneSidedAt(context, other) : undefined;
  const also = own === undefined ? [] : [removed(context, own.shell)];
  if (chain[1] === shell) {
    const span = { start: shell.start, end: shell.end };
    return [{ uri: context.uri, span, newText: line }, ...also];
  }
  const added = lineAdded(context, car, axle, line);
  return added && [added, removed(context, shell), ...also];
}
