/** Interpolation over a table in two directions: through its points, no bumps, exact derivatives. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { monotoneSurface } from "../../server/maths/monotone-surface.js";
import { expectClose, slopeOf } from "../support/approx.js";
import { CLOSED_FORM, DIFFERENCED } from "../support/tolerances.js";

const x = [1, 2, 4, 5];
const y = [0, 3, 4];
const rising = [
  [1, 2, 5, 6],
  [2, 4, 6, 9],
  [3, 5, 8, 12],
];

describe("monotone surface", () => {
  it("goes through every point", () => {
    const surface = monotoneSurface(x, y, rising);
    for (const [j, row] of rising.entries()) {
      for (const [i, value] of row.entries()) expectClose(surface.at(x[i]!, y[j]!).value, value, CLOSED_FORM);
    }
  });

  it("is a plane where its points are", () => {
    const plane = monotoneSurface(
      x,
      y,
      y.map((b) => x.map((a) => 2 * a - 3 * b + 1)),
    );
    const { value, dx, dy } = plane.at(3.3, 1.7);
    expectClose(value, 2 * 3.3 - 3 * 1.7 + 1, CLOSED_FORM);
    expectClose(dx, 2, CLOSED_FORM);
    expectClose(dy, -3, CLOSED_FORM);
    expectClose(plane.at(9, -5).value, 2 * 9 + 15 + 1, CLOSED_FORM);
    expect(plane.isOutside(9, 1)).toBe(true);
    expect(plane.isOutside(2, 1)).toBe(false);
  });

  it("is a number where one of its chords is next to nothing", () => {
    const surface = monotoneSurface(x, y, [
      [0, 0, 0, 0],
      [-1e-323, 0, 0, 0],
      [0, 2.0554922066116177, 0, 0],
    ]);
    expect(Object.values(surface.at(0.6, 0.001)).every(Number.isFinite)).toBe(true);
  });

  it("derivatives are those of the value; nothing rises above or falls below its points", () => {
    const heights = fc.array(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 4, maxLength: 4 }), {
      minLength: 3,
      maxLength: 3,
    });
    const inside = fc.tuple(
      fc.double({ min: 0.6, max: 5.4, noNaN: true }),
      fc.double({ min: -0.4, max: 4.4, noNaN: true }),
    );
    fc.assert(
      fc.property(heights, inside, (z, [a, b]) => {
        const surface = monotoneSurface(x, y, z);
        const { value, dx, dy } = surface.at(a, b);
        const near = [...x, ...y].some((knot) => Math.abs(a - knot) < 1e-3 || Math.abs(b - knot) < 1e-3);
        if (!near) {
          expectClose(
            dx,
            slopeOf((v) => surface.at(v, b).value, a, 1e-5),
            DIFFERENCED,
            1e-6,
          );
          expectClose(
            dy,
            slopeOf((v) => surface.at(a, v).value, b, 1e-5),
            DIFFERENCED,
            1e-6,
          );
        }
        if (surface.isOutside(a, b)) return;
        const all = z.flat();
        expect(value).toBeLessThanOrEqual(Math.max(...all) + 1e-12);
        expect(value).toBeGreaterThanOrEqual(Math.min(...all) - 1e-12);
      }),
    );
  });
});
