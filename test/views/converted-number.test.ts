import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convertedNumber } from "../../server/views/converted-number.js";
import { counterpart } from "../../server/views/unit-counterparts.js";

describe("digits in another unit", () => {
  // Exact by definition: inch 25.4 mm, pound 0.45359237 kg, foot 0.3048 m, mile 1609.344 m (NIST SP 811, 2008, appendix B).
  it.each([
    ["25.4", "mm", "in", "1"],
    ["1", "in", "mm", "25.4"],
    ["2540", "mm", "in", "100"],
    ["-0.5", "in", "mm", "-12.7"],
    ["+2", "mm", "in", "+0.0787"],
    ["1", "lb", "kg", "0.453592"],
    ["100", "mph", "km/h", "160.934"],
    ["0", "mm", "in", "0"],
    ["0.0", "in", "mm", "0"],
    ["262", "mm", "in", "10.315"],
    ["10.315", "in", "mm", "262"],
  ])("%s %s is so many %s: %s", (digits, from, to, expected) => {
    expect(convertedNumber(digits, from, to)).toBe(expected);
  });

  // 1 lbf/in = 4.4482216152605 N / 25.4 mm = 0.17512683… N/mm, from the same definitions.
  it("keeps a spring rate to five significant digits", () => {
    expect(convertedNumber("500", "lbf/in", "N/mm")).toBe("87.563");
    expect(convertedNumber("87.563", "N/mm", "lbf/in")).toBe("500");
  });

  it("has none for a unit that is not known", () => {
    expect(convertedNumber("1", "mm", "cubit")).toBeUndefined();
  });

  const pairs = [
    ["mm", "in"],
    ["kg", "lb"],
    ["N/mm", "lbf/in"],
    ["km/h", "mph"],
    ["N*s/mm", "lbf*s/in"],
    ["m^2", "ft^2"],
    ["mm/turn", "in/turn"],
  ] as const;
  const written = fc
    .tuple(fc.integer({ min: -99_999, max: 99_999 }), fc.integer({ min: 0, max: 2 }))
    .map(([digits, decimals]) => (digits / 10 ** decimals).toFixed(decimals));

  it.each(pairs)("%s to %s and back is the number that was written", (a, b) => {
    fc.assert(
      fc.property(written, (digits) => {
        const there = convertedNumber(digits, a, b);
        const back = there && convertedNumber(there, b, a);
        expect(Number(back)).toBe(Number(digits));
      }),
    );
  });
});

describe("the unit of the other system", () => {
  it.each([
    ["mm", "inch", "in"],
    ["N*s/mm", "inch", "lbf*s/in"],
    ["kg*m^2", "inch", "lb*ft^2"],
    ["m^2/mm", "inch", "ft^2/in"],
    ["km/h", "inch", "mph"],
    ["bar*s/l", "inch", "psi*s/in^3"],
    ["GPa", "inch", "psi"],
    ["lbf/in", "si", "N/mm"],
    ["lbf*ft/deg", "si", "N*m/deg"],
    ["in^3", "si", "ml"],
    ["deg", "si", undefined],
    ["g", "inch", undefined],
    ["%", "inch", undefined],
    ["mm", "si", undefined],
    ["furlong", "si", undefined],
  ] as const)("of %s in %s is %s", (unit, target, expected) => {
    expect(counterpart(unit, target)).toBe(expected);
  });
});
