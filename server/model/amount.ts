/**
 * A number with its dimension while an expression is worked out. SI throughout; `unit` is the
 * author's unit in which the result is shown, where one of the operands suggests it.
 */
import { baseDimensions, dimensions, type Exponents } from "../../grammar/vocabulary/dimensions.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";

export interface Amount {
  readonly si: number;
  readonly exponents: Exponents;
  readonly unit: string;
}

export type { UnitInfo } from "../quantities/index.js";

export const plainNumber = dimensions.number;

export const isPlain = (exponents: Exponents): boolean => sameDimension(exponents, plainNumber);

export function sameDimension(a: Exponents, b: Exponents): boolean {
  return (
    a === b ||
    (a.length === b.length &&
      a.mass === b.mass &&
      a.time === b.time &&
      a.angle === b.angle &&
      a.temperature === b.temperature &&
      a.turn === b.turn)
  );
}

/** Exponents of a product (`sign` 1) or a quotient (−1). */
export function combine(a: Exponents, b: Exponents, sign: 1 | -1): Exponents {
  return {
    length: a.length + sign * b.length,
    mass: a.mass + sign * b.mass,
    time: a.time + sign * b.time,
    angle: a.angle + sign * b.angle,
    temperature: a.temperature + sign * b.temperature,
    turn: a.turn + sign * b.turn,
  };
}

type Known = Exclude<DimensionName, "any">;
const names = Object.keys(dimensions) as Known[];

/** The first dimension of the table that is made of these. */
export function nameOfDimension(exponents: Exponents): Known | undefined {
  return names.find((name) => sameDimension(dimensions[name], exponents));
}

/** For messages: the dimension's name, else what it is made of (`length^2*mass`). */
export function describeDimension(exponents: Exponents): string {
  const parts = baseDimensions.filter((base) => exponents[base] !== 0);
  return (
    nameOfDimension(exponents) ??
    parts.map((base) => (exponents[base] === 1 ? base : `${base}^${exponents[base]}`)).join("*")
  );
}
