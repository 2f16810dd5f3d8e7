/**
 * Springs that carry an axle together, against an energy of the test's own that is differenced: one trim for two springs, a
 * heave spring with its stop, left and right unlike. Laws as in check-values.md, TB, PRE and BST [own numbers].
 */
import { describe, expect, it } from "vitest";
import { contextOf } from "../support/context.js";
import { expectClose } from "../support/approx.js";
import {
  across,
  both,
  type Energy,
  eyes,
  heaveRate,
  leftWheelRate,
  rollStiffness,
  seatFor,
  slope,
  SPRUNG_WEIGHT,
  sum,
  TRACK,
  twist,
  weightAt,
} from "../support/plain-axle.js";
import { ENERGY_DIFFERENCE, IDENTITY } from "../support/tolerances.js";
import { elementIn, number } from "../support/written-car.js";
import { cornerBar, onOneAxle } from "./planar-car.js";

const barRate = (diameter: number): number => (79.3e9 * Math.PI * diameter ** 4) / 32 / 0.36;
const third = across(eyes.third, eyes.third);

/** The front axle of the last car or set-up in the text. */
function frontOf(text: string) {
  const front = contextOf({ "car.crank": text }, "car.crank").cars.at(-1)?.analysis.axles.front;
  if (front === undefined) throw new Error("no front axle");
  return front;
}

describe("a corner spring and a heave spring with one trim", () => {
  const text = onOneAxle(`${cornerBar}
    spring third for heave {
      rate 60 N/mm
      preload 450 N
      acts in-compression
      between left.rocker.third and right.rocker.third
    }`);
  const rate = barRate(0.011);
  const carried = (seat: number): Energy =>
    sum(
      both((z) => 0.5 * rate * (twist(z) + seat) ** 2),
      (zl, zr) => 450 * third(zl, zr) + 0.5 * 60e3 * third(zl, zr) ** 2,
    );
  const seat = seatFor(carried, 1);

  it("turns the corner springs' seats by what the heave spring leaves to them", () => {
    const { trim } = frontOf(text).rates;
    if ("kind" in trim) throw new Error(trim.reason);
    expect(trim.map(({ path }) => path)).toEqual(["front.left.corner-bar", "front.right.corner-bar"]);
    const left = (SPRUNG_WEIGHT - 450 * slope((z) => third(z, z))) / 2 / slope(twist);
    for (const one of trim) {
      expectClose(one.seat, seat, ENERGY_DIFFERENCE);
      expectClose(one.load, left, ENERGY_DIFFERENCE);
    }
  });

  it("has the rates of both, each load's own term included", () => {
    const { rates } = frontOf(text);
    const energy = carried(seat);
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.rollStiffness), rollStiffness(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.wheelRate.left), leftWheelRate(energy), ENERGY_DIFFERENCE);
    const shares = rates.shares.reduce((all, { heave }) => all + heave, 0);
    expectClose(shares, number(rates.heaveRate), IDENTITY);
  });
});

