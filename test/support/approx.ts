/** Comparing figures: relative, with an absolute floor so that a zero is a zero. */
import { expect } from "vitest";

export function expectClose(actual: number, expected: number, relative: number, floor = 1e-12): void {
  const off = Math.abs(actual - expected);
  const allowed = Math.max(floor, relative * Math.abs(expected));
  expect(off, `${actual} against ${expected}`).toBeLessThanOrEqual(allowed);
}

/** Central difference of fourth order. */
export function slopeOf(f: (x: number) => number, x: number, h: number): number {
  return (8 * (f(x + h) - f(x - h)) - (f(x + 2 * h) - f(x - 2 * h))) / (12 * h);
}
