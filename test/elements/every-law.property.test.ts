/** Every file of laws against what all laws keep, on random parameters; a new file has to be added here. */
import { readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SpringLaw } from "../../server/elements/element.js";
import { barAllowable, bladeAllowable, coilAllowable } from "../../server/elements/laws/allowable.js";
import {
  antiRollBarRate,
  bladeAngle,
  bladeInertia,
  bladeStress,
  teeRate,
} from "../../server/elements/laws/anti-roll-bar.js";
import { coilRate, coilStress, curvatureFactor, wahlFactor } from "../../server/elements/laws/coil.js";
import { constantForce } from "../../server/elements/laws/constant-force.js";
import { reversed, shifted, twoWay } from "../../server/elements/laws/curve.js";
import {
  blended,
  constantDamping,
  damperLaw,
  damperTable,
  gasForceAt,
  gasRateAt,
  type HalfDamper,
  kneeDamper,
  scaled,
} from "../../server/elements/laws/damper-law.js";
import { constantArea, type EffectiveArea, tabledArea } from "../../server/elements/laws/effective-area.js";
import { behindGap, gasSpring, measuredGasCurve } from "../../server/elements/laws/gas-spring.js";
import { deflectionAt } from "../../server/elements/laws/inverse.js";
import { type LineEnd, lineResistance } from "../../server/elements/laws/line-resistance.js";
import { kneeCurve, linear } from "../../server/elements/laws/linear.js";
import { oilLaw } from "../../server/elements/laws/oil.js";
import { pullOnly, pushOnly } from "../../server/elements/laws/one-way.js";
import { ATMOSPHERE, type GasCharge, heated, polytropic } from "../../server/elements/laws/polytropic.js";
import { powerLaw } from "../../server/elements/laws/power-law.js";
import { inSeries, twoInSeries } from "../../server/elements/laws/series.js";
import { springLaw } from "../../server/elements/laws/spring-law.js";
import { tableCurve } from "../../server/elements/laws/table.js";
import { torsionBarRate, torsionBarStress } from "../../server/elements/laws/torsion-bar.js";
import { expectClose } from "../support/approx.js";
import {
  between,
  expectDamps,
  expectDifference,
  expectIntegral,
  expectLawful,
  expectReversed,
} from "../support/lawful.js";
import { DIFFERENCED, IDENTITY } from "../support/tolerances.js";

const RUNS = { numRuns: 25 };
const SPAN = [-0.03, 0.03] as const;
const rate = between(1e3, 5e5);

/** Rising points from the origin on. */
const rising = (dx: fc.Arbitrary<number>, dy: fc.Arbitrary<number>): fc.Arbitrary<readonly [number[], number[]]> =>
  fc.array(fc.tuple(dx, dy), { minLength: 2, maxLength: 6 }).map((steps) => {
    const [x, y]: [number[], number[]] = [[], []];
    for (const [a, b] of steps) {
      x.push((x.at(-1) ?? 0) + a);
      y.push((y.at(-1) ?? 0) + b);
    }
    return [x, y] as const;
  });
const points = rising(between(1e-3, 0.01), between(5, 2000));
const speeds = rising(between(0.01, 0.2), between(5, 2000));

const half: fc.Arbitrary<HalfDamper> = fc.oneof(
  between(100, 1e4).map(constantDamping),
  speeds.map(([v, f]) => damperTable(v, f)),
  fc.tuple(between(1e3, 1e4), between(0.02, 0.2), between(100, 1e3)).map(([c, v, d]) => kneeDamper(c, v, d)),
);
const charge: fc.Arbitrary<GasCharge> = fc
  .tuple(between(6e5, 40e5), between(2e-5, 3e-4), between(1, 2))
  .map(([pressure, volume, exponent]) => ({ pressure, volume, exponent }));
const falling: fc.Arbitrary<EffectiveArea> = fc
  .tuple(between(4e-4, 9e-4), between(0.3, 1), between(0.3, 1), between(0.005, 0.02))
  .map(([area, one, two, step]) => tabledArea([0, step, 2 * step], [area, area * one, area * one * two]));
const area: fc.Arbitrary<EffectiveArea> = fc.oneof(between(3e-4, 9e-4).map(constantArea), falling);

const lineEnd: fc.Arbitrary<LineEnd> = fc.record({
  resistance: fc.oneof(fc.constant(0), between(1e6, 1e10)),
  free: fc.constantFrom("out", "in", undefined),
});

