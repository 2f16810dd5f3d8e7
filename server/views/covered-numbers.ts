/**
 * The values of a text with their units: which numbers a unit covers, wherever it stands (`(1, 2, 3) mm`, `8 x 30 mm`).
 *
 * Invariant: reads the tree alone; no recursion into sums, which may have ten thousand terms.
 */
import type { Entry, Item, Quantity, Tuple, Unit } from "../../grammar/index.js";

/** A unit and all numbers that it covers. */
export interface Covered {
  readonly unit: Unit;
  readonly numbers: readonly Quantity[];
}

/** All statements and rows, those of blocks included, in the order of the text. */
export function* entriesOf(entries: readonly Entry[]): Generator<Entry> {
  for (const entry of entries) {
    yield entry;
    if (entry.kind === "statement" && entry.block) yield* entriesOf(entry.block.entries);
  }
}

export function itemsOf(entry: Entry): readonly Item[] {
  return entry.kind === "row" ? [entry.key, entry.value] : entry.items;
}

/** Words that join a pair whose one unit stands behind its second number. */
const joints = new Set(["x", "and", "within"]);

export function* coveredIn(items: readonly Item[]): Generator<Covered> {
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
