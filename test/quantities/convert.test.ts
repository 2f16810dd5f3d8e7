/**
 * Units against their published definitions and against an unrelated library.
 *
 * Exact definitions: NIST SP 811 (2008), appendix B.8, footnoted there as exact (inch, foot, pound,
 * standard gravity, mile, litre, bar). The rounded factors of the same table are values from memory.
 */
import fc from "fast-check";
import { unit as mathUnit } from "mathjs";
import { describe, expect, it } from "vitest";
import { baseUnits } from "../../grammar/vocabulary/units.js";
import { dimensions } from "../../grammar/vocabulary/dimensions.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import {
  dimensionOfUnit,
  fromSI,
  matchesDimension,
  parseUnit,
  toSI,
  unitsOf,
  unitSystem,
  usualUnit,
} from "../../server/quantities/index.js";
import { PRINTED_SEVEN, UNIT_ROUND_TRIP } from "../support/tolerances.js";

const exponentsOf = (name: DimensionName): unknown => (name === "any" ? undefined : dimensions[name]);
const named = Object.keys(dimensions) as DimensionName[];
const everyUsual = [...new Set(named.flatMap((name) => unitsOf(name)))];

describe("conversion to SI", () => {
  it.each([
    [1, "in", 0.0254],
    [1, "ft", 0.3048],
    [1, "lb", 0.45359237],
    [1, "g", 9.80665],
    [1, "lbf", 4.4482216152605],
    [1, "mph", 0.44704],
    [1, "l", 0.001],
    [1, "bar", 100_000],
    [120, "N/mm", 120_000],
    [262, "mm", 0.262],
    [9, "mm", 0.009],
    [0.1, "in", 0.00254],
    [44, "%", 0.44],
    [72, "km/h", 20],
    [1, "in^2", 0.00064516],
    [1, "ft^2", 0.09290304],
    [1.25, "mm/turn", 0.00125],
    [0.25, "N*s/mm", 250],
    [1, "bar*s/l", 1e8],
    [-0.006, "m^2/mm", -6],
    [20, "degC", 293.15],
    [0, "degC", 273.15],
  ])("%d %s is exactly %d", (value, unit, si) => {
    expect(toSI(value, unit)).toBe(si);
  });

  it.each([
    ["lbf/in", 175.1268],
    ["lbf/ft", 14.5939],
    ["psi", 6894.757],
    ["lbf*ft", 1.355818],
    ["lbf*in", 0.1129848],
    ["in^3", 1.638706e-5],
    ["lb*ft^2", 0.04214011],
    ["lb/ft^3", 16.01846],
    ["slug", 14.5939],
    ["km/h", 0.2777778],
    ["deg", 0.01745329],
    ["arcmin", 0.0002908882],
  ])("one %s is %d to seven printed digits", (unit, si) => {
    expect(Math.abs((toSI(1, unit) ?? 0) / si - 1)).toBeLessThan(PRINTED_SEVEN);
  });

  it("has in psi what a pound-force on a square inch is", () => {
    expect(toSI(1, "psi")).toBe(toSI(1, "lbf/in^2"));
  });

  it("has pi in degrees, also where they divide", () => {
    expect(toSI(180, "deg")).toBe(Math.PI);
    expect(toSI(Math.PI, "N*m/deg")).toBeCloseTo(180, 12);
  });

  it("knows nothing of what is not a unit", () => {
    const texts = [
      "furlong",
      "N/",
      "/N",
      "N//mm",
      "N mm",
      "2",
      "m^",
      "m^0",
      "m^99",
      "N*",
      "1",
      "1/1/m",
      "a".repeat(500),
    ];
    expect(texts.filter((text) => parseUnit(text) !== undefined || toSI(1, text) !== undefined)).toEqual([]);
    expect(parseUnit("degC/m")).toBeUndefined();
    expect(parseUnit("__proto__")).toBeUndefined();
  });

  it("reads the same unit in each of its spellings", () => {
    const factor = (text: string): number | undefined => parseUnit(text)?.factor;
    expect(factor("kg·m²")).toBe(factor("kg*m^2"));
    expect(factor("m/s⁻¹")).toBe(factor("m*s"));
    expect(factor("N*mm^-1")).toBe(factor("N/mm"));
    expect(factor("1/mm")).toBe(1000);
    expect(factor("")).toBe(1);
  });
});

/**
 * The library's names for our base units, where it has them: `g` is a gram there, and its psi is
 * rounded to twelve digits (lbf/in^2 is not, so psi is held against that below).
 */
const elsewhere: Readonly<Record<string, string>> = {
  in: "inch",
  ft: "ft",
  lb: "lbm",
  lbf: "lbf",
  deg: "deg",
  l: "l",
  ml: "ml",
  bar: "bar",
  h: "hour",
  min: "minute",
  s: "s",
  ms: "ms",
};
const sameThere = ["m", "cm", "mm", "km", "kg", "rad", "N", "kN", "Pa", "kPa", "MPa", "GPa", "Hz"];
const comparable = [...Object.keys(elsewhere), ...sameThere];

