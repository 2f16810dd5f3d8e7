/**
 * From an item of the syntax tree and the slot that it stands in to a typed value in SI, or to a
 * problem: unit missing, unknown or of the wrong dimension, a limit broken, a number that is not whole.
 *
 * Invariant: a value that is returned is finite and within the hard limits of its word.
 */
import type { Item, Quantity, Range, Tuple } from "../../grammar/index.js";
import { dimensions } from "../../grammar/vocabulary/dimensions.js";
import type { DimensionName, Slot, Word } from "../../grammar/vocabulary/word.js";
import { matchesDimension, parseUnit, unitsOf, usualUnit, valueToSI } from "../quantities/index.js";
import { isPlain, sameDimension, type Amount, type UnitInfo } from "./amount.js";
import type { ResolvedValue } from "./car.js";
import { evaluate, reportDimension, reportForm, reportUnit, type Names } from "./expressions.js";
import { checkRange } from "./limits.js";
import type { Origin } from "./origin.js";
import { at } from "./sink.js";

export interface ValueReader extends Names {
  /** The statement that is being read: every value says which it belongs to. */
  readonly statement: Origin;
  /** Whose limits hold; undefined in rows, `by` and lets, which have none of their own. */
  readonly limits: Word | undefined;
}

type NumberValue = Extract<ResolvedValue, { kind: "number" }>;
type QuantitySlot = Extract<Slot, { kind: "quantity" }>;

/** `pair` is the unit of the next number, which covers this one too (`8 x 30 mm`). */
export function readNumber(
  item: Item,
  slot: QuantitySlot,
  reader: ValueReader,
  pair: string | undefined,
): NumberValue | undefined {
  const measured = readMeasured(item, slot.dimension, reader, pair);
  if (measured === undefined) return undefined;
  if (slot.dimension === "count" && !Number.isInteger(measured.si)) {
    reportForm(item, reader, "Only a whole number will do.");
    return undefined;
  }
  const { si, unit, dimension } = measured;
  const origin = at(reader.uri, item);
  if (reader.limits !== undefined && !checkRange(reader.limits, slot, measured, origin, reader)) return undefined;
  return { kind: "number", dimension, value: si, unit, origin, statement: reader.statement, chain: noChain };
}

/** Shared by all values that replaced nothing. */
const noChain: readonly Origin[] = [];

interface Measured {
  readonly si: number;
  readonly unit: string;
  readonly dimension: DimensionName;
}

function readMeasured(
  item: Item,
  dimension: DimensionName,
  reader: ValueReader,
  pair: string | undefined,
): Measured | undefined {
  if (item.kind === "quantity") return readLiteral(item, dimension, reader, pair);
  const cover = pair === undefined ? undefined : parseUnit(pair);
  const amount = underUnit(evaluate(item, reader, cover), cover);
  if (amount === undefined) return undefined;
  if (dimension !== "any" && !sameDimension(amount.exponents, dimensions[dimension])) {
    reportDimension(reader, item, dimension, amount);
    return undefined;
  }
  return { si: amount.si, unit: shownIn(amount, dimension), dimension };
}

/** A sum of plain numbers is covered by the unit behind the brackets as a single number is. */
function underUnit(amount: Amount | undefined, cover: UnitInfo | undefined): Amount | undefined {
  if (amount === undefined || cover === undefined || !isPlain(amount.exponents)) return amount;
  return { si: valueToSI(amount.si, cover), exponents: cover.dimension, unit: cover.text };
}

function shownIn(amount: Amount, dimension: DimensionName): string {
  const unit = amount.unit === "" ? undefined : parseUnit(amount.unit);
  if (unit !== undefined && sameDimension(unit.dimension, amount.exponents)) return amount.unit;
  return dimension === "any" || isPlain(amount.exponents) ? "" : usualUnit(dimension, "si");
}

function readLiteral(
  item: Quantity,
  dimension: DimensionName,
  reader: ValueReader,
  pair: string | undefined,
): Measured | undefined {
  const text = item.unit?.text ?? pair;
  if (text === undefined) {
    if (takesPlain(dimension)) return { si: item.value, unit: "", dimension };
    reportMissingUnit(item, item.digits, dimension, reader);
    return undefined;
  }
  const unit = unitFor(text, dimension, item.unit ?? item, item, reader);
  if (unit === undefined) return undefined;
  const si = valueToSI(item.value, unit);
  if (Number.isFinite(si)) return { si, unit: text, dimension };
  reportForm(item, reader, "Its value is beyond all bounds.");
  return undefined;
}

