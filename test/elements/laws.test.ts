/** Force laws against published values and closed forms. */
import { describe, it } from "vitest";
import { antiRollBarRate, bladeAngle, bladeInertia } from "../../server/elements/laws/anti-roll-bar.js";
import { coilRate } from "../../server/elements/laws/coil.js";
import { linear } from "../../server/elements/laws/linear.js";
import { inSeries, twoInSeries } from "../../server/elements/laws/series.js";
import { springLaw } from "../../server/elements/laws/spring-law.js";
import { torsionBarRate } from "../../server/elements/laws/torsion-bar.js";
import { expectClose } from "../support/approx.js";
import { BOOK_ROUNDING, CLOSED_FORM, PRINTED_SIX } from "../support/tolerances.js";

const INCH = 0.0254;
const POUND_FORCE = 4.4482216152605;
const DEGREE = Math.PI / 180;

describe("coil spring from its wire", () => {
  it("meets Budynas & Nisbett, Shigley's Mechanical Engineering Design, Example 10-1 (value from memory)", () => {
    const psi = POUND_FORCE / INCH ** 2;
    const coil = { wire: 0.037 * INCH, mean: 0.4005 * INCH, turns: 10.5, shearModulus: 11.85e6 * psi };
    const rate = coilRate(coil) / (POUND_FORCE / INCH);
    expectClose(rate, 4.11564966428, CLOSED_FORM);
    expectClose(rate, 4.13, BOOK_ROUNDING);
  });

  it("meets Bhandari, Design of Machine Elements, Example 10.1 (published)", () => {
    const rate = coilRate({ wire: 0.007, mean: 0.042, turns: 8, shearModulus: 81370e6 });
    expectClose(rate, 41202.9803241, PRINTED_SIX);
    expectClose(1250 / rate, 0.0303376112642, PRINTED_SIX);
  });

  it("meets the EN 13906-1 form (formula from memory, own numbers)", () => {
    expectClose(coilRate({ wire: 0.012, mean: 0.062, turns: 5, shearModulus: 79500e6 }), 172924.708805, CLOSED_FORM);
  });
});

describe("torsion bar from its diameters (DIN 2091, formula from memory, own numbers)", () => {
  it("solid", () => {
    const rate = torsionBarRate({ diameter: 0.024, bore: 0, length: 0.8, shearModulus: 78500e6 });
    expectClose(rate, 3196.13070206, CLOSED_FORM);
    expectClose(rate * DEGREE, 55.783004075, CLOSED_FORM);
  });

  it("bored", () => {
    expectClose(
      torsionBarRate({ diameter: 0.03, bore: 0.022, length: 0.8, shearModulus: 78500e6 }),
      5546.37187417,
      CLOSED_FORM,
    );
  });
});

describe("anti-roll bar (beam theory, formula structure from memory, own numbers)", () => {
  const arm = 0.12;
  const bar = torsionBarRate({ diameter: 0.022, bore: 0.016, length: 0.7, shearModulus: 79300e6 });
  const blade = (angle: number) => ({ section: [0.008, 0.03] as const, length: arm, modulus: 206e9, angle });
  /** Force per tip for +d and −d at the tips, of a rate against relative twist. */
  const tip = (rate: number): number => (2 * rate) / arm ** 2;

  it("bar alone", () => {
    expectClose(bar, 1876.469926, CLOSED_FORM);
    expectClose(tip(antiRollBarRate(bar, [arm, arm], undefined)), 260620.823055, CLOSED_FORM);
  });

  it("with levers on edge and lying flat", () => {
    expectClose(antiRollBarRate(bar, [arm, arm], blade(90 * DEGREE)), 1803.45733792, CLOSED_FORM);
    expectClose(tip(antiRollBarRate(bar, [arm, arm], blade(90 * DEGREE))), 250480.185822, CLOSED_FORM);
    expectClose(antiRollBarRate(bar, [arm, arm], blade(0)), 1195.72369962, CLOSED_FORM);
    expectClose(tip(antiRollBarRate(bar, [arm, arm], blade(0))), 166072.736058, CLOSED_FORM);
  });

  it("turns a blade from its soft to its stiff inertia", () => {
    expectClose(bladeInertia(blade(bladeAngle(5, 5, 0, 90 * DEGREE))), 18000e-12, CLOSED_FORM, 0);
    expectClose(bladeInertia(blade(bladeAngle(1, 5, 0, 90 * DEGREE))), 1280e-12, CLOSED_FORM, 0);
    const half = bladeInertia(blade(bladeAngle(3, 5, 0, 90 * DEGREE)));
    expectClose(1 / half, 0.5 / 18000e-12 + 0.5 / 1280e-12, CLOSED_FORM);
  });

  it("is twice as soft at one wheel as a bar is at both: the factor between tip and relative rate", () => {
    // K_φ = ½ k_tip MR² t² = k_rel MR² t²; single wheel k_rel MR² (check values ARB-3, own numbers).
    const tipRate = tip(antiRollBarRate(bar, [arm, arm], blade(90 * DEGREE)));
    const [ratio, track] = [0.55, 1.56];
    expectClose(0.5 * tipRate * ratio ** 2 * track ** 2, 92197.2477578, CLOSED_FORM);
    expectClose((tipRate / 2) * ratio ** 2, 37885.1281056, CLOSED_FORM);
  });
});

