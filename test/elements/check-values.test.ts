/** Laws held to values from outside: a second spring that engages late, and the energy of a knee damper over a cycle. */
import { describe, expect, it } from "vitest";
import { coilRate, wahlFactor } from "../../server/elements/laws/coil.js";
import { constantDamping, damperLaw, kneeDamper } from "../../server/elements/laws/damper-law.js";
import { linear } from "../../server/elements/laws/linear.js";
import { springLaw } from "../../server/elements/laws/spring-law.js";

const G = 81_370e6;
const PUBLISHED = 1e-6;
const expectWithin = (actual: number, wanted: number, share: number): void =>
  expect(Math.abs(actual / wanted - 1)).toBeLessThan(share);

describe("nested springs with a gap, STK-2 (Bhandari, Design of Machine Elements, example 10.19, published)", () => {
  const outer = coilRate({ wire: 0.006, mean: 0.036, turns: 10, shearModulus: G });
  const inner = coilRate({ wire: 0.005, mean: 0.03, turns: 8, shearModulus: G });
  const late = springLaw(linear(inner), { acts: "in-compression", gap: 0.015, preload: undefined });
  if (typeof late === "string") throw new Error(late);
  const deflection = 24.9888390898e-3;

  it("has the rates of both wires", () => {
    expectWithin(outer, 28.2534722222e3, PUBLISHED);
    expectWithin(inner, 29.4307002315e3, PUBLISHED);
  });

  it("shares 1000 N where the inner one has been engaged for 10 mm", () => {
    expectWithin(outer * deflection, 706.021471088, PUBLISHED);
    expectWithin(late.force(deflection), 293.978528912, PUBLISHED);
    expect(late.force(0.0149)).toBe(0);
  });

  it("stresses the wires as published, with Wahl's factor", () => {
    const stress = (force: number, wire: number, mean: number): number =>
      (wahlFactor({ wire, mean }) * 8 * force * mean) / (Math.PI * wire ** 3);
    expectWithin(stress(outer * deflection, 0.006, 0.036), 375.305135556e6, PUBLISHED);
    expectWithin(stress(late.force(deflection), 0.005, 0.03), 225.032219094e6, PUBLISHED);
  });
});

describe("a knee damper, DMP-2 (equivalent viscous damping, published; closed form derived)", () => {
  const law = damperLaw(kneeDamper(6000, 0.05, 1500), kneeDamper(6000, 0.05, 1500), undefined);

  /** ∮F dx over x = X sin ωt, the trapezium rule on a periodic function. */
  function energyOf(amplitude: number, frequency: number): number {
    const steps = 20_000;
    const peak = amplitude * frequency;
    const sum = Array.from({ length: steps }, (_, i) => peak * Math.cos((2 * Math.PI * i) / steps)).reduce(
      (total, v) => total + law.force(v) * v,
      0,
    );
    return ((sum / steps) * 2 * Math.PI) / frequency;
  }

  it.each([
    [0.005, 10, 4.71238898038, 300],
    [0.02, 10, 36.6602576356, 525],
    [0.01, 30, 23.0953249174, 675],
  ])("takes its energy over a cycle of %d m at %d rad/s", (amplitude, frequency, energy, peak) => {
    expectWithin(energyOf(amplitude, frequency), energy, PUBLISHED);
    expectWithin(law.force(amplitude * frequency), peak, PUBLISHED);
  });

  it("is the plain damper below its knee", () => {
    const plain = damperLaw(constantDamping(6000), constantDamping(6000), undefined);
    expect(law.force(0.04)).toBeCloseTo(plain.force(0.04), 9);
  });
});
