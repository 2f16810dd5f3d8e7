/** What every force law has to keep, whatever its numbers. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SpringLaw } from "../../server/elements/element.js";
import { type Curve, reversed } from "../../server/elements/laws/curve.js";
import { constantDamping, damperLaw, damperTable, kneeDamper } from "../../server/elements/laws/damper-law.js";
import { deflectionAt } from "../../server/elements/laws/inverse.js";
import { linear } from "../../server/elements/laws/linear.js";
import { inSeries, twoInSeries } from "../../server/elements/laws/series.js";
import { type Acts, springLaw } from "../../server/elements/laws/spring-law.js";
import { tableCurve } from "../../server/elements/laws/table.js";
import { expectClose, slopeOf } from "../support/approx.js";
import { DIFFERENCED, IDENTITY } from "../support/tolerances.js";

const rate = fc.double({ min: 1e3, max: 5e5, noNaN: true });
const steps = fc.array(
  fc.tuple(fc.double({ min: 1e-3, max: 0.01, noNaN: true }), fc.double({ min: 5, max: 2000, noNaN: true })),
  {
    minLength: 2,
    maxLength: 6,
  },
);

/** Points that rise from the origin. */
const points = steps.map((deltas) => {
  const x: number[] = [];
  const y: number[] = [];
  for (const [dx, dy] of deltas) {
    x.push((x.at(-1) ?? 0) + dx);
    y.push((y.at(-1) ?? 0) + dy);
  }
  return [x, y] as const;
});

const curve: fc.Arbitrary<Curve> = fc.oneof(
  rate.map(linear),
  points.map(([x, y]) => tableCurve(x, y)),
  fc
    .tuple(rate, rate, fc.double({ min: 1e-3, max: 0.01, noNaN: true }))
    .map(([main, soft, travel]) => inSeries(linear(main), { rate: soft, travel })),
  fc.tuple(points, rate).map(([[x, y], soft]) => inSeries(tableCurve(x, y), { rate: soft, travel: 0.004 })),
  rate.map((k) => twoInSeries(linear(k))),
);

const acts = fc.constantFrom<Acts>("in-compression", "in-tension", "both-ways");
const fitting = fc.tuple(
  acts,
  fc.option(fc.double({ min: 1e-4, max: 0.005, noNaN: true }), { nil: undefined }),
  fc.option(fc.double({ min: 1, max: 500, noNaN: true }), { nil: undefined }),
);
const law: fc.Arbitrary<SpringLaw> = fc.tuple(curve, fitting).map(([base, [how, gap, preload]]) => {
  const made = springLaw(base, { acts: how, gap, preload: gap === undefined ? preload : undefined });
  if (typeof made === "string") throw new Error(made);
  return made;
});
const at = fc.double({ min: -0.03, max: 0.03, noNaN: true });

/** Kinks have no derivative: true where the rate is the same on both sides. */
const smoothAt = (f: { rate(x: number): number }, x: number, h: number): boolean =>
  Math.abs(f.rate(x + 3 * h) - f.rate(x - 3 * h)) <= 0.02 * Math.max(Math.abs(f.rate(x)), 1);

