/** Values between the author's unit and SI, and which dimension a unit has. */
import { baseDimensions, dimensions, type Exponents } from "../../grammar/vocabulary/dimensions.js";
import { usualUnits } from "../../grammar/vocabulary/units.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import { parseUnit, type UnitInfo } from "./unit.js";

/** SI value; undefined where the unit is not known. */
export function toSI(value: number, unitText: string): number | undefined {
  const unit = parseUnit(unitText);
  return unit === undefined ? undefined : valueToSI(value, unit);
}

/** Value in the unit; undefined where the unit is not known. */
export function fromSI(si: number, unitText: string): number | undefined {
  const unit = parseUnit(unitText);
  return unit === undefined ? undefined : valueFromSI(si, unit);
}

/** value · numerator / denominator + offset, for callers that hold the unit already. */
export function valueToSI(value: number, unit: UnitInfo): number {
  return (value * unit.numerator) / unit.denominator + (unit.offset ?? 0);
}

function valueFromSI(si: number, unit: UnitInfo): number {
  return ((si - (unit.offset ?? 0)) * unit.denominator) / unit.numerator;
}

/**
 * Whether a value in this unit may stand where the dimension is due. A share asks for `%`, a
 * plain number for no unit at all (a quotient such as mm/mm, or %, will do), a count for none.
 */
export function matchesDimension(unit: UnitInfo, dimension: DimensionName): boolean {
  if (dimension === "any") return true;
  if (!sameExponents(unit.dimension, dimensions[dimension])) return false;
  if (dimension === "share") return unit.percent;
  return dimension !== "count" || unit.text === "";
}

function sameExponents(a: Exponents, b: Exponents): boolean {
  return baseDimensions.every((name) => a[name] === b[name]);
}

type Known = Exclude<DimensionName, "any">;
const names = Object.keys(dimensions) as Known[];

/** Dimensions that share their exponents with an everyday one: only the usual unit tells them. */
const rarer: ReadonlySet<Known> = new Set(["count", "area-slope", "piston-area", "damper-speed", "modulus", "stress"]);

/** The dimension that a unit is mostly used for; undefined where it is unknown or has none in the table. */
export function dimensionOfUnit(unitText: string): DimensionName | undefined {
  const unit = parseUnit(unitText);
  if (unit === undefined) return undefined;
  const fitting = names.filter((name) => matchesDimension(unit, name));
  const listed = fitting.filter((name) => [...usualUnits[name].si, ...usualUnits[name].inch].includes(unitText));
  return listed.find((name) => name !== "count") ?? fitting.find((name) => !rarer.has(name)) ?? fitting[0];
}
