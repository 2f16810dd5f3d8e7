/**
 * Points of a function, so that straight lines between them follow it: closer together where it bends, and exact
 * where it has a kink or a jump.
 *
 * In: a function, an interval, the places where it breaks. Out: points in rising order; at a break there are two with the
 * same abscissa where the function jumps.
 *
 * Invariant: finite in number whatever the function does; where it has no value there is no point.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Value at x; at a break, that of the piece below (−1) or above (1). Undefined where there is none. */
export type Pieces = (x: number, side: -1 | 0 | 1) => number | undefined;

/** Every piece is halved twice at least, so that a bend in its middle is seen, and this often at most. */
const LEAST_HALVINGS = 2;
const MOST_HALVINGS = 6;
/** How far a line may pass by the function, as a share of all that it rises and falls. */
const CLOSE = 0.004;
/** What hardly moves is not looked at more closely than this share of its size allows. */
const LEVEL = 0.05;

interface Ends {
  readonly a: number;
  readonly b: number;
  readonly fa: number | undefined;
  readonly fb: number | undefined;
}

/** How far apart two values are that a drawing tells apart. */
function closeness(values: readonly (number | undefined)[]): number {
  const known = values.filter((value) => value !== undefined);
  const range = Math.max(...known) - Math.min(...known);
  const size = Math.max(...known.map(Math.abs));
  return CLOSE * Math.max(range, LEVEL * size, Number.MIN_VALUE);
}

/** Pieces between neighbouring breaks, in equal parts. */
function firstEnds(f: Pieces, knots: readonly number[]): readonly Ends[] {
  const parts = 2 ** LEAST_HALVINGS;
  return knots.slice(1).flatMap((b, i) => {
    const a = knots[i] ?? b;
    const xs = Array.from({ length: parts + 1 }, (_, k) => (k === parts ? b : a + ((b - a) * k) / parts));
    const ys = xs.map((x, k) => f(x, k === 0 ? 1 : k === parts ? -1 : 0));
    return xs.slice(1).map((to, k) => ({ a: xs[k] ?? a, b: to, fa: ys[k], fb: ys[k + 1] }));
  });
}

function refine(f: Pieces, { a, b, fa, fb }: Ends, close: number, left: number, into: Point[]): void {
  const middle = (a + b) / 2;
  const at = left > 0 && middle > a && middle < b ? f(middle, 0) : undefined;
  if (at !== undefined && fa !== undefined && fb !== undefined && Math.abs(at - (fa + fb) / 2) > close) {
    refine(f, { a, b: middle, fa, fb: at }, close, left - 1, into);
    refine(f, { a: middle, b, fa: at, fb }, close, left - 1, into);
    return;
  }
  if (fb !== undefined) into.push({ x: b, y: fb });
}

/** @param breaks where pieces meet; those outside of the interval are left out */
export function polyline(f: Pieces, from: number, to: number, breaks: readonly number[]): readonly Point[] {
  const inside = breaks.filter((x) => x > from && x < to);
  const knots = [from, ...new Set(inside.sort((a, b) => a - b)), to];
  const ends = firstEnds(f, knots);
  const close = closeness(ends.flatMap(({ fa, fb }) => [fa, fb]));
  const points: Point[] = [];
  for (const piece of ends) {
    const last = points.at(-1);
    if (piece.fa !== undefined && (last?.x !== piece.a || last.y !== piece.fa)) {
      points.push({ x: piece.a, y: piece.fa });
    }
    refine(f, piece, close, MOST_HALVINGS - LEAST_HALVINGS, points);
  }
  return points;
}
