/** Points of a function, and where it is nought. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { polyline } from "../../server/maths/polyline.js";
import { rootBetween } from "../../server/maths/root-between.js";
import { expectClose } from "../support/approx.js";
import { CLOSED_FORM } from "../support/tolerances.js";

/** On the straight lines between the points. */
function on(points: readonly { readonly x: number; readonly y: number }[], x: number): number {
  const next = points.findIndex((point) => point.x >= x);
  const [a, b] = [points[Math.max(0, next - 1)], points[next]];
  if (a === undefined || b === undefined) throw new Error(`${x} lies outside`);
  return b.x === a.x ? b.y : a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}

describe("points of a function", () => {
  it("lie on it, and lines between them pass it by no more than half a per cent of what it rises", () => {
    const range = fc.tuple(
      fc.double({ min: -3, max: 0, noNaN: true }),
      fc.double({ min: 0.5, max: 3, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(range, ([from, to, share]) => {
        const points = polyline((x) => Math.exp(x), from, to, []);
        for (const { x, y } of points) expect(y).toBe(Math.exp(x));
        const x = Math.min(to, from + share * (to - from));
        expect(Math.abs(on(points, x) - Math.exp(x))).toBeLessThanOrEqual(0.005 * (Math.exp(to) - Math.exp(from)));
      }),
    );
  });

  it("hit a kink, and stand on both sides of a jump", () => {
    const kink = polyline((x) => Math.max(0, x - 0.3), 0, 1, [0.3]);
    expect(kink).toContainEqual({ x: 0.3, y: 0 });
    const jump = polyline((x, side) => (x > 0.3 || (x === 0.3 && side > 0) ? 2 : 1), 0, 1, [0.3, 7]);
    expect(jump.filter(({ x }) => x === 0.3)).toEqual([
      { x: 0.3, y: 1 },
      { x: 0.3, y: 2 },
    ]);
    expect(jump.map(({ y }) => y).every((y) => y === 1 || y === 2)).toBe(true);
  });

  it("are few where it is straight, bounded where it is wild, and left out where it has no value", () => {
    expect(polyline((x) => 3 * x, 0, 1, []).length).toBe(5);
    expect(polyline(() => 0, 0, 1, []).map(({ y }) => y)).toEqual([0, 0, 0, 0, 0]);
    expect(polyline((x) => Math.sin(1e6 * x), 0, 1, []).length).toBeLessThanOrEqual(65);
    expect(polyline((x) => (x < 0.5 ? undefined : x), 0, 1, []).map(({ x }) => x)).toEqual([0.5, 0.75, 1]);
    expect(polyline(() => undefined, 0, 1, [])).toEqual([]);
  });
});

describe("where a function is nought", () => {
  it("is found to rounding", () => {
    const cubic = (x: number) => ({ value: x ** 3 - 2, slope: 3 * x * x });
    expectClose(rootBetween(cubic, 0, 2) ?? 0, Math.cbrt(2), CLOSED_FORM);
    expectClose(rootBetween(cubic, 2, -5) ?? 0, Math.cbrt(2), CLOSED_FORM);
    expect(rootBetween((x) => ({ value: x, slope: 1 }), 0, 2)).toBe(0);
  });

  it("is found whatever the slope says, and is undefined where there is none", () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.double({ noNaN: true }), (wanted, slope) => {
        const found = rootBetween((x) => ({ value: x - wanted, slope }), -6, 6);
        expectClose(found ?? Number.NaN, wanted, CLOSED_FORM, 1e-12);
      }),
      { numRuns: 2000 },
    );
    expect(rootBetween(() => ({ value: 1, slope: 0 }), 0, 1)).toBeUndefined();
    expect(rootBetween(() => undefined, 0, 1)).toBeUndefined();
  });
});
