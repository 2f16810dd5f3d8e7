import { describe, expect, it } from "vitest";
import { invertedBasis, solved, spectrumOf, undampedSpectrum } from "../../server/maths/eigen.js";
import { addCoupling, applied, congruent, diagonal, product, zeros } from "../../server/maths/rows.js";
import { expectClose } from "../support/approx.js";
import { IDENTITY } from "../support/tolerances.js";

const ROTATING = [
  [-1, 4, 0],
  [-4, -1, 0.5],
  [0, 0, -3],
];

describe("the spectrum of a general matrix", () => {
  it("has A W = W Λ with a block for each pair", () => {
    const { re, im, basis } = spectrumOf(ROTATING)!;
    const blocks = zeros(3, 3);
    for (let k = 0; k < 3; k++) {
      blocks[k]![k] = re[k]!;
      if (im[k]! > 0) [blocks[k]![k + 1], blocks[k + 1]![k]] = [im[k]!, -im[k]!];
    }
    const [left, right] = [product(ROTATING, basis), product(basis, blocks)];
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) expectClose(left[i]![j]!, right[i]![j]!, IDENTITY);
    expect([...re].sort((a, b) => b - a)).toEqual([-1, -1, -3]);
  });

  it("inverts its basis and tells how skew it is", () => {
    const { basis } = spectrumOf(ROTATING)!;
    const { inverse, condition } = invertedBasis(basis)!;
    const one = product(basis, inverse);
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) expectClose(one[i]![j]!, i === j ? 1 : 0, IDENTITY);
    expect(condition).toBeGreaterThan(1);
    expect(
      invertedBasis([
        [1, 1],
        [1, 1],
      ]),
    ).toBeUndefined();
  });

  it("gives no answer to what is no number", () => {
    expect(spectrumOf([[Number.NaN]])).toBeUndefined();
    expect(
      spectrumOf([
        [1, Infinity],
        [0, 1],
      ]),
    ).toBeUndefined();
    expect(spectrumOf([])).toEqual({ re: [], im: [], basis: [] });
    expect(solved([[1]], [[Number.NaN]])).toBeUndefined();
    expect(solved([[0]], [[1]])).toBeUndefined();
    expect(undampedSpectrum([[-1]], [[1]])).toBeUndefined();
    expect(undampedSpectrum([[1]], [[Number.NaN]])).toBeUndefined();
  });
});

describe("the undamped problem", () => {
  it("has shapes with xᵀM x = 1 and xᵀK x = ω²", () => {
    const [mass, stiffness] = [
      diagonal([2, 3]),
      [
        [50, -20],
        [-20, 40],
      ],
    ];
    const { squares, shapes } = undampedSpectrum(mass, stiffness)!;
    expect(squares[0]!).toBeLessThan(squares[1]!);
    const [m, k] = [congruent(mass, shapes), congruent(stiffness, shapes)];
    for (let i = 0; i < 2; i++) {
      expectClose(m[i]![i]!, 1, IDENTITY);
      expectClose(k[i]![i]!, squares[i]!, IDENTITY);
      expectClose(k[i]![1 - i]!, 0, IDENTITY, 1e-12);
    }
  });
});

describe("small matrices", () => {
  it("couple combinations of coordinates as LᵀK R", () => {
    const into = zeros(2, 2);
    addCoupling(into, [[1, 2]], [[3]], [[4, 5]]);
    expect(into).toEqual([
      [12, 15],
      [24, 30],
    ]);
    expect(applied(into, [1, -1])).toEqual([-3, -6]);
  });
});
