/**
 * Few of many points of a curve: enough that the monotone cubic through them passes all of them within a tolerance.
 *
 * The worst one is added until all are near; then each that can be spared is taken out again. The result is not always
 * the fewest possible, which would take a search over all choices, but none of its inner points can be left out.
 *
 * Invariant: first and last point are kept; no point is passed by more than the tolerance.
 */
import { type Ends, monotone } from "./monotone.js";
import type { Point } from "./polyline.js";

/** @param points in order of strictly increasing x, at least two; @param kept indices that have to stay */
export function fewPoints(
  points: readonly Point[],
  tolerance: number,
  ends: Ends,
  kept: readonly number[] = [],
): readonly Point[] {
  const fixed = new Set([0, points.length - 1, ...kept]);
  const chosen = new Set(fixed);
  for (let worst = worstOf(points, chosen, ends); worst.off > tolerance; worst = worstOf(points, chosen, ends))
    chosen.add(worst.index);
  for (const index of [...chosen].filter((one) => !fixed.has(one))) {
    chosen.delete(index);
    if (worstOf(points, chosen, ends).off > tolerance) chosen.add(index);
  }
  return points.filter((_, index) => chosen.has(index));
}

function worstOf(points: readonly Point[], chosen: ReadonlySet<number>, ends: Ends): { index: number; off: number } {
  const through = points.filter((_, index) => chosen.has(index));
  const curve = monotone(
    through.map(({ x }) => x),
    through.map(({ y }) => y),
    ends,
  );
  let worst = { index: -1, off: 0 };
  for (const [index, { x, y }] of points.entries()) {
    const off = Math.abs(curve.value(x) - y);
    if (off > worst.off && !chosen.has(index)) worst = { index, off };
  }
  return worst;
}
