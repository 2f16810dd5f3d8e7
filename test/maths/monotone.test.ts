/** Monotone interpolation: through its points, no bumps of its own, derivatives that belong to it. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Ends, monotone } from "../../server/maths/monotone.js";

const points = fc
  .array(fc.tuple(fc.double({ min: 0.1, max: 3, noNaN: true }), fc.double({ min: -5, max: 5, noNaN: true })), {
    minLength: 2,
    maxLength: 8,
  })
  .map((steps) => {
    const x: number[] = [];
    for (const [dx] of steps) x.push((x.at(-1) ?? -2) + dx);
    return { x, y: steps.map(([, y]) => y) };
  });
const ends = fc.constantFrom<Ends>("free", "chord");
const part = fc.double({ min: 0.001, max: 0.999, noNaN: true });

describe("monotone interpolation", () => {
  it("goes through its points and stays between neighbours", () => {
    fc.assert(
      fc.property(points, ends, part, ({ x, y }, how, t) => {
        const f = monotone(x, y, how);
        for (const [i, at] of x.entries()) expect(Math.abs(f.value(at) - y[i]!)).toBeLessThan(1e-9);
        for (let i = 0; i + 1 < x.length; i++) {
          const between = f.value(x[i]! + t * (x[i + 1]! - x[i]!));
          expect(between).toBeGreaterThanOrEqual(Math.min(y[i]!, y[i + 1]!) - 1e-9);
          expect(between).toBeLessThanOrEqual(Math.max(y[i]!, y[i + 1]!) + 1e-9);
        }
      }),
    );
  });

  it("has the slope, the curvature and the integral of its own value, outside of its points too", () => {
    fc.assert(
      fc.property(points, ends, fc.double({ min: -4, max: 20, noNaN: true }), ({ x, y }, how, at) => {
        const h = 1e-4;
        fc.pre(x.every((knot) => Math.abs(knot - at) > 3 * h));
        const f = monotone(x, y, how);
        const slope = (g: (x: number) => number): number => (g(at + h) - g(at - h)) / (2 * h);
        const near = (a: number, b: number): void =>
          expect(Math.abs(a - b)).toBeLessThan(1e-4 * Math.max(1, Math.abs(a)));
        near(f.slope(at), slope(f.value));
        near(f.curvature(at), slope(f.slope));
        near(f.value(at), slope(f.integral));
      }),
    );
  });

  it("has a slope without jumps", () => {
    fc.assert(
      fc.property(points, ends, ({ x, y }, how) => {
        const f = monotone(x, y, how);
        for (const knot of x) expect(Math.abs(f.slope(knot + 1e-9) - f.slope(knot - 1e-9))).toBeLessThan(1e-4);
      }),
    );
  });

  it("starts and goes on with the end chords where it is asked to", () => {
    const f = monotone([0, 50, 100], [0, 320, 470], "chord");
    expect(f.slope(0)).toBeCloseTo(6.4, 12);
    expect(f.value(200)).toBeCloseTo(470 + 300, 9);
  });

  it("takes one point as a constant and two as a line", () => {
    expect(monotone([1], [7]).value(5)).toBe(7);
    expect(monotone([0, 2], [1, 5]).value(3)).toBe(7);
  });
});