describe("springs together", () => {
  it("60 and 140 N/mm make 42 N/mm in series (own numbers)", () => {
    expectClose(inSeries(linear(140e3), { rate: 60e3, travel: Infinity }).rate(0.01), 42e3, CLOSED_FORM);
    expectClose(twoInSeries(linear(84e3)).rate(0.01), 42e3, CLOSED_FORM);
  });

  it("dual rate: the main spring alone once the stage is used up", () => {
    const dual = inSeries(linear(140e3), { rate: 60e3, travel: 0.003 });
    // The stage is used up at 180 N, when both together have moved by 3 mm + 180/140 mm.
    const knee = 0.003 + 180 / 140e3;
    expectClose(dual.force(knee), 180, CLOSED_FORM);
    expectClose(dual.force(knee + 0.001), 320, CLOSED_FORM);
    expectClose(dual.rate(knee - 1e-6), 42e3, CLOSED_FORM);
    expectClose(dual.rate(knee + 1e-6), 140e3, CLOSED_FORM);
    expectClose(dual.force(-knee - 0.001), -320, CLOSED_FORM);
  });

  it("meets Bhandari, Design of Machine Elements, Example 10.19: the inner spring engages after a gap (published)", () => {
    const outer = coilRate({ wire: 0.006, mean: 0.036, turns: 10, shearModulus: 81370e6 });
    const inner = coilRate({ wire: 0.005, mean: 0.03, turns: 8, shearModulus: 81370e6 });
    const first = springLaw(linear(outer), { acts: "in-compression", gap: undefined, preload: undefined });
    const late = springLaw(linear(inner), { acts: "in-compression", gap: 0.015, preload: undefined });
    if (typeof first === "string" || typeof late === "string") throw new Error("no law");
    const s = 0.0249888390898;
    expectClose(first.force(s), 706.021471088, PRINTED_SIX);
    expectClose(late.force(s), 293.978528912, PRINTED_SIX);
    expectClose(first.force(s) + late.force(s), 1000, PRINTED_SIX);
  });
});

describe("preload", () => {
  it("leaves the rate alone and sets the force at design (own numbers)", () => {
    const law = springLaw(linear(50e3), { acts: "in-compression", gap: undefined, preload: 600 });
    if (typeof law === "string") throw new Error(law);
    expectClose(law.force(0), 600, CLOSED_FORM);
    expectClose(law.rate(0), 50e3, CLOSED_FORM);
    // 3000 N at the wheel through a ratio of 0.7: 73.714… mm off the stop.
    expectClose(law.force(0.0737142857143), 4285.71428571, CLOSED_FORM);
    expectClose(law.force(-0.02), 0, CLOSED_FORM);
  });

  it("cannot hold together with a gap", () => {
    expectLaw("gap-and-preload", springLaw(linear(1), { acts: "both-ways", gap: 0.001, preload: 5 }));
  });
});

function expectLaw(reason: string, law: unknown): void {
  if (law !== reason) throw new Error(`expected ${reason}, got ${JSON.stringify(law)}`);
}
