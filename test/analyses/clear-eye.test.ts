/** The nearest place free of leak: against closed forms, and against a search over the plane. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clearEye, type EyePlane, type Move } from "../../server/analyses/clear-eye.js";
import { NEAREST_EYE } from "../support/tolerances.js";

type Leak = (a: number, b: number) => number | undefined;
type Allowed = (a: number, b: number) => boolean;

const plane = (unclaimed: Leak, allowed: Allowed = () => true, furthest = 0.05): EyePlane => ({
  unclaimed,
  allowed,
  furthest,
});
const distance = (move: Move | undefined): number => (move === undefined ? Number.NaN : Math.hypot(move.a, move.b));

/** The nearest allowed place of no leak: along rays a tenth of a degree apart, each root closed in on by halving. */
function searched({ unclaimed, allowed, furthest }: EyePlane): number {
  const step = 5e-4;
  let nearest = Number.POSITIVE_INFINITY;
  for (let angle = 0; angle < 2 * Math.PI; angle += Math.PI / 1800) {
    const leak = (r: number) => unclaimed(r * Math.cos(angle), r * Math.sin(angle)) ?? Number.NaN;
    for (let r = 0; r < Math.min(nearest, furthest); r += step) {
      if (!(leak(r) * leak(r + step) <= 0)) continue;
      let [low, high] = [r, r + step];
      while (high - low > 1e-9) {
        const middle = (low + high) / 2;
        if (leak(low) * leak(middle) > 0) low = middle;
        else high = middle;
      }
      if (allowed(high * Math.cos(angle), high * Math.sin(angle))) nearest = Math.min(nearest, high);
    }
  }
  return nearest;
}

describe("clearEye", () => {
  it("stays where there is no leak", () => {
    expect(distance(clearEye(plane((a, b) => 3 * a - 7 * b)))).toBeLessThan(1e-9);
  });

  it("drops a perpendicular on a straight line of no leak", () => {
    // |c| / √(p² + q²) from the origin, towards (p, q).
    const move = clearEye(plane((a, b) => 3 * a + 4 * b - 0.05));
    expect(move?.a).toBeCloseTo(0.006, 9);
    expect(move?.b).toBeCloseTo(0.008, 9);
  });

  it("goes radially to a circle of no leak, from inside and from outside", () => {
    const circle = (ca: number, cb: number, radius: number) => (a: number, b: number) =>
      (Math.hypot(a - ca, b - cb) - radius) * 12;
    expect(distance(clearEye(plane(circle(0.02, 0.01, 0.03))))).toBeCloseTo(0.03 - Math.hypot(0.02, 0.01), 8);
    expect(distance(clearEye(plane(circle(0.03, -0.02, 0.01))))).toBeCloseTo(Math.hypot(0.03, 0.02) - 0.01, 8);
  });

  it("follows the line to the first allowed place where the nearest is not", () => {
    // On a = 0.004, from b = 0 on to b = 0.003, or to b = −0.007 the other way.
    const allowed = (_a: number, b: number) => b >= 0.003 || b <= -0.007;
    const move = clearEye(plane((a) => a - 0.004, allowed));
    expect(move?.a).toBeCloseTo(0.004, 8);
    expect(move?.b).toBeGreaterThanOrEqual(0.003);
    expect(move?.b).toBeLessThan(0.003 + NEAREST_EYE);
  });

  it("finds the place that a search finds, on curves, allowed or not at the nearest", () => {
    const number = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
    fc.assert(
      fc.property(
        number(Math.PI),
        fc.double({ min: -0.012, max: 0.012, noNaN: true }),
        number(12),
        number(12),
        fc.double({ min: -0.006, max: 0.004, noNaN: true }),
        (angle, offset, bend, twist, wall) => {
          const [p, q] = [Math.cos(angle), Math.sin(angle)];
          const leak = (a: number, b: number) => {
            const [across, along] = [p * a + q * b, -q * a + p * b];
            return across - offset + bend * along * along + twist * across * along;
          };
          const allowed = (a: number, b: number) => -q * a + p * b >= wall;
          const here = plane(leak, allowed, 0.03);
          const nearest = searched(here);
          // A curve that comes as near in two places is a matter of taste.
          fc.pre(nearest < 0.02);
          expect(distance(clearEye(here))).toBeLessThan(nearest + 10 * NEAREST_EYE);
        },
      ),
      { seed: 7, numRuns: 60 },
    );
  });

  it("finds nothing where nothing is to be found", () => {
    expect(clearEye(plane(() => 1))).toBeUndefined();
    expect(clearEye(plane(() => undefined))).toBeUndefined();
    expect(clearEye(plane((a) => a * a + 1e-3))).toBeUndefined();
    expect(
      clearEye(
        plane(
          (a) => a - 0.004,
          () => false,
        ),
      ),
    ).toBeUndefined();
  });

  it("goes no further than it may", () => {
    expect(clearEye(plane((a) => a - 0.06))).toBeUndefined();
    expect(
      clearEye(
        plane(
          (a) => a - 0.004,
          (_a, b) => b > 0.2,
        ),
      ),
    ).toBeUndefined();
  });
});
