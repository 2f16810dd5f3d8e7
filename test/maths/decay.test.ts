/** A proof that a linear system dies away, held against its eigenvalues. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { surelyDecays } from "../../server/maths/decay.js";
import { spectrumOf } from "../../server/maths/eigen.js";

const entry = fc.integer({ min: -100, max: 100 }).map((hundredths) => hundredths / 100);
const square = fc
  .integer({ min: 1, max: 8 })
  .chain((n) => fc.array(fc.array(entry, { minLength: n, maxLength: n }), { minLength: n, maxLength: n }));

it("is found where all roots lie to the left by some way, and never where one does not", () => {
  let [proven, refused] = [0, 0];
  fc.assert(
    fc.property(
      square,
      fc.integer({ min: 0, max: 30 }).map((tenths) => tenths / 10),
      (rows, shift) => {
        const a = rows.map((row, i) => row.map((value, j) => (i === j ? value - shift : value)));
        const slowest = Math.max(...spectrumOf(a)!.re);
        const found = surelyDecays(a, 1);
        if (slowest >= 0) expect(found).toBe(false);
        if (slowest < -0.01) expect(found).toBe(true);
        if (found) proven++;
        else refused++;
      },
    ),
    { numRuns: 500 },
  );
  expect(Math.min(proven, refused)).toBeGreaterThan(50);
});

it("knows an oscillator that is hardly damped from one that is not, and from one that grows", () => {
  const oscillator = (damping: number) => [
    [0, 1],
    [-1, -2 * damping],
  ];
  expect(surelyDecays(oscillator(1e-3), 1)).toBe(true);
  expect(surelyDecays(oscillator(0), 1)).toBe(false);
  expect(surelyDecays(oscillator(-1e-3), 1)).toBe(false);
  expect(surelyDecays([[Number.NaN]], 1)).toBe(false);
  expect(surelyDecays([], 1)).toBe(true);
});
