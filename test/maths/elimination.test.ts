/** Elimination against ml-matrix, a general library, and by putting the root back in. */
import fc from "fast-check";
import { LuDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { inverted, linearRoot, signOfDeterminant } from "../../server/maths/elimination.js";

const size = 5;
const hundredths = fc.integer({ min: -1000, max: 1000 }).map((value) => value / 100);
const entries = fc.array(hundredths, { minLength: size * size, maxLength: size * size });
const rowsOf = (values: readonly number[]): number[][] =>
  Array.from({ length: size }, (_, i) => values.slice(size * i, size * (i + 1)));

describe("linearRoot", () => {
  it("leaves what the library leaves when it is put back in", () => {
    fc.assert(
      fc.property(entries, (values) => {
        const a = rowsOf(values.map((value, i) => (i % (size + 1) === 0 ? value + 60 : value)));
        const b = [1, -2, 3, 0.5, 7];
        const x = linearRoot(a, b)!;
        const theirs = new LuDecomposition(new Matrix(a)).solve(Matrix.columnVector(b)).to1DArray();
        for (const [i, value] of x.entries()) expect(value).toBeCloseTo(theirs[i]!, 11);
      }),
    );
  });

  it("exchanges rows where a pivot is none, and leaves what goes in", () => {
    const a = [
      [0, 2],
      [4, 1],
    ];
    const b = [6, 11];
    expect(linearRoot(a, b)).toEqual([2, 3]);
    expect([a, b]).toEqual([
      [
        [0, 2],
        [4, 1],
      ],
      [6, 11],
    ]);
  });

  it("has no root of a singular system", () => {
    expect(
      linearRoot(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 1],
      ),
    ).toBeUndefined();
  });
});

describe("inverted", () => {
  it("gives the unit matrix with what it is the inverse of", () => {
    fc.assert(
      fc.property(entries, (values) => {
        const a = rowsOf(values.map((value, i) => (i % (size + 2) === 1 ? value + 60 : value)));
        fc.pre(Math.abs(new LuDecomposition(new Matrix(a)).determinant) > 1);
        const one = new Matrix(a).mmul(new Matrix(inverted(a)!.map((row) => [...row])));
        for (const [i, row] of one.to2DArray().entries())
          for (const [j, value] of row.entries()) expect(value).toBeCloseTo(i === j ? 1 : 0, 8);
      }),
    );
  });

  it("is none of a singular matrix", () => {
    expect(
      inverted([
        [1, 2],
        [2, 4],
      ]),
    ).toBeUndefined();
  });
});

describe("signOfDeterminant", () => {
  it("is the library's", () => {
    fc.assert(
      fc.property(entries, (values) => {
        const { determinant } = new LuDecomposition(new Matrix(rowsOf(values)));
        fc.pre(Math.abs(determinant) > 1e-6);
        expect(signOfDeterminant(rowsOf(values))).toBe(Math.sign(determinant));
      }),
    );
  });

  it("is nought where the matrix is singular or a number is none", () => {
    expect(
      signOfDeterminant([
        [1, 2],
        [2, 4],
      ]),
    ).toBe(0);
    expect(
      signOfDeterminant([
        [1, Number.NaN],
        [2, 4],
      ]),
    ).toBe(0);
  });
});