const blade = fc.record({
  section: fc.tuple(between(0.003, 0.01), between(0.012, 0.03)),
  length: between(0.04, 0.12),
  modulus: between(180e9, 215e9),
  angle: between(0, Math.PI / 2),
});

/** What a file promises: run once for each set of random numbers. */
const check = <T>(values: fc.Arbitrary<T>, promise: (value: T) => void): void =>
  fc.assert(fc.property(values, promise), RUNS);

const made = (law: SpringLaw | string): SpringLaw => {
  if (typeof law === "string") throw new Error(law);
  return law;
};

const properties: Readonly<Record<string, () => void>> = {
  allowable: () =>
    check(fc.tuple(between(0.002, 0.02), fc.option(between(1e8, 2e9), { nil: undefined })), ([wire, stated]) => {
      for (const one of [coilAllowable(wire, stated), barAllowable(stated), bladeAllowable(stated)]) {
        expect(one.stated).toBe(stated);
        expect(one.oneWay).toBeGreaterThanOrEqual(one.bothWays);
        expect(one.bothWays).toBeGreaterThan(0);
      }
      expect(coilAllowable(wire * 1.1, stated).oneWay).toBeLessThan(coilAllowable(wire, stated).oneWay);
    }),

  "anti-roll-bar": () =>
    check(fc.tuple(rate, blade, between(0.06, 0.2), between(0.06, 0.2)), ([k, one, left, right]) => {
      const whole = antiRollBarRate(k, [left, right], one);
      expect(whole).toBeGreaterThan(0);
      expect(whole).toBeLessThan(k);
      expectClose(antiRollBarRate(k, [right, left], one), whole, IDENTITY);
      expectClose(antiRollBarRate(k, [left, right], undefined), k, IDENTITY);
      expect(teeRate(k, left, one)).toBeLessThan(k);
      const turned = { ...one, section: [one.section[1], one.section[0]] as const };
      expectClose(bladeInertia(turned), bladeInertia(one), IDENTITY);
      expectClose(bladeStress(turned), bladeStress(one), IDENTITY);
      expect(bladeInertia({ ...one, angle: Math.PI / 2 })).toBeGreaterThanOrEqual(bladeInertia(one));
      expect(bladeInertia({ ...one, angle: 0 })).toBeLessThanOrEqual(bladeInertia(one) * (1 + IDENTITY));
      expectClose(bladeAngle(5, 5, 0, 1) + bladeAngle(1, 5, 0, 1), 1, IDENTITY);
    }),

  coil: () =>
    check(fc.tuple(between(0.006, 0.016), between(4, 12), between(3, 12)), ([wire, index, turns]) => {
      const one = { wire, mean: wire * index, turns, shearModulus: 79.3e9 };
      expectClose(coilRate({ ...one, turns: 2 * turns }), coilRate(one) / 2, IDENTITY);
      const twice = { ...one, wire: 2 * wire, mean: 2 * one.mean };
      expectClose(coilRate(twice), 2 * coilRate(one), IDENTITY);
      expectClose(coilStress(twice), coilStress(one) / 4, IDENTITY);
      expect(curvatureFactor(one)).toBeGreaterThan(1);
      expect(wahlFactor(one)).toBeGreaterThanOrEqual(curvatureFactor(one));
    }),

  "constant-force": () =>
    check(between(-5000, 5000), (force) => {
      // It may give back more than it has stored from design: a force that somebody else keeps up.
      expectLawful(constantForce(force), SPAN, { storesOnly: false });
      expectReversed(constantForce(force), { ...constantForce(-force) }, SPAN);
    }),

  curve: () =>
    check(fc.tuple(points, rate, between(-0.01, 0.01)), ([[x, y], k, offset]) => {
      const [squat, rise] = [tableCurve(x, y), linear(k)];
      const both = twoWay(squat, rise);
      expectLawful(both, SPAN);
      expectReversed(both, twoWay(rise, squat), SPAN);
      expectReversed(both, reversed(both), SPAN);
      expectLawful(shifted(both, offset), SPAN);
      expectClose(shifted(both, offset).force(-offset), 0, IDENTITY, 1e-6);
    }),

  "damper-law": () =>
    check(fc.tuple(half, half, between(0, 1), between(0, 400), between(0, 5000)), ([a, b, share, gas, rise]) => {
      expectDamps(damperLaw(a, b), 1);
      const clicked = damperLaw(blended(a, b, share), scaled(b, 1 - share / 2), { force: gas, rate: rise });
      expectDamps(clicked, 1);
      const [one, other] = [damperLaw(a, b), damperLaw(b, a)];
      for (const v of [-0.7, -0.11, 0.03, 0.4]) expectClose(one.force(v), -other.force(-v), IDENTITY);
      for (const s of [-0.2, -0.01, 0, 0.02]) {
        expectDifference(
          (x) => gasForceAt(clicked, x),
          (x) => gasRateAt(clicked, x),
          s,
          1e-5,
        );
        expect(gasForceAt(clicked, s)).toBeGreaterThanOrEqual(0);
      }
    }),

  "effective-area": () =>
    check(area, (by) => {
      expect(by.swept(0)).toBe(0);
      expectIntegral(by.swept, by.area, -0.06, 0.06);
      for (let s = -0.06; s < 0.06; s += 0.0031) {
        expect(by.area(s)).toBeGreaterThan(0);
        expectDifference(by.swept, by.area, s, 1e-6);
      }
    }),

  "gas-spring": () =>
    check(fc.tuple(charge, area, fc.option(between(0, 0.01), { nil: undefined })), ([gas, by, gap]) => {
      expectLawful(gasSpring(gas, by, gap), [-0.02, 0.02], { rises: false });
      const measured = measuredGasCurve([-0.02, 0, 0.01, 0.02], [400, 900, 1500, 1400]);
      // Counted from design, where it carries already: pulled out it has given some of that back.
      expectLawful(measured, [-0.02, 0.02], { rises: false, storesOnly: false });
      if (gap !== undefined) expectLawful(behindGap(measured, gap), [-0.02, 0.03], { rises: false });
    }),

  inverse: () =>
    check(fc.tuple(points, rate, between(-3000, 3000)), ([[x, y], k, force]) => {
      for (const law of [tableCurve(x, y), linear(k), pushOnly(linear(k)), pullOnly(tableCurve(x, y))]) {
        const s = deflectionAt(law, force);
        if (s !== undefined) expectClose(law.force(s), force, DIFFERENCED, 1e-6);
        else expect(force > 0 ? law.force(1e6) < force : law.force(-1e6) > force).toBe(true);
      }
    }),

  "line-resistance": () =>
    check(fc.array(lineEnd, { minLength: 1, maxLength: 3 }), (ends) => {
      const law = lineResistance(ends);
      if (law === undefined) return;
      expectDamps(law, 1e-3);
      const swapped = lineResistance(
        ends.map(({ resistance, free }) => ({ resistance, free: free && (free === "out" ? "in" : "out") })),
      );
      if (swapped === undefined) throw new Error("nothing the other way round");
      expectClose(swapped.force(-1e-3), -law.force(1e-3), IDENTITY);
    }),

  linear: () =>
    check(fc.tuple(rate, between(1e-3, 0.02), between(1, 5)), ([soft, knee, harder]) => {
      expectLawful(linear(soft), SPAN);
      expectReversed(linear(soft), linear(soft), SPAN);
      expectLawful(kneeCurve(soft, knee, soft * harder), SPAN);
    }),

  oil: () =>
    check(
      fc.tuple(fc.option(charge, { nil: undefined }), between(1e-15, 1e-13), between(0, 40e5)),
      ([gas, compliance, filled]) => {
        const pressure = gas === undefined ? filled : gas.pressure - ATMOSPHERE;
        const law = oilLaw({ pressure, compliance, gas: gas && polytropic(gas) });
        if (law === undefined) throw new Error("compressible oil gives");
        expectLawful(law, [-1e-5, 1e-5]);
        expectClose(law.force(0), pressure, DIFFERENCED, 1e-6);
        expect(law.force(-1e-3)).toBeGreaterThanOrEqual(-ATMOSPHERE * (1 + IDENTITY));
      },
    ),

  "one-way": () =>
    check(fc.tuple(points, rate), ([[x, y], k]) => {
      for (const curve of [tableCurve(x, y), linear(k), kneeCurve(k, 0.004, 3 * k)]) {
        expectLawful(pushOnly(curve), SPAN);
        expectReversed(pushOnly(curve), pullOnly(reversed(curve)), SPAN);
        expect(pushOnly(curve).force(-0.02)).toBe(0);
      }
    }),

  polytropic: () =>
    check(fc.tuple(charge, between(250, 400)), ([gas, warm]) => {
      const body = polytropic(gas);
      const span = [-gas.volume, 1.1 * gas.volume] as const;
      for (let i = 0; i <= 40; i++) {
        const v = span[0] + ((span[1] - span[0]) * i) / 40;
        expect(body.energy(v)).toBeGreaterThanOrEqual(-1e-9 * gas.pressure * gas.volume);
        expect(body.pressure(v)).toBeGreaterThan(0);
        expect(body.stiffness(v)).toBeGreaterThan(0);
        expectDifference(body.pressure, body.stiffness, v, 1e-5 * gas.volume);
        expectDifference(body.energy, (swept) => body.pressure(swept) - ATMOSPHERE, v, 1e-5 * gas.volume);
      }
      expectIntegral(body.pressure, body.stiffness, ...span);
      expectClose(heated(heated(gas.pressure, 293, warm), warm, 293), gas.pressure, IDENTITY);
    }),

  "power-law": () =>
    check(fc.tuple(between(100, 8000), between(0.005, 0.03), between(1, 5)), ([force, deflection, exponent]) => {
      const law = powerLaw(force, deflection, exponent);
      expectLawful(law, SPAN);
      expectClose(law.force(deflection), force, IDENTITY);
      expectReversed(law, reversed(law), SPAN);
    }),

  series: () =>
    check(fc.tuple(points, rate, rate, between(1e-3, 0.01)), ([[x, y], main, soft, travel]) => {
      for (const curve of [
        linear(main),
        tableCurve(x, y),
        kneeCurve(main, 0.004, 3 * main),
        powerLaw(main * 0.01, 0.01, 2),
      ]) {
        expectLawful(inSeries(curve, { rate: soft, travel }), SPAN);
        expectLawful(twoInSeries(curve), SPAN);
        expectReversed(
          inSeries(curve, { rate: soft, travel }),
          inSeries(reversed(curve), { rate: soft, travel }),
          SPAN,
        );
      }
      const never = inSeries(linear(main), { rate: soft, travel: Infinity });
      expectClose(never.force(0.01), 0.01 / (1 / main + 1 / soft), DIFFERENCED);
    }),

  "spring-law": () =>
    check(fc.tuple(points, rate, between(1e-4, 0.01), between(1, 500)), ([[x, y], k, gap, preload]) => {
      for (const curve of [linear(k), tableCurve(x, y), twoWay(tableCurve(x, y), linear(k))]) {
        for (const fitting of [
          { gap, preload: undefined },
          { gap: undefined, preload },
          { gap: undefined, preload: undefined },
        ]) {
          for (const acts of ["in-compression", "in-tension", "both-ways"] as const)
            expectLawful(made(springLaw(curve, { acts, ...fitting })), SPAN);
          const [pushed, pulled] = [
            made(springLaw(curve, { acts: "in-compression", ...fitting })),
            made(springLaw(reversed(curve), { acts: "in-tension", ...fitting })),
          ];
          expectReversed(pushed, pulled, SPAN);
        }
      }
    }),

  table: () =>
    check(fc.tuple(points, between(0, 0.02), between(0, 3000)), ([[x, y], left, down]) => {
      expectLawful(tableCurve(x, y), SPAN);
      // One that is measured on both sides of its free position, and one that carries at nought.
      const moved = tableCurve([-left - 0.001, ...x], [-down - 1, ...y]);
      expectLawful(moved, SPAN);
    }),

  "torsion-bar": () =>
    check(fc.tuple(between(0.01, 0.03), between(0, 0.9), between(0.1, 0.6)), ([diameter, hollow, length]) => {
      const bar = { diameter, bore: hollow * diameter, length, shearModulus: 79.3e9 };
      expectClose(torsionBarRate({ ...bar, length: 2 * length }), torsionBarRate(bar) / 2, IDENTITY);
      expectClose(
        torsionBarRate({ ...bar, bore: 0 }) - torsionBarRate(bar),
        hollow === 0 ? 0 : torsionBarRate({ ...bar, diameter: bar.bore, bore: 0 }),
        DIFFERENCED,
        1e-9,
      );
      // Stress and rate belong together: τ = G φ d/(2 L) for a twist φ.
      expectClose(torsionBarStress(bar) * torsionBarRate(bar), (bar.shearModulus * diameter) / (2 * length), IDENTITY);
    }),
};

describe("every law", () => {
  it("has its properties here", () => {
    const files = readdirSync("server/elements/laws").map((file) => file.replace(/\.ts$/, ""));
    expect(Object.keys(properties).sort()).toEqual(files.sort());
  });

  it.each(Object.entries(properties))("%s", (_, keeps) => {
    expect(keeps).not.toThrow();
  });
});
