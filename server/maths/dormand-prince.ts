/**
 * Ordinary differential equations by the Dormand–Prince pair 5(4) with local extrapolation and a bounded number of steps.
 *
 * In: y′ = f(t, y), undefined where y is out of reach; instants at which f has a kink, which a step never crosses.
 * Out: every accepted step is told; the end is reached, or it is said when and why not.
 *
 * Kinks of f that depend on y (a stop, a tyre that lifts) are met by the error control: a step that crosses one unevenly
 * is rejected and taken shorter.
 *
 * Invariant: ends within `mostSteps` tries; every accepted y is finite.
 * Source: J. R. Dormand, P. J. Prince, A family of embedded Runge–Kutta formulae, J. Comp. Appl. Math. 6 (1980) 19–26.
 */
import { nothing, type Rows } from "./rows.js";

export type Field = (t: number, y: readonly number[]) => readonly number[] | undefined;

export interface Course {
  readonly from: number;
  readonly to: number;
  /** Instants in between at which a step has to end; rising. */
  readonly kinks: readonly number[];
  readonly start: readonly number[];
  /** Largest error of a step in each component: absolute + relative · |y|. */
  readonly absolute: readonly number[];
  readonly relative: number;
  readonly longest: number;
  readonly mostSteps: number;
  /** Told of the start and of every accepted step. */
  reached(t: number, y: readonly number[]): void;
}

export type Arrival =
  | { readonly kind: "arrived"; readonly steps: number; readonly rejected: number }
  /** `field`: f had no value however short the step; `too-short`: no step was short enough; `too-many` steps. */
  | { readonly kind: "stopped"; readonly why: "field" | "too-short" | "too-many"; readonly at: number };

const NODES = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
const STAGES: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
/** Fifth order less fourth. */
const ERROR = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];

/** Shortest step over the whole time. */
const SHORTEST = 1e-12;
const SAFETY = 0.9;
const [SHRINK, GROW] = [0.2, 5];

interface Tried {
  readonly y: readonly number[];
  /** f at y: the first stage of the next step. */
  readonly slope: readonly number[];
  /** Over what is allowed. */
  readonly error: number;
}

/** y + h Σ weight · slope. */
function combined(y: readonly number[], h: number, weights: readonly number[], slopes: Rows): number[] {
  const sum = y.slice();
  for (let k = 0; k < weights.length; k++) {
    const by = h * weights[k]!;
    const slope = slopes[k]!;
    for (let j = 0; j < sum.length; j++) sum[j]! += by * slope[j]!;
  }
  return sum;
}

function tried(
  f: Field,
  t: number,
  h: number,
  { y, slope }: Pick<Tried, "y" | "slope">,
  { absolute, relative }: Course,
): Tried | undefined {
  const slopes = [slope];
  let next: readonly number[] = y;
  for (let stage = 1; stage < STAGES.length; stage++) {
    next = combined(y, h, STAGES[stage]!, slopes);
    const found = f(t + NODES[stage]! * h, next);
    if (found === undefined) return undefined;
    slopes.push(found);
  }
  const misses = combined(nothing(y.length), h, ERROR, slopes);
  let square = 0;
  for (let j = 0; j < y.length; j++) {
    const size = Math.max(Math.abs(next[j]!), Math.abs(y[j]!));
    square += (misses[j]! / (absolute[j]! + relative * size)) ** 2;
  }
  const error = Math.sqrt(square / y.length);
  return Number.isFinite(error) ? { y: next, slope: slopes[6]!, error } : undefined;
}

export function dormandPrince(f: Field, course: Course): Arrival {
  const { from, to, kinks, start, longest, mostSteps } = course;
  const slope = f(from, start);
  if (slope === undefined) return { kind: "stopped", why: "field", at: from };
  const stops = [...kinks.filter((at) => at > from && at < to), to];
  const shortest = SHORTEST * (to - from);
  let [t, h, next, steps, rejected] = [from, longest / 100, 0, 0, 0];
  let now: Pick<Tried, "y" | "slope"> = { y: start, slope };
  course.reached(t, start);
  while (next < stops.length) {
    if (steps + rejected >= mostSteps) return { kind: "stopped", why: "too-many", at: t };
    const left = stops[next]! - t;
    const isLast = left <= h * (1 + 1e-9);
    const step = isLast ? left : h;
    const found = tried(f, t, step, now, course);
    if (found === undefined || found.error > 1) {
      rejected++;
      h = step * (found === undefined ? SHRINK : Math.max(SHRINK, SAFETY * found.error ** -0.2));
      if (h < shortest) return { kind: "stopped", why: found === undefined ? "field" : "too-short", at: t };
      continue;
    }
    steps++;
    t = isLast ? stops[next++]! : t + step;
    now = found;
    course.reached(t, found.y);
    const growth = Math.min(GROW, SAFETY * Math.max(found.error, 1e-9) ** -0.2);
    h = Math.min(longest, Math.max(step * growth, isLast ? Math.min(h, longest) * SHRINK : 0));
    if (isLast && next < stops.length) {
      // Past a kink the slope may be another one.
      const after = f(t + shortest, found.y);
      if (after === undefined) return { kind: "stopped", why: "field", at: t };
      now = { y: found.y, slope: after };
    }
  }
  return { kind: "arrived", steps, rejected };
}