describe("a heave spring and a heave stop", () => {
  const elements = `${cornerBar}
    spring third for heave {
      rate 60 N/mm
      preload 450 N
      acts in-compression
      between left.rocker.third and right.rocker.third
    }
    bump-stop stop for heave {
      gap 12 mm
      packer 2 mm
      power-law { force 1500 N, deflection 10 mm, exponent 2.5 }
      between left.rocker.third and right.rocker.third
    }`;
  const rate = barRate(0.011);
  /** ∫ F of 1500 N · (s / 10 mm)^2.5 beyond the gap. */
  const stop: Energy = (zl, zr) => ((1500 * 0.01) / 3.5) * (Math.max(0, third(zl, zr) - 0.01) / 0.01) ** 3.5;
  const carried = (seat: number): Energy =>
    sum(
      both((z) => 0.5 * rate * (twist(z) + seat) ** 2),
      (zl, zr) => 450 * third(zl, zr) + 0.5 * 60e3 * third(zl, zr) ** 2,
      stop,
    );

  it("is the spring alone until the stop is met", () => {
    const { rates } = frontOf(onOneAxle(elements));
    expectClose(number(rates.heaveRate), heaveRate(carried(seatFor(carried, 1))), ENERGY_DIFFERENCE);
    expect(rates.shares.find(({ path }) => path === "front.stop")?.heave).toBe(0);
  });

  it.each([12, 15])("has the rates of both with the car put %d mm lower", (lower) => {
    const text = onOneAxle(elements, `setup low from tried {\n  front.ride-height by -${lower} mm\n}\n`);
    const z0 = lower / 1000;
    const from =
      (energy: Energy): Energy =>
      (zl, zr) =>
        energy(z0 + zl, z0 + zr);
    const seat = seatFor((tried) => from(carried(tried)), 1, weightAt(z0));
    const { rates } = frontOf(text);
    expectClose(number(rates.heaveRate), heaveRate(from(carried(seat))), ENERGY_DIFFERENCE);
    expectClose(number(rates.rollStiffness), rollStiffness(from(carried(seat))), ENERGY_DIFFERENCE);
    expect(rates.shares.find(({ path }) => path === "front.stop")?.heave).toBeGreaterThan(20e3);
  });
});

describe("a heave spring that only pushes, set to begin at design", () => {
  it("carries at rest: a kink counts towards more compression", () => {
    const text = onOneAxle(`${cornerBar}
    spring third for heave {
      rate 60 N/mm
      acts in-compression
      between left.rocker.third and right.rocker.third
    }`);
    const rate = barRate(0.011);
    const carried = (seat: number): Energy =>
      sum(
        both((z) => 0.5 * rate * (twist(z) + seat) ** 2),
        (zl, zr) => 0.5 * 60e3 * third(zl, zr) ** 2,
      );
    expectClose(number(frontOf(text).rates.heaveRate), heaveRate(carried(seatFor(carried, 1))), ENERGY_DIFFERENCE);
  });
});

describe("left and right unlike", () => {
  const text = onOneAxle(
    `${cornerBar}
    damper side for corner {
      damping 3 N*s/mm
      between rocker.side and chassis (0, 45, 466) mm
    }`,
    `setup uneven from tried {
  front.right.corner-bar.torsion-bar.diameter 12 mm
  front.left.side.damping by +1 N*s/mm
}
`,
  );
  const half = (rate: number): ((z: number) => number) => {
    const seat = seatFor((tried) => both((z) => 0.5 * rate * (twist(z) + tried) ** 2), 1);
    return (z) => 0.5 * rate * (twist(z) + seat) ** 2;
  };
  const [left, right] = [half(barRate(0.011)), half(barRate(0.012))];
  const energy: Energy = (zl, zr) => left(zl) + right(zr);

  it("has a rate of its own at each wheel, and what couples heave with roll", () => {
    const { rates } = frontOf(text);
    const { stiffness } = rates;
    if ("kind" in stiffness) throw new Error(stiffness.reason);
    const rightRate = leftWheelRate((zl, zr) => energy(zr, zl));
    expectClose(number(rates.wheelRate.left), leftWheelRate(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.wheelRate.right), rightRate, ENERGY_DIFFERENCE);
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.rollStiffness), rollStiffness(energy), ENERGY_DIFFERENCE);
    expectClose(stiffness[0][0] - stiffness[1][1], leftWheelRate(energy) - rightRate, ENERGY_DIFFERENCE);
    // Two wheels that nothing joins.
    expectClose(number(rates.rollStiffness), (number(rates.heaveRate) * TRACK ** 2) / 4, ENERGY_DIFFERENCE);
  });

  it("damps each wheel by its own damper", () => {
    const { rates } = frontOf(text);
    const { damping } = rates;
    if ("kind" in damping) throw new Error(damping.reason);
    const motion = number(elementIn(frontOf(text), "front.left.side").motionRatio);
    expectClose(damping[0][0], 4e3 * motion ** 2, IDENTITY);
    expectClose(damping[1][1], 3e3 * motion ** 2, IDENTITY);
  });
});
