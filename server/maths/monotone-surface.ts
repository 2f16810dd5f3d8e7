/**
 * Interpolation over a rectangular table z(x, y): monotone cubics along x in every row, then a monotone cubic through
 * what they give along y. First derivatives are continuous; no bump between the points that they do not have.
 *
 * Outside of the points it goes on straight, with the slope at the edge.
 *
 * Invariant: along every line of the table it is `monotone` through that line's points.
 * Source of the slopes: F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300, as in `monotone.ts`.
 */
import { monotone } from "./monotone.js";

export interface SurfacePoint {
  readonly value: number;
  readonly dx: number;
  readonly dy: number;
}

export interface Surface {
  at(x: number, y: number): SurfacePoint;
  isOutside(x: number, y: number): boolean;
}

/** A number with its derivative by x. */
interface Dual {
  readonly v: number;
  readonly d: number;
}

const dual = (v: number, d: number): Dual => ({ v, d });
const minus = (a: Dual, b: Dual): Dual => dual(a.v - b.v, a.d - b.d);
const over = (a: Dual, by: number): Dual => dual(a.v / by, a.d / by);
const ZERO: Dual = dual(0, 0);

/** Weighted harmonic mean of both chords, 0 at a summit or a valley. */
function innerSlope(h0: number, h1: number, a: Dual, b: Dual): Dual {
  if (a.v * b.v <= 0) return ZERO;
  const w0 = 2 * h1 + h0;
  const w1 = h1 + 2 * h0;
  // Against the larger one, so that next to nothing over next to nothing is still a number.
  const size = Math.max(Math.abs(a.v), Math.abs(b.v));
  const [p, q] = [a.v / size, b.v / size];
  const sum = w0 * q + w1 * p;
  const part = (w0 + w1) / sum;
  return dual(part * a.v * q, (part * (w0 * q * q * a.d + w1 * p * p * b.d)) / sum);
}

/** Three-point slope at an end, held to the sign of its chord and to three times it. */
function endSlope(h0: number, h1: number, a: Dual, b: Dual): Dual {
  const by = (x: number, y: number): number => ((2 * h0 + h1) * x - h0 * y) / (h0 + h1);
  const slope = dual(by(a.v, b.v), by(a.d, b.d));
  if (slope.v * a.v <= 0) return ZERO;
  return a.v * b.v < 0 && Math.abs(slope.v) > 3 * Math.abs(a.v) ? dual(3 * a.v, 3 * a.d) : slope;
}

/** Slopes at all points of a line. */
function slopesOf(y: readonly number[], z: readonly Dual[]): readonly Dual[] {
  const steps = y.slice(1).map((at, j) => at - y[j]!);
  const chords = steps.map((step, j) => over(minus(z[j + 1]!, z[j]!), step));
  const last = chords.length - 1;
  if (last === 0) return [chords[0]!, chords[0]!];
  return y.map((_, j) => {
    if (j === 0) return endSlope(steps[0]!, steps[1]!, chords[0]!, chords[1]!);
    if (j === y.length - 1) return endSlope(steps[last]!, steps[last - 1]!, chords[last]!, chords[last - 1]!);
    return innerSlope(steps[j - 1]!, steps[j]!, chords[j - 1]!, chords[j]!);
  });
}

/** The cubic through a line's points at `at`, with its derivatives by x and by y. */
function alongY(y: readonly number[], z: readonly Dual[], at: number): SurfacePoint {
  const slopes = slopesOf(y, z);
  const [first, last] = [y[0]!, y.at(-1)!];
  if (at <= first || at >= last) {
    const j = at <= first ? 0 : y.length - 1;
    const off = at - y[j]!;
    const [point, slope] = [z[j]!, slopes[j]!];
    return { value: point.v + off * slope.v, dx: point.d + off * slope.d, dy: slope.v };
  }
  const j = y.findIndex((value) => value > at) - 1;
  const h = y[j + 1]! - y[j]!;
  const t = (at - y[j]!) / h;
  const [z0, z1, m0, m1] = [z[j]!, z[j + 1]!, slopes[j]!, slopes[j + 1]!];
  const [a, b, c, d] = [(1 + 2 * t) * (1 - t) ** 2, t * t * (3 - 2 * t), h * t * (1 - t) ** 2, h * t * t * (t - 1)];
  const dy = ((6 * t * (t - 1)) / h) * (z0.v - z1.v) + (1 - t) * (1 - 3 * t) * m0.v + t * (3 * t - 2) * m1.v;
  return {
    value: a * z0.v + b * z1.v + c * m0.v + d * m1.v,
    dx: a * z0.d + b * z1.d + c * m0.d + d * m1.d,
    dy,
  };
}

/**
 * @param x strictly increasing, two or more; @param y likewise
 * @param z one row for each y, one value for each x
 */
export function monotoneSurface(
  x: readonly number[],
  y: readonly number[],
  z: readonly (readonly number[])[],
): Surface {
  const rows = z.map((row) => monotone(x, row));
  return {
    at(atX, atY) {
      return alongY(
        y,
        rows.map((row) => dual(row.value(atX), row.slope(atX))),
        atY,
      );
    },
    isOutside: (atX, atY) => atX < x[0]! || atX > x.at(-1)! || atY < y[0]! || atY > y.at(-1)!,
  };
}
