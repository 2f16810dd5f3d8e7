/**
 * Interpolation through measured points that adds no bumps of its own: piecewise cubic, its
 * first derivative continuous, rising or falling only where the points do.
 *
 * In: strictly increasing abscissae with their values. Out: value, slope, curvature, integral.
 * Outside the points it goes on as a straight line with the slope at the last one.
 *
 * Invariant: between two points the value never leaves the interval of their values.
 */

export interface Interpolant {
  readonly from: number;
  readonly to: number;
  value(x: number): number;
  slope(x: number): number;
  /** Second derivative; jumps at the points, where it is that of the interval above. Zero outside. */
  curvature(x: number): number;
  /** Integral of the value from `from` to x. */
  integral(x: number): number;
}

export type Ends = "free" | "chord";

/** Slope at an inner point: weighted harmonic mean of its neighbours' chords, zero at a summit or a valley. */
function innerSlope(h0: number, h1: number, d0: number, d1: number): number {
  if (d0 * d1 <= 0) return 0;
  const w0 = 2 * h1 + h0;
  const w1 = h1 + 2 * h0;
  return (w0 + w1) / (w0 / d0 + w1 / d1);
}

/** Slope at an end: three-point formula, held to the sign and to three times the chord. */
function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0) return 0;
  return d0 * d1 < 0 && Math.abs(slope) > 3 * Math.abs(d0) ? 3 * d0 : slope;
}

function slopesOf(x: readonly number[], y: readonly number[], ends: Ends): number[] {
  const n = x.length;
  const h: number[] = [];
  const d: number[] = [];
  for (let i = 0; i + 1 < n; i++) {
    h.push(x[i + 1]! - x[i]!);
    d.push((y[i + 1]! - y[i]!) / h[i]!);
  }
  if (n === 1) return [0];
  if (n === 2) return [d[0]!, d[0]!];
  const free = ends === "free";
  const m = [free ? endSlope(h[0]!, h[1]!, d[0]!, d[1]!) : d[0]!];
  for (let i = 1; i + 1 < n; i++) m.push(innerSlope(h[i - 1]!, h[i]!, d[i - 1]!, d[i]!));
  m.push(free ? endSlope(h[n - 2]!, h[n - 3]!, d[n - 2]!, d[n - 3]!) : d[n - 2]!);
  return m;
}

/**
 * Monotone piecewise cubic interpolation.
 *
 * Between neighbours at distance h, with t = x − x₀ and chord d = Δy/h:
 * y = y₀ + m₀ t + (3d − 2m₀ − m₁)/h · t² + (m₀ + m₁ − 2d)/h² · t³.
 *
 * @param x strictly increasing, at least one
 * @param y as many as x
 * @param ends `free` estimates the slopes at the ends from three points (for smooth curves); `chord` takes those
 *   of the end intervals, so that a force law starts and goes on with a ratio that was measured
 *
 * Source: F. N. Fritsch, R. E. Carlson, "Monotone Piecewise Cubic Interpolation", SIAM J. Numer.
 * Anal. 17 (1980); inner slopes after F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984).
 */
export function monotone(x: readonly number[], y: readonly number[], ends: Ends = "free"): Interpolant {
  const n = x.length;
  const m = slopesOf(x, y, ends);
  const c2: number[] = [];
  const c3: number[] = [];
  const area = [0];
  for (let i = 0; i + 1 < n; i++) {
    const h = x[i + 1]! - x[i]!;
    const d = (y[i + 1]! - y[i]!) / h;
    c2.push((3 * d - 2 * m[i]! - m[i + 1]!) / h);
    c3.push((m[i]! + m[i + 1]! - 2 * d) / (h * h));
    area.push(area[i]! + h * (y[i]! + h * (m[i]! / 2 + h * (c2[i]! / 3 + (h * c3[i]!) / 4))));
  }
  const first = x[0]!;
  const last = x[n - 1]!;
  /** Index of the cubic at x; −1 below the first point, n − 1 above the last. */
  const interval = (at: number): number => {
    if (!(at >= first)) return -1;
    let low = 0;
    let high = n - 1;
    if (at > last) return high;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (x[middle]! <= at) low = middle;
      else high = middle;
    }
    return low;
  };
  /** The knot to count from: the interval's own, or the end that the straight line starts at. */
  const knot = (i: number): number => (i < 0 ? 0 : i);
  const inside = (i: number): boolean => i >= 0 && i < n - 1;
  return {
    from: first,
    to: last,
    value(at) {
      const i = interval(at);
      const k = knot(i);
      const t = at - x[k]!;
      return y[k]! + t * (m[k]! + (inside(i) ? t * (c2[i]! + t * c3[i]!) : 0));
    },
    slope(at) {
      const i = interval(at);
      const t = at - x[knot(i)]!;
      return m[knot(i)]! + (inside(i) ? t * (2 * c2[i]! + 3 * t * c3[i]!) : 0);
    },
    curvature(at) {
      const i = interval(at);
      return inside(i) ? 2 * c2[i]! + 6 * (at - x[i]!) * c3[i]! : 0;
    },
    integral(at) {
      const i = interval(at);
      const k = knot(i);
      const t = at - x[k]!;
      const cubic = inside(i) ? t * (c2[i]! / 3 + (t * c3[i]!) / 4) : 0;
      return area[k]! + t * (y[k]! + t * (m[k]! / 2 + cubic));
    },
  };
}
