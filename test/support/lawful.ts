/**
 * What every law has to keep, whatever its numbers, looked at without knowing where its kinks are.
 *
 * Between two neighbouring places the mean of a derivative lies between its least and its largest value. Added up over a
 * row of places, a value that is not the integral of its derivative shows, and so does a jump, wherever it is.
 */
import fc from "fast-check";
import { expect } from "vitest";
import type { DamperLaw, SpringLaw } from "../../server/elements/element.js";
import type { Curve } from "../../server/elements/laws/curve.js";
import { DIFFERENCED, INTEGRATED } from "./tolerances.js";

export const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

type Of = (x: number) => number;

/** Of each piece. */
const CELLS = 250;

/**
 * `whole` is continuous and the integral of `slope` between two places, as far as trapezes can tell.
 *
 * @param scale what `whole` is in size where it is large: what is nothing beside it is rounding
 */
export function expectIntegral(whole: Of, slope: Of, from: number, to: number, scale = Number.MIN_VALUE): void {
  const step = (to - from) / CELLS;
  let [sum, doubt, size] = [0, 0, 0];
  for (let i = 0; i < CELLS; i++) {
    const [a, middle, b] = [slope(from + i * step), slope(from + (i + 0.5) * step), slope(from + (i + 1) * step)];
    sum += ((a + 2 * middle + b) * step) / 4;
    doubt += ((Math.abs(middle - a) + Math.abs(b - middle)) * step) / 4;
    size += Math.abs(middle) * step;
  }
  const off = Math.abs(whole(to) - whole(from) - sum);
  const rounding = Math.max(Math.abs(whole(to)), Math.abs(whole(from)), size, scale);
  expect(off, `from ${from} to ${to}`).toBeLessThanOrEqual(doubt + INTEGRATED * rounding);
}

/** At one place, kink or not: the difference over a small step lies between the slopes on both sides. */
export function expectDifference(whole: Of, slope: Of, at: number, h: number): void {
  const slopes = Array.from({ length: 9 }, (_, i) => slope(at + (h * (i - 4)) / 4));
  const [least, most] = [Math.min(...slopes), Math.max(...slopes)];
  const mean = (whole(at + h) - whole(at - h)) / (2 * h);
  const rounding = (1e-15 * Math.max(Math.abs(whole(at + h)), Math.abs(whole(at - h)))) / h;
  const slack = DIFFERENCED * Math.max(Math.abs(least), Math.abs(most), 1) + rounding + 0.1 * (most - least);
  expect(mean, `at ${at}`).toBeGreaterThanOrEqual(least - slack);
  expect(mean, `at ${at}`).toBeLessThanOrEqual(most + slack);
}

/** No step in the value at a place where the law goes over into another. */
function expectNoStep(force: Of, rate: Of, at: number, h: number): void {
  const steepest = Math.max(...[at - h, at - h / 2, at, at + h / 2, at + h].map((x) => Math.abs(rate(x))), 1);
  const rounding = 1e-12 * Math.abs(force(at));
  expect(Math.abs(force(at + h) - force(at - h)), `step at ${at}`).toBeLessThanOrEqual(2.2 * h * steepest + rounding);
}

export interface Promised {
  /** Its force never falls with deflection. */
  readonly rises?: boolean;
  /** Its energy is counted from where it has least. */
  readonly storesOnly?: boolean;
}

const HAIR = 1e-4;

/** @param span deflections to look at, m, rad or m³ */
export function expectLawful(
  law: Pick<SpringLaw & Curve, "force" | "rate" | "energy" | "marks">,
  [low, high]: readonly [number, number],
  { rises = true, storesOnly = true }: Promised = {},
): void {
  const h = HAIR * (high - low);
  const marks = (law.marks ?? []).map(({ at }) => at).filter((at) => at > low && at < high);
  const grid = Array.from({ length: 41 }, (_, i) => low + ((high - low) * i) / 40);
  for (const at of [...grid, ...marks]) {
    for (const value of [law.force(at), law.rate(at), law.energy(at)]) expect(Number.isFinite(value)).toBe(true);
    if (storesOnly) expect(law.energy(at), `energy at ${at}`).toBeGreaterThanOrEqual(-1e-9);
    if (rises) expect(law.rate(at), `rate at ${at}`).toBeGreaterThanOrEqual(-1e-6);
    expectDifference(law.energy, law.force, at, h);
    expectDifference(law.force, law.rate, at, h);
  }
  for (const at of marks) expectNoStep(law.force, law.rate, at, h * 1e-3);
  // Next to its marks a law may do much on a short way: the rod of a gas spring meets its contact.
  const sizeOf = (of: Of): number => Math.max(Math.abs(of(low)), Math.abs(of(high)), 1e-12);
  const cuts = [low, ...marks.flatMap((at) => [at, Math.min(high, at + 10 * h)]), high].sort((a, b) => a - b);
  for (const [i, from] of cuts.slice(0, -1).entries()) {
    const to = cuts[i + 1] ?? high;
    expectIntegral(law.energy, law.force, from, to, sizeOf(law.energy));
    expectIntegral(law.force, law.rate, from, to, sizeOf(law.force));
  }
}

/** Rests without motion, never drives it, and its slope is its own. */
export function expectDamps(law: DamperLaw, fastest: number): void {
  expect(Math.abs(law.force(0))).toBe(0);
  const h = HAIR * fastest;
  const marks = (law.marks ?? []).map(({ at }) => at);
  const grid = Array.from({ length: 41 }, (_, i) => fastest * (i / 20 - 1));
  for (const v of [...grid, ...marks]) {
    expect(Number.isFinite(law.force(v)) && Number.isFinite(law.damping(v))).toBe(true);
    expect(law.force(v) * v, `power at ${v}`).toBeGreaterThanOrEqual(0);
    expectDifference(law.force, law.damping, v, h);
  }
  for (const v of marks) expectNoStep(law.force, law.damping, v, h * 1e-3);
  expectIntegral(law.force, law.damping, -fastest, fastest);
  expect(law.lowSpeed).toBeGreaterThanOrEqual(0);
}

/** One is the other the other way round. */
export function expectReversed(
  law: Pick<SpringLaw, "force" | "rate" | "energy">,
  other: Pick<SpringLaw, "force" | "rate" | "energy">,
  [low, high]: readonly [number, number],
): void {
  for (let i = 0; i <= 30; i++) {
    const x = low + ((high - low) * (i + 0.137)) / 31;
    for (const [one, two] of [
      [law.force(x), -other.force(-x)],
      [law.rate(x), other.rate(-x)],
      [law.energy(x), other.energy(-x)],
    ] as const)
      expect(Math.abs(one - two), `at ${x}`).toBeLessThanOrEqual(1e-7 + 1e-9 * Math.abs(two));
  }
}
