/**
 * Dampers, inerters, gas, oil and rocker forms of samples/systems, a second time: closed forms from the numbers in the file
 * (check-values.md, GAS and INR; oil by the volumes that pistons sweep, common practice, no published source).
 */
import { describe, expect, it } from "vitest";
import { expectClose, slopeOf } from "../support/approx.js";
import {
  across,
  both,
  bracket,
  eyes,
  flat,
  heaveRate,
  onLowerTo,
  slope,
  sum,
  toChassis,
  TRACK,
  trimmed,
  twist,
} from "../support/plain-axle.js";
import { rockerAngle, samples } from "../support/samples.js";
import { CLOSED_FORM, DIFFERENCED, ENERGY_DIFFERENCE } from "../support/tolerances.js";
import { elementIn, number } from "../support/written-car.js";
import { frontOf, says } from "./front-of.js";

const G = 79.3e9;
const ATMOSPHERE = 101_325;
const cornerRate = (G * Math.PI * 0.011 ** 4) / 32 / 0.36;
const onCornerBars = (other: (zl: number, zr: number) => number) =>
  trimmed(
    (seat) =>
      sum(
        both((z) => 0.5 * cornerRate * (twist(z) + seat) ** 2),
        other,
      ),
    1,
  );
const third = across(eyes.third, eyes.third);
const thirdMotion = slope((z) => third(z, z));

describe("side-damper.crank", () => {
  const motion = slope(onLowerTo(flat(610, 130), flat(330, 430)));

  it.each([
    // N*s/mm, means of bump and rebound at their lowest speeds.
    ["side-damper", (100 / 25 + 140 / 25) / 2],
    ["side-damper-knee", (4.2 + 6) / 2],
    ["side-damper-bench", (92 / 20 + 134 / 20) / 2],
    // Bump 5 of 16 clicks from closed: 340 N at 50 mm/s less 5/16 of the way to 100 N. Rebound stands two clicks nearer to
    // closed than it was measured: 8 % more.
    ["side-damper-clicks", ((340 - (5 / 16) * 240) / 50 + (145 / 25) * 1.08) / 2],
  ] as const)("%s damps at its leverage from the lower wishbone", (car, slow) => {
    says("side-damper", "between lower-wishbone (0, 610, 130) mm and chassis (0, 330, 430) mm");
    const { rates, element } = frontOf("side-damper", car);
    expectClose(number(element("left.side").rate), slow * 1e3, CLOSED_FORM);
    expectClose(number(element("left.side").motionRatio), motion, ENERGY_DIFFERENCE);
    expectClose(number(rates.heaveDamping), 2 * slow * 1e3 * motion ** 2, ENERGY_DIFFERENCE);
    // Opposed wheels: c t² / 2 of what one wheel feels.
    expectClose(number(rates.rollDamping), (slow * 1e3 * motion ** 2 * TRACK ** 2) / 2, ENERGY_DIFFERENCE);
  });
});

describe("inerters.crank", () => {
  it("adds b times the square of the leverage to the mass at the wheels", () => {
    says("inerters", "inertance 8 kg", "inertance 15 kg", "inertance 0.03 kg*m^2");
    const { element } = frontOf("inerters");
    const single = (name: string): number => element(name).inertance?.single ?? Number.NaN;
    expectClose(single("left.side-inerter"), 8 * slope(toChassis(eyes.side, bracket)) ** 2, ENERGY_DIFFERENCE);
    // The flywheel turns by the sum of both rockers' angles.
    expectClose(element("flywheel").inertance?.heave ?? 0, 0.03 * (2 * slope(twist)) ** 2, ENERGY_DIFFERENCE);
    expectClose(single("flywheel"), 0.03 * slope(twist) ** 2, ENERGY_DIFFERENCE);
    const diagonal = slope((z) => across(eyes.high, eyes.low)(z, -z));
    const inertia = (15 * diagonal ** 2 * TRACK ** 2) / 4;
    expectClose(number(element("roll-inerter").inertance?.roll), inertia, ENERGY_DIFFERENCE);
  });
});

describe("gas-spring.crank", () => {
  const warm = (273.15 + 55) / (273.15 + 15);
  const pressure = (15e5 + ATMOSPHERE) * warm;

  it("is polytropic on what its rod sweeps, the charge being warmed at constant volume", () => {
    says(
      "gas-spring",
      "pressure 15 bar, volume 40 ml, area 707 mm^2, exponent 1.3",
      "charge-temperature 15 degC",
      "working-temperature 55 degC",
    );
    const area = 707e-6;
    const force = (s: number): number => (pressure * (40e-6 / (40e-6 - area * s)) ** 1.3 - ATMOSPHERE) * area;
    const { rates, element } = frontOf("gas-spring");
    expectClose(number(element("third").staticLoad), force(0), CLOSED_FORM);
    expectClose(number(element("third").rate), (1.3 * pressure * area ** 2) / 40e-6, CLOSED_FORM);
    expectClose(number(element("third").fluid?.pressure), pressure - ATMOSPHERE, CLOSED_FORM);
    // Work done on it: the gas's own less the air's.
    const work = (s: number): number => {
      const left = 40e-6 - area * s;
      return ((pressure * 40e-6) / 0.3) * ((40e-6 / left) ** 0.3 - 1) - ATMOSPHERE * area * s;
    };
    expectClose(slopeOf(work, 0, 1e-4), force(0), DIFFERENCED);
    const energy = onCornerBars((zl, zr) => work(third(zl, zr)));
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
  });

  it("gives way where its area falls faster than its pressure rises", () => {
    says(
      "gas-spring",
      "area-curve { 0 mm: 707 mm^2, 10 mm: 640 mm^2, 20 mm: 420 mm^2, 35 mm: 280 mm^2 }",
      "volume 120 ml",
    );
    const { element } = frontOf("gas-spring", "gas-collapsing");
    // dF/ds = n p A² / V + (p − p_air) dA/ds, and no force law of constant area would be as soft.
    const stiff = (1.3 * pressure * 707e-6 ** 2) / 120e-6;
    expect(number(element("third").rate)).toBeLessThan(stiff);
    expectClose(number(element("third").staticLoad), (pressure - ATMOSPHERE) * 707e-6, CLOSED_FORM);
  });
});

