/** Springs that work both ways, stages in line, marks, clickers and gas of dampers: closed forms and what every law keeps. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Curve, type Mark, twoWay } from "../../server/elements/laws/curve.js";
import {
  blended,
  constantDamping,
  damperLaw,
  damperTable,
  gasForceAt,
  gasRateAt,
  kneeDamper,
  scaled,
} from "../../server/elements/laws/damper-law.js";
import { kneeCurve, linear } from "../../server/elements/laws/linear.js";
import { powerLaw } from "../../server/elements/laws/power-law.js";
import { inSeries } from "../../server/elements/laws/series.js";
import { springLaw } from "../../server/elements/laws/spring-law.js";
import { tableCurve } from "../../server/elements/laws/table.js";
import { expectClose, slopeOf } from "../support/approx.js";
import { CLOSED_FORM, CONTINUOUS, DIFFERENCED, IDENTITY } from "../support/tolerances.js";

const rate = fc.double({ min: 5e3, max: 2e5, noNaN: true });
const knee = fc.double({ min: 1e-3, max: 0.015, noNaN: true });
const side: fc.Arbitrary<Curve> = fc.oneof(
  rate.map(linear),
  fc
    .tuple(rate, knee, fc.double({ min: 1, max: 5, noNaN: true }))
    .map(([soft, at, more]) => kneeCurve(soft, at, soft * more)),
  fc.tuple(knee, rate, rate).map(([at, a, b]) => tableCurve([at, 2 * at], [a * at, a * at + b * at])),
);
const both = fc.tuple(side, side).map(([squat, rise]) => ({ curve: twoWay(squat, rise), squat, rise }));
const at = fc.double({ min: -0.04, max: 0.04, noNaN: true });

const near = (marks: readonly Mark[] | undefined, x: number, h: number): boolean =>
  Math.abs(x) < 3 * h || (marks ?? []).some((mark) => Math.abs(mark.at - x) < 3 * h);

describe("a spring that works both ways", () => {
  it("is each of its sides, the one pulled being entered positive", () => {
    fc.assert(
      fc.property(both, at, ({ curve, squat, rise }, x) => {
        const expected = x >= 0 ? squat.force(x) : -rise.force(-x);
        expectClose(curve.force(x), expected, IDENTITY, 1e-12);
        expectClose(twoWay(rise, squat).force(-x), -curve.force(x), IDENTITY, 1e-12);
        expectClose(twoWay(rise, squat).energy(-x), curve.energy(x), IDENTITY, 1e-12);
      }),
    );
  });

  it("is continuous, never stores less than nothing, and has the slopes of energy and force", () => {
    fc.assert(
      fc.property(both, at, ({ curve }, x) => {
        const h = 1e-6;
        expect(curve.energy(x)).toBeGreaterThanOrEqual(0);
        expect(Math.abs(curve.force(x + 1e-10) - curve.force(x - 1e-10))).toBeLessThan(
          CONTINUOUS * Math.max(1, Math.abs(curve.force(x))) * 100,
        );
        fc.pre(!near(curve.marks, x, h));
        expectClose(slopeOf(curve.energy, x, h), curve.force(x), DIFFERENCED, 1e-3);
        expectClose(slopeOf(curve.force, x, h), curve.rate(x), 1e-4, 1);
      }),
    );
  });

  it("soft first, then hard, in its own way up and down (own numbers)", () => {
    const third = twoWay(kneeCurve(40e3, 0.006, 110e3), kneeCurve(30e3, 0.004, 80e3));
    expectClose(third.force(0.006), 240, CLOSED_FORM);
    expectClose(third.force(0.01), 240 + 4 * 110, CLOSED_FORM);
    expectClose(third.force(-0.01), -(120 + 6 * 80), CLOSED_FORM);
    expectClose(third.energy(-0.01), 0.5 * 0.004 * 120 + 0.006 * (120 + 240), CLOSED_FORM);
    expect(third.marks).toEqual([
      { at: -0.004, what: "stage" },
      { at: 0.006, what: "stage" },
    ]);
  });

  it("with a gap has play on both sides, with a preload is moved off its middle", () => {
    const third = twoWay(linear(40e3), linear(30e3));
    const loose = springLaw(third, { acts: "both-ways", gap: 0.002, preload: undefined });
    const held = springLaw(third, { acts: "both-ways", gap: undefined, preload: 200 });
    if (typeof loose === "string" || typeof held === "string") throw new Error("no law");
    expect(loose.force(0.0015)).toBe(0);
    expect(loose.force(-0.0015)).toBe(0);
    expectClose(loose.force(-0.005), -90, CLOSED_FORM);
    expectClose(held.force(0), 200, CLOSED_FORM);
    expectClose(held.force(-0.008), -90, CLOSED_FORM);
  });

  it("goes over from the soft to the hard stage as two springs in line do", () => {
    fc.assert(
      fc.property(rate, rate, knee, at, (main, soft, travel, x) => {
        const line = inSeries(linear(main), { rate: soft, travel });
        const [used] = (line.marks ?? []).filter((mark) => mark.at > 0);
        const same = kneeCurve((main * soft) / (main + soft), used?.at ?? 0, main);
        expectClose(used?.at ?? 0, travel + (soft * travel) / main, IDENTITY);
        expectClose(line.force(x), twoWay(same, same).force(x), 1e-9, 1e-9);
      }),
    );
  });
});

describe("marks", () => {
  const law = (curve: Curve, fitting: Partial<Parameters<typeof springLaw>[1]>) => {
    const made = springLaw(curve, { acts: "in-compression", gap: undefined, preload: undefined, ...fitting });
    if (typeof made === "string") throw new Error(made);
    return made.marks ?? [];
  };

  it("tell where a spring begins to carry and where a stage is used up, from design", () => {
    const stacked = inSeries(linear(140e3), { rate: 60e3, travel: 0.003 });
    expect(law(stacked, { gap: 0.002 }).map(({ what }) => what)).toEqual(["free", "stage"]);
    const [free, stage] = law(stacked, { gap: 0.002 });
    expectClose(free?.at ?? 0, 0.002, CLOSED_FORM);
    expectClose(stage?.at ?? 0, 0.002 + 0.003 + 180 / 140e3, CLOSED_FORM);
    const [lets] = law(linear(55e3), { preload: 400 });
    expectClose(lets?.at ?? 0, -400 / 55e3, CLOSED_FORM);
  });

  it("are where the rate jumps, and nowhere else", () => {
    fc.assert(
      fc.property(side, knee, at, (curve, gap, x) => {
        const made = springLaw(curve, { acts: "in-compression", gap, preload: undefined });
        if (typeof made === "string") throw new Error(made);
        const h = 1e-9;
        const jumps = Math.abs(made.rate(x + h) - made.rate(x - h)) > 1;
        expect(!jumps || near(made.marks, x, 1e-8)).toBe(true);
        for (const mark of made.marks ?? []) {
          if (mark.what === "table-end") continue;
          expect(Math.abs(made.rate(mark.at + 1e-9) - made.rate(mark.at - 1e-9))).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });
});

describe("bump stops BST-1 (own numbers, in check values)", () => {
  it("a cubic by its points, a power law by its formula", () => {
    const cubic = (x: number): number => 30 * x + 0.09 * x ** 3;
    const steps = Array.from({ length: 41 }, (_, i) => i / 2);
    const stop = tableCurve(
      steps.map((x) => x / 1000),
      steps.map(cubic),
    );
    for (const [x, force] of [
      [5, 161.25],
      [10, 390],
      [15, 753.75],
      [20, 1320],
    ] as const) {
      expectClose(stop.force(x / 1000), force, CLOSED_FORM);
    }
    // Stored energy 15 x² + 0.0225 x⁴ N·mm, to what a table of half millimetres knows of it.
    expectClose(stop.energy(0.02), (15 * 20 ** 2 + 0.0225 * 20 ** 4) / 1000, 1e-4);
    expectClose(powerLaw(1500, 0.012, 2).force(0.006), 375, CLOSED_FORM);
  });
});

describe("a damper with a clicker", () => {
  const closed = damperTable([0.05, 0.1, 0.2], [500, 760, 1100]);
  const open = damperTable([0.05, 0.1, 0.2], [140, 240, 380]);
  const speed = fc.double({ min: 1e-4, max: 0.4, noNaN: true });

  it("stands between its settings, at both ends on them", () => {
    fc.assert(
      fc.property(speed, fc.double({ min: 0, max: 1, noNaN: true }), (v, share) => {
        const half = blended(closed, open, share);
        expectClose(half.force(v), closed.force(v) + share * (open.force(v) - closed.force(v)), IDENTITY);
        expectClose(half.slope(v), closed.slope(v) + share * (open.slope(v) - closed.slope(v)), IDENTITY, 1e-9);
        expectClose(blended(closed, open, 0).force(v), closed.force(v), IDENTITY);
        expectClose(blended(closed, open, 1).force(v), open.force(v), IDENTITY);
        expectClose(scaled(closed, 1.2).force(v), 1.2 * closed.force(v), IDENTITY);
      }),
    );
  });

  it("marks knees and the ends of tables, rebound at negative speeds", () => {
    const law = damperLaw(kneeDamper(6000, 0.05, 1500), damperTable([0.05, 0.1], [410, 690]));
    expect(law.marks).toEqual([
      { at: -0.1, what: "table-end" },
      { at: 0.05, what: "knee" },
    ]);
  });
});

describe("a damper's own gas", () => {
  it("grows with compression and never pulls", () => {
    const law = damperLaw(constantDamping(1000), constantDamping(1000), { force: 120, rate: 2000 });
    expectClose(gasForceAt(law, 0), 120, CLOSED_FORM);
    expectClose(gasForceAt(law, 0.02), 160, CLOSED_FORM);
    expect(gasRateAt(law, 0.02)).toBe(2000);
    expect(gasForceAt(law, -0.08)).toBe(0);
    expect(gasRateAt(law, -0.08)).toBe(0);
    fc.assert(
      fc.property(at, (s) =>
        expectClose(
          slopeOf((x) => gasForceAt(law, x), s, 1e-5),
          gasRateAt(law, s),
          1e-6,
          1e-3,
        ),
      ),
    );
  });
});
