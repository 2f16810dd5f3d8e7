/**
 * What differs between the left and the right side of the axles of a car: points of the linkage and of
 * bars, figures of the wheel, and the words of corner elements. Each with the line that makes it so.
 */
import { cross, mirror, norm, sub } from "../maths/vec3.js";
import type { AxleModel, CarModel, CornerModel, Rod } from "../model/car.js";
import type { Given, Sides } from "../model/origin.js";
import { fromSI, showNumber, showQuantity } from "../quantities/index.js";
import type { Difference } from "./difference.js";
import { differencesOfElements } from "./side-elements.js";
import { type Point, pointsOfAxle } from "./side-points.js";

export function differencesOf(car: CarModel): readonly Difference[] {
  return [car.axles.front, car.axles.rear].flatMap((axle) =>
    // An axle whose right side has no lines of its own is the mirror of its left one.
    axle?.rightBlock === undefined
      ? []
      : [...points(axle), ...rods(axle), ...wheels(axle), ...differencesOfElements(axle)],
  );
}

/** Two places closer than this are the same: rounding of units, m. */
const SAME = 1e-9;

function points(axle: AxleModel): readonly Difference[] {
  const kinds = differentKinds(axle.name, axle.corner);
  if (kinds !== undefined) return [kinds];
  const left = pointsOfAxle(axle, "left");
  const right = new Map(pointsOfAxle(axle, "right"));
  return left.flatMap(([what, point]) => {
    const other = right.get(what);
    if (other === undefined || isMirrored(what, point.value, other.value)) return [];
    return [differenceOf(axle.name, what, { left: point, right: other }, coordinates)];
  });
}

function differentKinds(axle: AxleModel["name"], { left, right }: Sides<CornerModel>): Difference | undefined {
  if (left.kind === right.kind) return undefined;
  const shown = { left: left.kind, right: right.kind };
  const { origin } = right;
  return { axle, what: `${axle} linkage`, shown, side: "right", origin, statement: origin, other: left.origin };
}

type Space = readonly [number, number, number];

/** (x, y, z), or (y, z) in a planar linkage. */
const inSpace = (p: readonly number[]): Space =>
  p.length === 2 ? [0, p[0] ?? 0, p[1] ?? 0] : [p[0] ?? 0, p[1] ?? 0, p[2] ?? 0];

/** An axis is a line: which way it is drawn says nothing. */
function isMirrored(what: string, left: readonly number[], right: readonly number[]): boolean {
  const [a, b] = [inSpace(left), mirror(inSpace(right))];
  if (what.endsWith(" axis")) return norm(cross(a, b)) <= SAME * norm(a) * norm(b);
  return left.length === right.length && norm(sub(a, b)) < SAME;
}

function coordinates({ value, unit }: Point): string {
  const numbers = value.map((metres) => showNumber(fromSI(metres, unit) ?? metres, 6));
  return `(${numbers.join(", ")}) ${unit}`.trim();
}

/** A rod that is set longer or shorter than the other one. */
function rods({ name, corner }: AxleModel): readonly Difference[] {
  const [left, right] = [rodOf(corner.left), rodOf(corner.right)];
  if (left === undefined || right === undefined) return [];
  if (isSame(left.longer?.value ?? 0, right.longer?.value ?? 0)) return [];
  const shown = { left: setLength(left), right: setLength(right) };
  const own = right.longer === undefined || (left.longer !== undefined && isOneSided(left.longer, right.longer));
  const side = own ? "left" : "right";
  const { longer } = own ? left : right;
  if (longer === undefined) return [];
  const other = (own ? right : left).longer?.origin;
  const { origin, statement } = longer;
  return [{ axle: name, what: `${name} ${left.kind}`, shown, side, origin, statement, other }];
}

const rodOf = (corner: CornerModel) =>
  corner.kind === "hardpoints" || corner.kind === "planar" ? corner.rod : undefined;

const setLength = ({ longer }: Pick<Rod, "longer">): string =>
  longer === undefined || longer.value === 0
    ? "as long as drawn"
    : `${showQuantity(Math.abs(longer.value), longer.unit, 6)} ${longer.value < 0 ? "shorter" : "longer"} than drawn`;

const wheelWords = [
  ["camber", "camber"],
  ["toe", "toe"],
  ["loaded-radius", "loadedRadius"],
  ["unsprung-mass", "unsprungMass"],
  ["tyre-rate", "tyreRate"],
  ["tyre-damping", "tyreDamping"],
] as const;

function wheels({ name, wheel }: AxleModel): readonly Difference[] {
  return wheelWords.flatMap(([word, key]) => {
    const left = wheel.left[key];
    const right = wheel.right[key];
    if (left === undefined || right === undefined || isSame(left.value, right.value)) return [];
    return [differenceOf(name, `${name} ${word}`, { left, right }, ({ value, unit }) => showQuantity(value, unit, 6))];
  });
}

const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));

/** The line of the side that was set later, and so by itself, is the one to look at. */
function differenceOf<T>(
  axle: AxleModel["name"],
  what: string,
  { left, right }: Sides<Given<T>>,
  show: (given: Given<T>) => string,
): Difference {
  const side = isOneSided(right, left) ? "right" : "left";
  const [own, other] = side === "right" ? [right, left] : [left, right];
  const shown = { left: show(left), right: show(right) };
  return { axle, what, shown, side, origin: own.origin, statement: own.statement, other: other.origin };
}

/** The one with the longer history was overridden; with equal ones the later line. */
function isOneSided<T>(a: Given<T>, b: Given<T>): boolean {
  if (a.chain.length !== b.chain.length) return a.chain.length > b.chain.length;
  return a.origin.uri !== b.origin.uri || a.origin.start > b.origin.start;
}