describe("a spring's law", () => {
  it("is continuous: a small step changes the force by no more than rate times step", () => {
    fc.assert(
      fc.property(law, at, (f, x) => {
        const h = 1e-7;
        const steepest = Math.max(f.rate(x - h), f.rate(x), f.rate(x + h), 1);
        expect(Math.abs(f.force(x + h) - f.force(x - h))).toBeLessThanOrEqual(4 * h * steepest + 1e-6);
      }),
    );
  });

  it("has a force that is the slope of its energy, and a rate that is the slope of its force", () => {
    fc.assert(
      fc.property(law, at, (f, x) => {
        const h = 2e-5;
        fc.pre(smoothAt(f, x, h));
        // A knot of a table inside the stencil bends the rate: its share of the step is allowed for.
        const bend = h * Math.max(f.rate(x - 3 * h), f.rate(x), f.rate(x + 3 * h), 100);
        expect(Math.abs(slopeOf(f.energy, x, h) - f.force(x))).toBeLessThanOrEqual(
          0.02 * bend + 1e-6 * Math.abs(f.force(x)),
        );
        expect(Math.abs(slopeOf(f.force, x, h) - f.rate(x))).toBeLessThanOrEqual(2e-2 * Math.max(f.rate(x), 100));
      }),
    );
  });

  it("never falls and never goes the wrong way of its direction", () => {
    fc.assert(
      fc.property(law, at, at, (f, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(f.force(high)).toBeGreaterThanOrEqual(f.force(low) - 1e-9 * Math.abs(f.force(low)));
        expect(f.energy(a)).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });

  it("pulled is the mirror image of pushed", () => {
    fc.assert(
      fc.property(curve, at, (base, x) => {
        const pushed = springLaw(base, { acts: "in-compression", gap: 0.001, preload: undefined });
        const pulled = springLaw(reversed(base), { acts: "in-tension", gap: 0.001, preload: undefined });
        if (typeof pushed === "string" || typeof pulled === "string") throw new Error("no law");
        expectClose(pulled.force(-x), -pushed.force(x), IDENTITY, 1e-9);
        expectClose(pulled.energy(-x), pushed.energy(x), IDENTITY, 1e-9);
      }),
    );
  });

  it("finds the deflection that carries a force, or says that there is none", () => {
    fc.assert(
      fc.property(law, fc.double({ min: -3000, max: 3000, noNaN: true }), (f, force) => {
        const x = deflectionAt(f, force);
        if (x === undefined) {
          // Only a spring that never gets there may refuse.
          expect(force > 0 ? f.force(1e6) < force : f.force(-1e6) > force).toBe(true);
        } else expectClose(f.force(x), force, DIFFERENCED, 1e-6);
      }),
    );
  });
});

describe("a table", () => {
  it("stays between its points and goes through them", () => {
    fc.assert(
      fc.property(points, fc.double({ min: 0, max: 1, noNaN: true }), ([x, y], part) => {
        const f = tableCurve(x, y);
        for (const [i, xi] of x.entries()) expectClose(f.force(xi), y[i]!, IDENTITY, 1e-9);
        for (let i = 0; i + 1 < x.length; i++) {
          const force = f.force(x[i]! + part * (x[i + 1]! - x[i]!));
          expect(force).toBeGreaterThanOrEqual(y[i]! - 1e-9 * y[i]!);
          expect(force).toBeLessThanOrEqual(y[i + 1]! * (1 + 1e-9));
        }
      }),
    );
  });
});

describe("a damper's law", () => {
  const half = fc.oneof(
    fc.double({ min: 100, max: 1e4, noNaN: true }).map(constantDamping),
    points.map(([x, y]) => damperTable(x, y)),
    fc
      .tuple(
        fc.double({ min: 1e3, max: 1e4, noNaN: true }),
        fc.double({ min: 0.02, max: 0.2, noNaN: true }),
        fc.double({ min: 100, max: 1e3, noNaN: true }),
      )
      .map(([low, knee, high]) => kneeDamper(low, knee, high)),
  );

  it("passes through the origin, resists motion, and starts with its low-speed damping", () => {
    fc.assert(
      fc.property(half, half, fc.double({ min: 1e-6, max: 1, noNaN: true }), (bump, rebound, v) => {
        const d = damperLaw(bump, rebound);
        expect(d.force(0)).toBe(0);
        expect(d.force(v)).toBeGreaterThan(0);
        expect(d.force(-v)).toBeLessThan(0);
        const h = 1e-9;
        expectClose((d.force(h) - d.force(-h)) / (2 * h), d.lowSpeed, DIFFERENCED);
      }),
    );
  });

  it("reads the first measured point as its low-speed damping", () => {
    const d = damperLaw(damperTable([0.05, 0.1], [320, 470]), damperTable([0.05, 0.1], [410, 690]));
    expectClose(d.lowSpeed, (320 / 0.05 + 410 / 0.05) / 2, IDENTITY);
    expectClose(d.force(0.05), 320, IDENTITY);
    expectClose(d.force(-0.1), -690, IDENTITY);
    // Beyond the last point straight on with its slope.
    expectClose(d.force(0.3) - d.force(0.2), d.force(0.2) - d.force(0.1), IDENTITY);
  });

  it("knee: the peak force of check value DMP-2 (closed form derived there)", () => {
    const d = damperLaw(kneeDamper(6000, 0.05, 1500), kneeDamper(6000, 0.05, 1500));
    expectClose(d.force(0.05), 300, IDENTITY);
    expectClose(d.force(0.2), 525, IDENTITY);
    expectClose(d.force(-0.3), -675, IDENTITY);
  });
});
