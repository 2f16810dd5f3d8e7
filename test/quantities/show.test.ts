import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { showNumber, showQuantity, toSI, unitsOf, writeQuantity } from "../../server/quantities/index.js";
import { WRITTEN_DIGITS } from "../support/tolerances.js";

describe("a shown quantity", () => {
  it.each([
    [120_000, "N/mm", undefined, "120 N/mm"],
    [171_312.4, "N/mm", undefined, "171.3 N/mm"],
    [0.44, "%", undefined, "44 %"],
    [-0.0436332, "deg", undefined, "-2.5 deg"],
    [2.54, "mm", 3, "2540 mm"],
    [-1e-12, "mm", undefined, "-0.000000001 mm"],
    [-0, "mm", undefined, "0 mm"],
    [0.85, "", undefined, "0.85"],
    [0.000123456, "m", 3, "0.000123 m"],
    [999.96, "", undefined, "1000"],
    [293.15, "degC", undefined, "20 degC"],
    [21_015.22, "lbf/in", 4, "120 lbf/in"],
    [1e18, "", 3, "1e18"],
    [1.234e-20, "", 3, "1.23e-20"],
    [Number.NaN, "mm", undefined, "no figure mm"],
  ])("%d in %s reads %s", (si, unit, digits, text) => {
    expect(showQuantity(si, unit, digits)).toBe(text);
  });

  it("says that it is SI where the unit is not known", () => {
    expect(showQuantity(12, "furlong")).toBe("12 (SI)");
  });

  it("is never a minus nought, never an exponent in the usual ranges, and right to its digits", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e12, max: 1e12, noNaN: true }),
        fc.integer({ min: 1, max: 12 }),
        (value, digits) => {
          const text = showNumber(value, digits);
          expect(text).not.toMatch(/^-0*(\.0*)?$/);
          if (Math.abs(value) > 1e-8) expect(text).not.toMatch(/e/);
          expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(Math.abs(value) * 10 ** (1 - digits));
        },
      ),
    );
  });
});

describe("a written quantity", () => {
  it("means the same when it is read again", () => {
    const units = unitsOf("length").concat(unitsOf("rate"), unitsOf("torsional-rate"), unitsOf("speed"));
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.double({ min: 0.001, max: 1e5, noNaN: true }), (unit, value) => {
        const si = toSI(value, unit) ?? Number.NaN;
        const digits = writeQuantity(si, unit)?.split(" ")[0];
        expect(Math.abs((toSI(Number(digits), unit) ?? Number.NaN) / si - 1)).toBeLessThan(WRITTEN_DIGITS);
      }),
    );
  });

  it("has no more digits than it needs", () => {
    expect(writeQuantity(toSI(0.1, "in") ?? 0, "in")).toBe("0.1 in");
    expect(writeQuantity(0.0254, "mm")).toBe("25.4 mm");
    expect(writeQuantity(1, "furlong")).toBeUndefined();
    expect(writeQuantity(Number.NaN, "mm")).toBeUndefined();
  });
});
