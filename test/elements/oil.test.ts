/** Enclosed oil with and without an accumulator, and the resistance of lines. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lineResistance, type LineEnd } from "../../server/elements/laws/line-resistance.js";
import { oilLaw, type OilVolume } from "../../server/elements/laws/oil.js";
import { ATMOSPHERE, polytropic } from "../../server/elements/laws/polytropic.js";
import { constantForce } from "../../server/elements/laws/constant-force.js";
import type { SpringLaw } from "../../server/elements/element.js";
import { expectClose, slopeOf } from "../support/approx.js";
import { CLOSED_FORM, DIFFERENCED, IDENTITY } from "../support/tolerances.js";

const law = (volume: OilVolume): SpringLaw => {
  const made = oilLaw(volume);
  if (made === undefined) throw new Error("nothing gives");
  return made;
};

describe("an oil volume", () => {
  // 60 ml of oil of 1.4 GPa: C = V/B.
  const compliance = 60e-6 / 1.4e9;
  const charge = { pressure: 2e6 + ATMOSPHERE, volume: 80e-6, exponent: 1.3 };
  const gas = polytropic(charge);

  it("alone is as stiff as its bulk modulus: dp/dq = B/V", () => {
    const oil = law({ pressure: 1e6, compliance, gas: undefined });
    expectClose(oil.rate(0), 1.4e9 / 60e-6, CLOSED_FORM);
    expectClose(oil.force(0.1e-6), 1e6 + (0.1e-6 * 1.4e9) / 60e-6, CLOSED_FORM);
  });

  it("alone parts at absolute nought and never pulls more than the atmosphere", () => {
    const oil = law({ pressure: 0, compliance, gas: undefined });
    expectClose(oil.force(-ATMOSPHERE * compliance), -ATMOSPHERE, CLOSED_FORM);
    expect(oil.force(-1)).toBe(-ATMOSPHERE);
    expect(oil.rate(-1)).toBe(0);
  });

  it("with an accumulator and no compressibility is the gas: n p/V", () => {
    const link = law({ pressure: 2e6, compliance: 0, gas });
    expectClose(link.force(0), 2e6, CLOSED_FORM);
    expectClose(link.rate(0), (1.3 * charge.pressure) / charge.volume, CLOSED_FORM);
    expectClose(link.force(20e-6), charge.pressure * (80 / 60) ** 1.3 - ATMOSPHERE, CLOSED_FORM);
  });

  it("with both is softer than either: 1/k = 1/k_gas + C", () => {
    const link = law({ pressure: 2e6, compliance: 1e-11, gas });
    const k = (1.3 * charge.pressure) / charge.volume;
    expectClose(link.rate(0), 1 / (1 / k + 1e-11), CLOSED_FORM);
  });

  it("that nothing gives in has no law", () => {
    expect(oilLaw({ pressure: 0, compliance: 0, gas: undefined })).toBeUndefined();
  });

  const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const anyVolume = fc
    .record({
      pressure: positive(1e5, 1e7),
      compliance: fc.oneof(fc.constant(0), positive(1e-15, 1e-10)),
      volume: positive(1e-5, 1e-3),
      exponent: positive(1, 1.6),
    })
    .map(({ pressure, compliance: c, volume, exponent }) => ({
      pressure,
      compliance: c,
      gas: polytropic({ pressure: pressure + ATMOSPHERE, volume, exponent }),
    }));

  it("shares what is pushed out: oil and gas at one pressure, together the whole", () => {
    fc.assert(
      fc.property(anyVolume, positive(-1, 1.2), (volume, part) => {
        const q = part * volume.gas.volume;
        const link = law(volume);
        const p = link.force(q);
        const x = (link.fluid?.used?.(q) ?? 0) * volume.gas.volume;
        expectClose(volume.gas.pressure(x) - ATMOSPHERE, p, DIFFERENCED, 1);
        expectClose(x + volume.compliance * (p - volume.pressure), q, DIFFERENCED, 1e-15);
      }),
    );
  });

  it("has a pressure that is the slope of its energy, and a rate that is the slope of its pressure", () => {
    fc.assert(
      fc.property(anyVolume, positive(-0.5, 0.8), (volume, part) => {
        const q = part * volume.gas.volume;
        const link = law(volume);
        const h = 1e-4 * volume.gas.volume;
        fc.pre((link.fluid?.used?.(q) ?? 1) < 0.9);
        expectClose(slopeOf(link.energy, q, h), link.force(q), DIFFERENCED, DIFFERENCED * volume.pressure);
        expectClose(slopeOf(link.force, q, h), link.rate(q), DIFFERENCED);
        expect(link.energy(q)).toBeGreaterThanOrEqual(-1e-6);
      }),
    );
  });
});

describe("line resistance", () => {
  const both: LineEnd = { resistance: 4e9, free: undefined };

  it("is halved at each cylinder: oil that goes through meets all of it", () => {
    const half = lineResistance([both]);
    expectClose(half?.force(1e-3) ?? 0, 2e9 * 1e-3, IDENTITY);
    expectClose(half?.force(-1e-3) ?? 0, -2e9 * 1e-3, IDENTITY);
    expectClose(half?.lowSpeed ?? 0, 2e9, IDENTITY);
  });

  it("with a valve holds one way only", () => {
    const valve = lineResistance([{ ...both, free: "out" }]);
    expect(valve?.force(1e-3)).toBe(0);
    expectClose(valve?.force(-1e-3) ?? 0, -2e9 * 1e-3, IDENTITY);
    expectClose(valve?.lowSpeed ?? 0, 1e9, IDENTITY);
    const other = lineResistance([{ ...both, free: "in" }]);
    expectClose(other?.force(-1e-3) ?? 1, 0, IDENTITY);
    expectClose(other?.force(1e-3) ?? 0, 2e9 * 1e-3, IDENTITY);
  });

  it("of lines side by side is less, and of a free one nothing", () => {
    expectClose(lineResistance([both, both])?.lowSpeed ?? 0, 1e9, IDENTITY);
    expect(lineResistance([both, { resistance: 0, free: undefined }])).toBeUndefined();
    expect(lineResistance([])).toBeUndefined();
  });
});

describe("a constant force", () => {
  it("has no rate and its potential", () => {
    const held = constantForce(500);
    expect([held.force(0.1), held.rate(-1), held.energy(0.01)]).toEqual([500, 0, 5]);
  });
});
