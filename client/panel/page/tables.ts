/**
 * Reads the server's tables between their entries: a cubic through the four entries around a place, in travel and in steer.
 *
 * A step h on a circle of radius r is met to h⁴/24r³ by it, where a straight line would be off by h²/8r: half a
 * millimetre at the rim of a steered wheel. A place that the links do not reach (`null`) has no value in between either; the
 * stretch beside it is read on a straight line.
 */
import type { PanelCorner, PanelPoint } from "../../../server/lsp/protocol-panel.js";
import type { Point3 } from "./geometry.js";

type Table = readonly (number | null)[];

/** Entries of a table and how much each counts; they sum up to 1. */
type Entries = readonly (readonly [index: number, weight: number])[];

export interface Weights {
  readonly cubic: Entries;
  /** Of the nearest entries alone. */
  readonly straight: Entries;
}

/** Entries that a cubic goes through. */
const CUBIC = 4;

/** Of a rising axis: the entries around a value, which is kept inside. */
export function weightsOn(axis: readonly number[], at: number): Weights {
  const last = axis.length - 1;
  const [low, high] = [axis[0], axis[last]];
  if (low === undefined || high === undefined) return { cubic: [], straight: [] };
  const inside = Math.min(high, Math.max(low, at));
  const cell = cellOf(axis, inside);
  const straight = through(axis, inside, cell, Math.min(2, axis.length));
  // On an entry nothing else counts, so that one beside it may be out of reach.
  if (straight.length === 1) return { cubic: straight, straight };
  const first = Math.max(0, Math.min(cell - 1, axis.length - CUBIC));
  return { cubic: through(axis, inside, first, Math.min(CUBIC, axis.length)), straight };
}

/** The entry that the stretch around a value begins with. */
function cellOf(axis: readonly number[], at: number): number {
  let [from, to] = [0, axis.length - 1];
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if ((axis[middle] ?? at) <= at) from = middle;
    else to = middle;
  }
  return from;
}

/** Lagrange's polynomial through so many entries: the weight of each is the product of (x − b) / (a − b) over the others. */
function through(axis: readonly number[], at: number, first: number, count: number): Entries {
  const places = axis.slice(first, first + count);
  return places.flatMap((a, i): Entries => {
    const weight = places.reduce((so, b, j) => (j === i ? so : (so * (at - b)) / (a - b)), 1);
    return weight === 0 ? [] : [[first + i, weight]];
  });
}

/** Of a table whose index is row × (entries on `columns`) + column. */
function product(rows: Weights, columns: Weights, width: number): Weights {
  const all = (outer: Entries, inner: Entries): Entries =>
    outer.flatMap(([row, a]) => inner.map(([column, b]) => [row * width + column, a * b] as const));
  return { cubic: all(rows.cubic, columns.cubic), straight: all(rows.straight, columns.straight) };
}

export const cornerWeights = ({ travels, steers }: PanelCorner, travel: number, steer: number): Weights =>
  product(weightsOn(steers, steer), weightsOn(travels, travel), travels.length);

export const gridWeights = (
  left: readonly number[],
  right: readonly number[],
  atLeft: number,
  atRight: number,
): Weights => product(weightsOn(left, atLeft), weightsOn(right, atRight), right.length);

export function numberAt(table: Table, { cubic, straight }: Weights): number | undefined {
  return numberBy(table, cubic) ?? numberBy(table, straight);
}

function numberBy(table: Table, entries: Entries): number | undefined {
  if (entries.length === 0) return undefined;
  let sum = 0;
  for (const [index, weight] of entries) {
    const entry = table[index];
    if (!isNumber(entry)) return undefined;
    sum += weight * entry;
  }
  return sum;
}

export function vectorAt(table: Table, { cubic, straight }: Weights): Point3 | undefined {
  return vectorBy(table, cubic) ?? vectorBy(table, straight);
}

function vectorBy(table: Table, entries: Entries): Point3 | undefined {
  if (entries.length === 0) return undefined;
  let [x, y, z] = [0, 0, 0];
  for (const [index, weight] of entries) {
    const [px, py, pz] = [table[3 * index], table[3 * index + 1], table[3 * index + 2]];
    if (!isNumber(px) || !isNumber(py) || !isNumber(pz)) return undefined;
    x += weight * px;
    y += weight * py;
    z += weight * pz;
  }
  return [x, y, z];
}

const isNumber = (value: number | null | undefined): value is number => value !== null && value !== undefined;
const STILL: Weights = { cubic: [[0, 1]], straight: [[0, 1]] };

/** A point that does not move has one entry only. */
export const pointAt = ({ at }: PanelPoint, weights: Weights): Point3 | undefined =>
  vectorAt(at, at.length === 3 ? STILL : weights);

/** Every place on the way of a point over the travel, at one steer. */
export function wayOf(point: PanelPoint, corner: PanelCorner, steer: number): readonly Point3[] {
  if (point.at.length === 3) return [];
  return corner.travels.flatMap((travel) => {
    const place = pointAt(point, cornerWeights(corner, travel, steer));
    return place === undefined ? [] : [place];
  });
}
