/** Least-squares polynomials against closed forms, and against polynomials that they have to give back. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { polynomialAt, polynomialFit } from "../../server/maths/polynomial.js";
import { expectClose } from "../support/approx.js";
import { POLYNOMIAL } from "../support/tolerances.js";

const row = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));

describe("a fitted polynomial", () => {
  it("is the regression line of three points (normal equations, solved by hand)", () => {
    // y over x = 0, 1, 2: mean 2, slope Σ(x−1)y/2 = (5 − 0)/2.
    const [constant, slope] = polynomialFit([0, 1, 2], [0, 1, 5], 1) ?? [];
    expectClose(slope ?? 0, 2.5, POLYNOMIAL);
    expectClose(constant ?? 0, -0.5, POLYNOMIAL);
  });

  it("gives back the polynomial that the points were taken from, wherever they lie", () => {
    const coefficient = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(coefficient, { minLength: 1, maxLength: 6 }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (coefficients, middle, half) => {
          const x = row(middle - half, middle + half, 41);
          const y = x.map((value) => polynomialAt(coefficients, value));
          const fitted = polynomialFit(x, y, coefficients.length - 1);
          const size = Math.max(...y.map(Math.abs), 1e-3);
          for (const [i, value] of x.entries())
            expectClose(polynomialAt(fitted ?? [], value), y[i]!, 0, POLYNOMIAL * 100 * size);
        },
      ),
    );
  });

  it("is none where the points do not tell so many coefficients", () => {
    expect(polynomialFit([1, 2], [3, 4], 2)).toBeUndefined();
    expect(polynomialFit([1, 1, 1], [3, 4, 5], 1)).toBeUndefined();
    expect(polynomialFit([], [], 0)).toBeUndefined();
  });
});
