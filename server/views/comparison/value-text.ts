/** Values of a resolved statement as the language writes them, and the difference of two of them. */
import { findWord } from "../../../grammar/vocabulary/index.js";
import type { Concept, Slot } from "../../../grammar/vocabulary/word.js";
import type { ResolvedRow, ResolvedStatement, ResolvedValue } from "../../model/car.js";
import { isSameNumber } from "../../model/same.js";
import { fromSI, parseUnit, showNumber, showQuantity } from "../../quantities/index.js";

/** More than anybody sets, less than what a change of units leaves. */
const DIGITS = 6;

type NumberValue = Extract<ResolvedValue, { kind: "number" }>;

export function valueText(value: ResolvedValue): string {
  switch (value.kind) {
    case "number":
      return showQuantity(value.value, value.unit, DIGITS);
    case "point":
      return pointText(value.value, value.unit);
    case "range": {
      const [from, to] = value.value.map((si) => showNumber(fromSI(si, value.unit) ?? si, DIGITS));
      return `${from} .. ${to} ${value.unit}`.trim();
    }
    case "word":
      return value.text;
    case "text":
      return `"${value.text}"`;
    case "path":
      return value.segments.join(".");
    case "attachment":
      return [
        value.segments.join("."),
        ...(value.point === undefined ? [] : [pointText(value.point.value, value.point.unit)]),
      ].join(" ");
    case "modes":
      return value.modes.map(({ text }) => text).join(" and ");
  }
}

export function pointText(point: readonly number[], unit: string): string {
  return `(${point.map((si) => showNumber(fromSI(si, unit) ?? si, DIGITS)).join(", ")}) ${unit}`.trim();
}

/** Everything behind the head: `3 of 5`, `8 x 20 mm`, `between 150 and 190 N/mm`. A name that it declares is left out. */
export function statementText({ word, form, values, name }: ResolvedStatement, concept: Concept): string {
  const known = findWord(concept, word);
  const slots = known?.takes[form] ?? values.map((): Slot => ({ kind: "body" }));
  const rest = values.filter((value) => !(value.kind === "word" && value.text === name?.text));
  const tokens: string[] = [];
  let next = 0;
  for (const slot of slots) {
    if (slot.kind === "keyword") tokens.push(slot.word);
    else if (slot.kind !== "name") {
      const value = rest[next++];
      if (value !== undefined) tokens.push(withoutRepeatedUnit(value, rest[next]));
    }
  }
  return tokens.join(" ");
}

/** The unit of the last number covers those before it. */
function withoutRepeatedUnit(value: ResolvedValue, following: ResolvedValue | undefined): string {
  const text = valueText(value);
  if (value.kind !== "number" || following?.kind !== "number" || value.unit !== following.unit) return text;
  return value.unit === "" ? text : text.slice(0, -value.unit.length - 1);
}

export const rowText = ({ key, value }: ResolvedRow): string => `${valueText(key)}: ${valueText(value)}`;

/** "+2 mm", "by (0, 0, +3) mm": the only number or point that differs; undefined where there is not exactly one. */
export function differenceText(old: readonly ResolvedValue[], now: readonly ResolvedValue[]): string | undefined {
  const pairs = now.flatMap((value, i) => {
    const before = old[i];
    return before === undefined || isEqualNumber(before, value) ? [] : [[before, value] as const];
  });
  const [pair, more] = pairs;
  if (pair === undefined || more !== undefined || old.length !== now.length) return undefined;
  return differenceOf(...pair);
}

function isEqualNumber(a: ResolvedValue, b: ResolvedValue): boolean {
  if (a.kind === "number" && b.kind === "number") return isSameNumber(a.value, b.value);
  if (a.kind === "word" && b.kind === "word") return a.text === b.text;
  return false;
}

function differenceOf(before: ResolvedValue, value: ResolvedValue): string | undefined {
  if (before.kind === "number" && value.kind === "number") return numberDifference(before, value);
  if (before.kind === "point" && value.kind === "point") return pointDifference(before.value, value.value, value.unit);
  if (
    before.kind === "attachment" &&
    value.kind === "attachment" &&
    before.point !== undefined &&
    value.point !== undefined
  )
    return before.segments.join(".") === value.segments.join(".")
      ? pointDifference(before.point.value, value.point.value, value.point.unit)
      : undefined;
  return undefined;
}

function numberDifference(before: NumberValue, { value, unit, dimension }: NumberValue): string | undefined {
  if (before.dimension !== dimension) return undefined;
  const change = value - before.value;
  const isShare = unit === "%";
  const shown = isShare ? showPoints(change) : showDifference(change, unit);
  const relative = before.value === 0 || isShare || hasOffset(dimension) ? undefined : change / Math.abs(before.value);
  return relative === undefined || !isScale(dimension) ? shown : `${shown}, ${percent(relative)}`;
}

/** Quantities of which a part in a hundred says something: not places, angles and counts. */
const isScale = (dimension: string): boolean =>
  !["length", "angle", "count", "turns", "temperature"].includes(dimension);

const hasOffset = (dimension: string): boolean => dimension === "temperature";

/** A difference in an author's unit, with its sign; degrees of temperature count from nowhere. */
export function showDifference(change: number, unit: string): string {
  const factor = parseUnit(unit)?.factor;
  if (factor === undefined) return signed(change);
  return `${signed(change / factor)} ${unit}`.trim();
}

/** Of two shares: "+0.8 points". */
export const showPoints = (change: number): string => `${signed(change * 100)} points`;

function pointDifference(old: readonly number[], now: readonly number[], unit: string): string | undefined {
  if (old.length !== now.length) return undefined;
  const factor = parseUnit(unit)?.factor ?? 1;
  return `(${now.map((value, i) => signed((value - (old[i] ?? 0)) / factor, true)).join(", ")}) ${unit}`.trim();
}

/** "+2", "-0.5"; a nought that stands for "no change" has no sign. */
function signed(value: number, isPartOfPoint = false): string {
  const text = showNumber(Math.abs(value) < 1e-9 ? 0 : value, 3);
  if (text === "0" && isPartOfPoint) return text;
  return text.startsWith("-") ? text : `+${text}`;
}

/** "+6 %", "-12.5 %". */
export const percent = (relative: number): string => `${signed(Number((relative * 100).toPrecision(3)))} %`;
