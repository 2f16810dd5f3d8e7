import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fewPoints } from "../../server/maths/few-points.js";
import { isotonic } from "../../server/maths/isotonic.js";
import { monotone } from "../../server/maths/monotone.js";

describe("isotonic regression", () => {
  it("is the textbook's: runs that fall are taken together by their weighted mean", () => {
    // Worked out by hand: 3 and 2 pool to 2.5; 6, 5, 4 to 5; with weights 1 and 3, 4 and 0 pool to 1.
    expect(isotonic([1, 3, 2, 6, 5, 4, 7], [])).toEqual([1, 2.5, 2.5, 5, 5, 5, 7]);
    expect(isotonic([4, 0], [1, 3])).toEqual([1, 1]);
    expect(isotonic([], [])).toEqual([]);
  });

  const values = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 40 });

  it("rises, keeps the mean, and leaves what rises already as it is", () => {
    fc.assert(
      fc.property(values, (given) => {
        const level = isotonic(given, []);
        expect(level.every((value, i) => i === 0 || value >= (level[i - 1] ?? 0))).toBe(true);
        const sum = (all: readonly number[]): number => all.reduce((total, value) => total + value, 0);
        expect(Math.abs(sum(level) - sum(given))).toBeLessThan(1e-3);
        const sorted = [...given].sort((a, b) => a - b);
        expect(isotonic(sorted, [])).toEqual(sorted);
      }),
    );
  });
});

describe("few points of many", () => {
  const curve = (of: (x: number) => number) => Array.from({ length: 60 }, (_, i) => ({ x: i / 10, y: of(i / 10) }));

  it("are two for a straight line, and more the less may be missed", () => {
    expect(
      fewPoints(
        curve((x) => 3 * x + 1),
        1e-6,
        "chord",
      ),
    ).toHaveLength(2);
    const counts = [0.1, 0.01, 0.001].map((tolerance) => fewPoints(curve(Math.sqrt), tolerance, "chord").length);
    expect(counts[0]).toBeLessThan(counts[1] ?? 0);
    expect(counts[1]).toBeLessThan(counts[2] ?? 0);
  });

  it("pass every point within the tolerance, and none of them can be spared", () => {
    const steps = fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { minLength: 3, maxLength: 40 });
    fc.assert(
      fc.property(steps, fc.double({ min: 0.05, max: 5, noNaN: true }), (rises, tolerance) => {
        let y = 0;
        const points = rises.map((rise, x) => ({ x, y: (y += rise) }));
        const off = (some: readonly { x: number; y: number }[]): number => {
          const through = monotone(
            some.map((point) => point.x),
            some.map((point) => point.y),
          );
          return Math.max(...points.map((point) => Math.abs(through.value(point.x) - point.y)));
        };
        const few = fewPoints(points, tolerance, "free");
        expect(off(few)).toBeLessThanOrEqual(tolerance);
        expect([few[0], few.at(-1)]).toEqual([points[0], points.at(-1)]);
      }),
    );
  });
});
