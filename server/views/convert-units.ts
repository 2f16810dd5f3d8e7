/**
 * Rewrites values in the units of the other system, here or in the whole file: a refactoring,
 * not a finding. In: a parsed file, the system wanted, and the part of the text to convert.
 * Out: edits of digits and units only.
 *
 * A converted number says the same as the written one (`converted-number.ts` says how closely), so
 * the car stays the same, and converting back gives the written number again. What cannot be told exactly (a unit behind a bracketed sum) stays as it is.
 *
 * Invariant: pure; a file without units of the other system comes out unchanged.
 */
import type { Entry, Item, Parsed, Quantity, Span, Tuple, Unit } from "../../grammar/index.js";
import type { TextEdit } from "../findings/finding.js";
import { convertedNumber } from "./converted-number.js";
import { counterpart, type UnitTarget } from "./unit-counterparts.js";

export type { UnitTarget } from "./unit-counterparts.js";

/** A unit and all numbers that it covers. */
interface Covered {
  readonly unit: Unit;
  readonly numbers: readonly Quantity[];
}

/** @param within convert only values that this part of the text touches; the whole file without it. */
export function convertUnits(uri: string, parsed: Parsed, target: UnitTarget, within?: Span): readonly TextEdit[] {
  const edits: TextEdit[] = [];
  for (const entry of entriesOf(parsed.document.entries)) {
    for (const covered of coveredIn(itemsOf(entry))) {
      if (within === undefined || touches(covered, within)) edits.push(...converted(uri, covered, target));
    }
  }
  return edits;
}

function touches({ unit, numbers }: Covered, span: Span): boolean {
  const start = Math.min(unit.start, ...numbers.map((number) => number.start));
  return start <= span.end && span.start <= unit.end;
}

function converted(uri: string, { unit, numbers }: Covered, target: UnitTarget): readonly TextEdit[] {
  const text = counterpart(unit.text, target);
  if (text === undefined) return [];
  const edits: TextEdit[] = [];
  for (const number of numbers) {
    const newText = convertedNumber(number.digits, unit.text, text);
    if (newText === undefined) return [];
    edits.push({ uri, span: { start: number.start, end: number.start + number.digits.length }, newText });
  }
  return [...edits, { uri, span: { start: unit.start, end: unit.end }, newText: text }];
}

function* entriesOf(entries: readonly Entry[]): Generator<Entry> {
  for (const entry of entries) {
    yield entry;
    if (entry.kind === "statement" && entry.block) yield* entriesOf(entry.block.entries);
  }
}

function itemsOf(entry: Entry): readonly Item[] {
  return entry.kind === "row" ? [entry.key, entry.value] : entry.items;
}

/** Words that join a pair whose one unit stands behind its second number. */
const joints = new Set(["x", "and", "within"]);

function* coveredIn(items: readonly Item[]): Generator<Covered> {
  for (const [index, item] of items.entries()) {
    const first = items[index - 2];
    const pair = first?.kind === "quantity" && !first.unit && isJoint(items[index - 1]) ? [first] : [];
    if (item.kind === "quantity") {
      if (item.unit) yield { unit: item.unit, numbers: [...pair, item] };
    } else yield* coveredInside(item);
  }
}

function isJoint(item: Item | undefined): boolean {
  return item?.kind === "path" && item.segments.length === 1 && joints.has(item.segments[0]?.text ?? "");
}

/** A stack instead of recursion: a sum may have ten thousand terms. */
function* coveredInside(root: Item): Generator<Covered> {
  const pending: Item[] = [root];
  for (let item = pending.pop(); item; item = pending.pop()) {
    if (item.kind === "quantity" && item.unit) yield { unit: item.unit, numbers: [item] };
    else if (item.kind === "tuple") yield* inTuple(item);
    else if (item.kind === "range") yield* inRange(item.from, item.to);
    else pending.push(...partsOf(item));
  }
}

function partsOf(item: Item): readonly Item[] {
  if (item.kind === "binary") return [item.right, item.left];
  if (item.kind === "negation") return [item.operand];
  return item.kind === "group" && !item.unit ? [item.inner] : [];
}

function* inTuple(tuple: Tuple): Generator<Covered> {
  const numbers = tuple.members.filter((member) => member.kind === "quantity");
  for (const number of numbers) if (number.unit) yield { unit: number.unit, numbers: [number] };
  // A sum inside takes the tuple's unit too, and only its plain numbers: left to the author.
  if (!tuple.unit || numbers.length < tuple.members.length) return;
  yield { unit: tuple.unit, numbers: numbers.filter((number) => !number.unit) };
}

function* inRange(from: Item, to: Item): Generator<Covered> {
  if (from.kind !== "quantity" || to.kind !== "quantity" || !to.unit) return;
  if (from.unit) yield { unit: from.unit, numbers: [from] };
  yield { unit: to.unit, numbers: from.unit ? [to] : [from, to] };
}
