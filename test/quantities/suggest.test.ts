import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { baseUnits } from "../../grammar/vocabulary/units.js";
import { connectives } from "../../grammar/vocabulary/index.js";
import { dimensions } from "../../grammar/vocabulary/dimensions.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import { matchesDimension, parseUnit, suggestUnits } from "../../server/quantities/index.js";

describe("the unit that was meant", () => {
  it.each<[string, DimensionName | undefined, string]>([
    ["Nm", "moment", "N*m"],
    ["Nm/deg", "torsional-rate", "N*m/deg"],
    ["Nm", undefined, "N*m"],
    ["lbs", "mass", "lb"],
    ["lbs", "force", "lbf"],
    ["lbs/in", "rate", "lbf/in"],
    ["lb/in", "rate", "lbf/in"],
    ["kph", "speed", "km/h"],
    ["kmh", undefined, "km/h"],
    ["kg.m2", "inertia", "kg*m^2"],
    ["kgm2", "inertia", "kg*m^2"],
    ['"', "length", "in"],
    ["inches", "length", "in"],
    ["°", "angle", "deg"],
    ["degrees", undefined, "deg"],
    ["n/mm", "rate", "N/mm"],
    ["N/MM", undefined, "N/mm"],
    ["MM", "length", "mm"],
    ["KG", "mass", "kg"],
    ["bra", undefined, "bar"],
    ["mpa", "pressure", "MPa"],
    ["Ns/mm", "damping", "N*s/mm"],
    ["Ns/m", undefined, "N*s/m"],
    ["g", "mass", "kg"],
    ["N", "rate", "N/mm"],
    ["lbf", "rate", "lbf/in"],
    ["lbf", "torsional-rate", "lbf*ft/deg"],
    ["mm", "angle", "deg"],
    ["N*m", "torsional-rate", "N*m/deg"],
    ["", "rate", "N/mm"],
    ["", "share", "%"],
    ["", "damper-speed", "mm/s"],
    ["", "modulus", "GPa"],
    ["", "piston-area", "mm^2"],
    ["percent", "share", "%"],
    ["ft-lb", "moment", "lbf*ft"],
    ["cc", "volume", "ml"],
    ["turns", "turns", "turn"],
    ["zzz", "rate", "N/mm"],
  ])("%s for %s is %s", (text, dimension, unit) => {
    expect(suggestUnits(text, dimension)[0]).toBe(unit);
  });

  it("is not guessed where nothing is like it", () => {
    expect(suggestUnits("zzz")).toEqual([]);
    expect(suggestUnits("x".repeat(5000))).toEqual([]);
    expect(suggestUnits("constructor")).toEqual([]);
  });

  it("always fits, whatever was written", () => {
    const any = fc.oneof(fc.string({ maxLength: 30 }), fc.constantFrom("N*m/", "lb·in²", "*/^", "mm^^2", "µm", "″/′"));
    const names = fc.option(fc.constantFrom(...(Object.keys(dimensions) as DimensionName[])), { nil: undefined });
    fc.assert(
      fc.property(any, names, (text, dimension) => {
        for (const candidate of suggestUnits(text, dimension)) {
          const unit = parseUnit(candidate);
          expect(candidate).not.toBe(text);
          expect(unit !== undefined && (dimension === undefined || matchesDimension(unit, dimension))).toBe(true);
        }
      }),
    );
  });
});

describe("names of units", () => {
  it("are no joining words", () => {
    expect([...baseUnits.keys()].filter((symbol) => connectives.has(symbol))).toEqual([]);
  });
});