describe("hydraulic-link.crank", () => {
  /** Gas of the accumulator in line with the oil of the line, pressure per volume. */
  const inLine = (gas: number, oil: number): number => 1 / (1 / gas + 1 / oil);
  const gasRate = (gauge: number, volume: number): number => (1.3 * (gauge * 1e5 + ATMOSPHERE)) / volume;

  it.each([
    ["hydraulic-link", 25],
    ["pitch-line-stiff", 40],
  ] as const)("%s resists pitch by two volumes, and next to nothing else", (car, bar) => {
    says(
      "hydraulic-link",
      "rear.right.rocker.third, area 500 mm^2",
      "bulk-modulus 1.2 GPa, volume 120 ml",
      "pressure 25 bar, volume 60 ml",
    );
    const stiffness = inLine(gasRate(bar, 60e-6), 1.2e9 / 120e-6);
    // Nose in and tail out by as much: each line's volume takes up both pistons' travel.
    const swept = 500e-6 * 2 * thirdMotion;
    const { car: checked } = frontOf("hydraulic-link", car);
    const link = elementIn(checked.analysis, "pitch-line");
    expectClose(number(link.rate), stiffness, CLOSED_FORM);
    const share = checked.analysis.modal.shares.find(({ path }) => path === "pitch-line");
    expectClose(share?.pitch ?? 0, 2 * stiffness * swept ** 2, ENERGY_DIFFERENCE);
    expect(Math.abs(share?.roll ?? 1)).toBeLessThan(1e-3 * (share?.pitch ?? 0));
    expect(Math.abs(share?.heave ?? 1)).toBeLessThan(1e-2 * (share?.pitch ?? 0));
  });

  it("resists heave by the parallel line: one volume, and its pressure is carried by both thirds", () => {
    says(
      "hydraulic-link",
      "area 250 mm^2",
      "line head to foot parallel",
      "accumulator { pressure 18 bar, volume 50 ml }",
    );
    const { car: checked } = frontOf("hydraulic-link");
    const swept = 250e-6 * 2 * thirdMotion;
    const bend = 2 * 18e5 * 250e-6 * secondOf((z) => third(z, z));
    const share = checked.analysis.modal.shares.find(({ path }) => path === "heave-line");
    expectClose(share?.heave ?? 0, gasRate(18, 50e-6) * swept ** 2 + bend, ENERGY_DIFFERENCE);
  });

  it("resists roll between the sides likewise", () => {
    says(
      "hydraulic-link",
      "cylinder port { between left.rocker.side and chassis (0, 45, 466) mm, area 400 mm^2 }",
      "pressure 20 bar, volume 40 ml",
    );
    const { rates } = frontOf("hydraulic-link");
    const swept = 400e-6 * 2 * slope(toChassis(eyes.side, bracket));
    const share = rates.shares.find(({ path }) => path === "front.roll-line");
    const expected = (2 * gasRate(20, 40e-6) * swept ** 2 * TRACK ** 2) / 4;
    // What its pressures add by the bend of the cylinders' motion cancels but for the chassis end's tilt.
    expectClose(share?.roll ?? 0, expected, 1e-2);
  });
});

const secondOf = (s: (z: number) => number): number => heaveRate((zl) => s(zl));

describe("rocker-forms.crank", () => {
  it("twists the bar in the shared shaft by the difference of both rockers, as kinematics has them", () => {
    expect(samples["systems/rocker-forms.crank"]).toContain("torsion-bar { diameter 10 mm, length 420 mm }");
    const rate = (G * Math.PI * 0.01 ** 4) / 32 / 0.42;
    const { car } = frontOf("rocker-forms");
    const rear = car.analysis.axles.rear;
    if (rear === undefined) throw new Error("no rear axle");
    const bar = elementIn(rear, "rear.shaft-bar");
    expectClose(number(bar.rate), rate, CLOSED_FORM);
    const turn = rockerAngle("systems/rocker-forms.crank", "rear");
    const perTravel = slopeOf(turn, 0, 1e-4);
    expectClose(number(bar.atWheels), rate * (perTravel * 1.44) ** 2, DIFFERENCED);
  });
});

describe("actuator.crank", () => {
  it("is moved as the eyes that it is joined to", () => {
    says("actuator", "between left.rocker.third and right.rocker.third");
    const { sensitivity } = frontOf("actuator").element("platform");
    if ("kind" in sensitivity) throw new Error(sensitivity.reason);
    expectClose(sensitivity.heave, thirdMotion, ENERGY_DIFFERENCE);
  });
});