const takesPlain = (dimension: DimensionName): boolean =>
  dimension === "number" || dimension === "count" || dimension === "any";

function reportMissingUnit(item: Item, digits: string, dimension: DimensionName, reader: ValueReader): void {
  const candidates = unitsOf(dimension);
  reader.report({ ...at(reader.uri, item), kind: "missing-unit", digits, dimension, candidates });
}

/** The unit, if it exists and measures the dimension; else the problem is told. */
function unitFor(
  text: string,
  dimension: DimensionName,
  place: { readonly start: number; readonly end: number },
  item: Item,
  reader: ValueReader,
): UnitInfo | undefined {
  const unit = parseUnit(text);
  if (unit === undefined) {
    reportUnit(reader, place, text, dimension);
    return undefined;
  }
  if (matchesDimension(unit, dimension)) return unit;
  reportDimension(reader, item, dimension, { si: 0, exponents: unit.dimension, unit: text });
  return undefined;
}

type PointSlot = Extract<Slot, { kind: "point" }>;

export function readPoint(item: Tuple, slot: PointSlot, reader: ValueReader): ResolvedValue | undefined {
  if (item.members.length !== slot.size) {
    const wanted = slot.size === 3 ? "Three coordinates are due: (x, y, z)." : "Two coordinates are due: (y, z).";
    reportForm(item, reader, wanted);
    return undefined;
  }
  const text = item.unit?.text;
  const unit = text === undefined ? undefined : unitFor(text, slot.dimension, item, item, reader);
  if (text !== undefined && unit === undefined) return undefined;
  if (text === undefined && slot.dimension === "length" && item.members.every(isBare)) {
    reportMissingUnit(item, "The point", slot.dimension, reader);
    return undefined;
  }
  const value = coordinates(item, slot, reader, unit);
  if (value === undefined) return undefined;
  const { statement } = reader;
  const origin = at(reader.uri, item);
  return { kind: "point", value, unit: text ?? unitOfMembers(item, slot), origin, statement, chain: noChain };
}

function coordinates(
  { members }: Tuple,
  { dimension, size }: PointSlot,
  reader: ValueReader,
  unit: UnitInfo | undefined,
): readonly number[] | undefined {
  const x = coordinate(members[0] as Item, dimension, reader, unit);
  const y = coordinate(members[1] as Item, dimension, reader, unit);
  const z = size === 3 ? coordinate(members[2] as Item, dimension, reader, unit) : 0;
  if (Number.isNaN(x) || Number.isNaN(y) || Number.isNaN(z)) return undefined;
  return size === 3 ? [x, y, z] : [x, y];
}

/** NaN where it could not be read; a problem is told. Plain numbers under one unit are nearly all there is. */
function coordinate(item: Item, dimension: DimensionName, reader: ValueReader, unit: UnitInfo | undefined): number {
  if (item.kind === "quantity" && item.unit === undefined && unit !== undefined) {
    const si = valueToSI(item.value, unit);
    if (Number.isFinite(si)) return si;
  }
  return readMeasured(item, dimension, reader, unit?.text)?.si ?? Number.NaN;
}

const isBare = (item: Item): boolean => item.kind === "quantity" && item.unit === undefined;

function unitOfMembers(item: Tuple, slot: PointSlot): string {
  if (slot.dimension === "number") return "";
  for (const member of item.members)
    if (member.kind === "quantity" && member.unit !== undefined) return member.unit.text;
  return usualUnit("length", "si");
}

type RangeSlot = Extract<Slot, { kind: "range" }>;

export function readRange(item: Range, slot: RangeSlot, reader: ValueReader): ResolvedValue | undefined {
  const quantity: QuantitySlot = { kind: "quantity", dimension: slot.dimension };
  const pair = item.to.kind === "quantity" ? item.to.unit?.text : undefined;
  const from = readNumber(item.from, quantity, reader, pair);
  const to = readNumber(item.to, quantity, reader, undefined);
  if (from === undefined || to === undefined) return undefined;
  if (from.value >= to.value) {
    reportForm(item, reader, "The first end of the range has to be below the second.");
    return undefined;
  }
  const { unit } = to;
  const value = [from.value, to.value] as const;
  return { kind: "range", value, unit, origin: at(reader.uri, item), statement: reader.statement, chain: noChain };
}
