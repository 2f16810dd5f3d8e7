/** Complex systems in place against what they are made of. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solvedInPlace } from "../../server/maths/complex-solve.js";

const entry = fc.double({ min: -1, max: 1, noNaN: true });

describe("a complex system solved in place", () => {
  it("gives back the unknowns that its right sides were made of", () => {
    fc.assert(
      fc.property(
        fc.array(entry, { minLength: 32, maxLength: 32 }),
        fc.array(entry, { minLength: 16, maxLength: 16 }),
        (matrix, unknowns) => {
          const a = Float64Array.from(matrix);
          // Away from singular; rows are exchanged all the same where the first ones are small.
          for (let i = 0; i < 4; i++) a[2 * (i * 4 + ((i + 1) % 4))]! += 8;
          const b = new Float64Array(16);
          for (let i = 0; i < 4; i++) {
            for (let c = 0; c < 2; c++) {
              for (let j = 0; j < 4; j++) {
                const [m, x] = [2 * (4 * i + j), 2 * (2 * j + c)];
                b[2 * (2 * i + c)]! += a[m]! * unknowns[x]! - a[m + 1]! * unknowns[x + 1]!;
                b[2 * (2 * i + c) + 1]! += a[m]! * unknowns[x + 1]! + a[m + 1]! * unknowns[x]!;
              }
            }
          }
          expect(solvedInPlace(a, b, 4, 2)).toBe(true);
          for (const [i, value] of unknowns.entries()) expect(Math.abs(b[i]! - value)).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("says where there is no answer", () => {
    expect(solvedInPlace(new Float64Array(8), Float64Array.of(1, 0, 1, 0), 2, 1)).toBe(false);
  });
});
