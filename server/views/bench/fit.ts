/**
 * One curve through measured points: a rising one (or a falling one, turned round), by few points.
 *
 * Points at the same abscissa, and those of a loop that is run through up and down, are taken together by their mean; then
 * isotonic regression takes out what noise bends back; then as few points are kept as the tolerance allows.
 *
 * Invariant: the residual is that of every measured point from the curve as the language interpolates it.
 */
import { fewPoints } from "../../maths/few-points.js";
import { isotonic } from "../../maths/isotonic.js";
import { type Ends, monotone } from "../../maths/monotone.js";
import type { Point } from "../../maths/polyline.js";

export interface Fit {
  readonly points: readonly Point[];
  /** Root of the mean square and largest distance of the measured points, along y. */
  readonly rms: number;
  readonly largest: number;
  /** How many measured points share their abscissa with another. */
  readonly repeated: number;
}

/** More abscissae than this are taken together in groups of neighbours: a bench that samples a sine gives thousands. */
const mostGroups = 60;

/**
 * @param measured at least two different abscissae
 * @param from a point that the curve starts at without being written (a damper's origin)
 */
export function fitted(measured: readonly Point[], tolerance: number, ends: Ends, from?: Point): Fit | undefined {
  const sorted = [...measured].sort((a, b) => a.x - b.x);
  const groups = grouped(sorted);
  const falls = slopeSign(groups) < 0;
  const sign = falls ? -1 : 1;
  const level = isotonic(
    groups.map(({ y }) => sign * y),
    groups.map(({ weight }) => weight),
  );
  const rising = groups.map(({ x }, i) => ({ x, y: sign * (level[i] ?? 0) }));
  const all = from === undefined ? rising : [from, ...rising.filter(({ x }) => x > from.x)];
  if (all.length < 2) return undefined;
  const points = fewPoints(all, tolerance, ends);
  const curve = monotone(
    points.map(({ x }) => x),
    points.map(({ y }) => y),
    ends,
  );
  const off = sorted.map(({ x, y }) => Math.abs(curve.value(x) - y));
  return {
    points: from === undefined ? points : points.slice(1),
    rms: Math.sqrt(off.reduce((sum, one) => sum + one * one, 0) / off.length),
    largest: Math.max(...off),
    repeated: sorted.filter((point, i) => point.x === sorted[i - 1]?.x || point.x === sorted[i + 1]?.x).length,
  };
}

interface Group extends Point {
  readonly weight: number;
}

function grouped(sorted: readonly Point[]): readonly Group[] {
  const same: Point[][] = [];
  for (const point of sorted) {
    const last = same.at(-1);
    if (last?.[0]?.x === point.x) last.push(point);
    else same.push([point]);
  }
  if (same.length <= mostGroups) return same.map(meanOf);
  const size = Math.ceil(same.length / mostGroups);
  const inner = Array.from({ length: Math.ceil(same.length / size) }, (_, i) =>
    same.slice(i * size, (i + 1) * size).flat(),
  );
  // The ends are kept as they are: a mean would lie inside of them.
  return [meanOf(same[0] ?? []), ...inner.slice(1, -1).map(meanOf), meanOf(same.at(-1) ?? [])];
}

const meanOf = (points: readonly Point[]): Group => ({
  x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
  y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  weight: points.length,
});

/** Of the straight line through all of them. */
function slopeSign(points: readonly Point[]): number {
  const { x, y } = meanOf(points);
  return points.reduce((sum, point) => sum + (point.x - x) * (point.y - y), 0);
}

/** Least squares: y = offset + slope · x. */
export function straight(points: readonly Point[]): {
  readonly slope: number;
  readonly offset: number;
  readonly largest: number;
} {
  const mean = meanOf(points);
  const spread = points.reduce((sum, { x }) => sum + (x - mean.x) ** 2, 0);
  const slope = spread === 0 ? 0 : points.reduce((sum, { x, y }) => sum + (x - mean.x) * (y - mean.y), 0) / spread;
  const offset = mean.y - slope * mean.x;
  return { slope, offset, largest: Math.max(...points.map(({ x, y }) => Math.abs(offset + slope * x - y))) };
}