describe("beside another library of units", () => {
  const term = fc.record({ symbol: fc.constantFrom(...comparable), power: fc.integer({ min: 1, max: 2 }) });
  const compounds = fc.array(fc.record({ term, divide: fc.boolean() }), { minLength: 1, maxLength: 4 });

  it("converts every compound alike", () => {
    fc.assert(
      fc.property(compounds, fc.double({ min: 0.001, max: 1e6, noNaN: true }), (parts, value) => {
        const write = (name: (symbol: string) => string, one: string): string =>
          parts
            .map(({ term: { symbol, power }, divide }, index) => {
              const sign = index === 0 ? (divide ? one : "") : divide ? "/" : "*";
              return `${sign}${name(symbol)}${power === 1 ? "" : `^${power}`}`;
            })
            .join("");
        const ours = toSI(
          value,
          write((symbol) => symbol, "1/"),
        );
        const theirs = mathUnit(`${value} ${write((symbol) => elsewhere[symbol] ?? symbol, "/")}`)
          .toSI()
          .toNumber(null as never);
        expect(ours).toBeDefined();
        expect(Math.abs((ours ?? 0) / theirs - 1)).toBeLessThan(UNIT_ROUND_TRIP);
      }),
    );
  });
});

describe("back from SI", () => {
  it("gives what was written, whatever the unit", () => {
    fc.assert(
      fc.property(fc.constantFrom(...everyUsual), fc.double({ min: -1e6, max: 1e6, noNaN: true }), (unit, value) => {
        const back = fromSI(toSI(value, unit) ?? Number.NaN, unit);
        expect(Math.abs((back ?? Number.NaN) - value)).toBeLessThanOrEqual(
          UNIT_ROUND_TRIP * Math.max(1, Math.abs(value)),
        );
      }),
    );
  });
});

describe("dimensions", () => {
  it("take each of their usual units, and call it by a dimension with the same exponents", () => {
    const wrong: string[] = [];
    for (const name of named) {
      for (const text of unitsOf(name)) {
        const unit = parseUnit(text);
        const called = dimensionOfUnit(text);
        const own = exponentsOf(name);
        const isGood = unit !== undefined && matchesDimension(unit, name) && called !== undefined;
        // The name may be another of the same exponents: psi is called a pressure, of a modulus too.
        if (!isGood || JSON.stringify(exponentsOf(called)) !== JSON.stringify(own)) wrong.push(`${text} for ${name}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it("tell a moment from a torsional rate, a turn from an angle, a share from a number", () => {
    const fits = (text: string, name: DimensionName): boolean => {
      const unit = parseUnit(text);
      return unit !== undefined && matchesDimension(unit, name);
    };
    expect(fits("N*m", "torsional-rate")).toBe(false);
    expect(fits("N*m/deg", "torsional-rate")).toBe(true);
    expect(fits("turn", "angle")).toBe(false);
    expect(fits("", "share")).toBe(false);
    expect(fits("%", "share")).toBe(true);
    expect(fits("mm/mm", "number")).toBe(true);
    expect(fits("mm/mm", "count")).toBe(false);
    expect(fits("lb/in", "rate")).toBe(false);
    expect(fits("lbf/in", "rate")).toBe(true);
    expect(fits("kg*g/mm", "rate")).toBe(true);
    expect(fits("mm", "any")).toBe(true);
  });

  it("call everyday units by their everyday names", () => {
    const everyday = { mm: "length", "N*m": "moment", "N/mm": "rate", "": "number", "%": "share", g: "acceleration" };
    expect(Object.fromEntries(Object.keys(everyday).map((unit) => [unit, dimensionOfUnit(unit)]))).toEqual(everyday);
    expect(dimensionOfUnit("m^2/mm")).toBe("area-slope");
    expect(dimensionOfUnit("N*s*s/m")).toBe("mass");
    expect(dimensionOfUnit("N^3")).toBeUndefined();
    expect(dimensionOfUnit("quux")).toBeUndefined();
  });

  it("agree with the exponents of an independent library for every base unit that it has", () => {
    const wrong = comparable.filter((symbol) => {
      const { mass = 0, length = 0, time = 0, angle = 0 } = baseUnits.get(symbol)?.dimension ?? {};
      const base = mathUnit(`1 kg^${mass} m^${length} s^${time} rad^${angle}`);
      return !mathUnit(`1 ${elsewhere[symbol] ?? symbol}`).equalBase(base);
    });
    expect(wrong).toEqual([]);
  });

  it("have a usual unit in both systems", () => {
    expect(usualUnit("rate", "si")).toBe("N/mm");
    expect(usualUnit("rate", "inch")).toBe("lbf/in");
    expect(usualUnit("number", "inch")).toBe("");
    expect(usualUnit("any", "si")).toBe("");
    expect(unitSystem("lbf*in/deg")).toBe("inch");
    expect(unitSystem("N*m/deg")).toBe("si");
    expect(unitSystem("deg")).toBe("si");
    expect(unitSystem("nonsense")).toBe("si");
  });
});
