/**
 * Reads the server's tables between their entries: linear in travel and in steer.
 *
 * With 25 entries over 55 mm a circle of 60 mm radius is met to 0.02 mm, a tenth of what a screen shows. A place that the links
 * do not reach (`null`) has no value in between either.
 */
import type { PanelCorner, PanelPoint } from "../../../server/lsp/protocol-panel.js";
import type { Point3 } from "./geometry.js";

type Table = readonly (number | null)[];

/** Entries of a table and how much each counts; the weights sum up to 1. */
export type Weights = readonly (readonly [index: number, weight: number])[];

/** Of a rising axis: the two entries around a value, which is kept inside. */
export function weightsOn(axis: readonly number[], at: number): Weights {
  const last = axis.length - 1;
  const [low, high] = [axis[0], axis[last]];
  if (low === undefined || high === undefined) return [];
  if (!(at > low)) return [[0, 1]];
  if (at >= high) return [[last, 1]];
  let [from, to] = [0, last];
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if ((axis[middle] ?? high) <= at) from = middle;
    else to = middle;
  }
  const [a, b] = [axis[from] ?? low, axis[to] ?? high];
  const share = (at - a) / (b - a);
  return share === 0
    ? [[from, 1]]
    : [
        [from, 1 - share],
        [to, share],
      ];
}

/** Of a table whose index is row × (entries on `columns`) + column. */
function product(rows: Weights, columns: Weights, width: number): Weights {
  return rows.flatMap(([row, a]) => columns.map(([column, b]) => [row * width + column, a * b] as const));
}

export const cornerWeights = ({ travels, steers }: PanelCorner, travel: number, steer: number): Weights =>
  product(weightsOn(steers, steer), weightsOn(travels, travel), travels.length);

export const gridWeights = (
  left: readonly number[],
  right: readonly number[],
  atLeft: number,
  atRight: number,
): Weights => product(weightsOn(left, atLeft), weightsOn(right, atRight), right.length);

export function numberAt(table: Table, weights: Weights): number | undefined {
  if (weights.length === 0) return undefined;
  let sum = 0;
  for (const [index, weight] of weights) {
    const entry = table[index];
    if (entry === null || entry === undefined) return undefined;
    sum += weight * entry;
  }
  return sum;
}

export function vectorAt(table: Table, weights: Weights): Point3 | undefined {
  if (weights.length === 0) return undefined;
  let [x, y, z] = [0, 0, 0];
  for (const [index, weight] of weights) {
    const [px, py, pz] = [table[3 * index], table[3 * index + 1], table[3 * index + 2]];
    if (!isNumber(px) || !isNumber(py) || !isNumber(pz)) return undefined;
    x += weight * px;
    y += weight * py;
    z += weight * pz;
  }
  return [x, y, z];
}

const isNumber = (value: number | null | undefined): value is number => value !== null && value !== undefined;
const STILL: Weights = [[0, 1]];

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
