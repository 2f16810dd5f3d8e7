/** Dampers on a random road against the closed form of a knee. */
import { describe, expect, it } from "vitest";
import { carRide } from "../../../server/analyses/whole-car/car-ride.js";
import { dampingOnRoad } from "../../../server/analyses/whole-car/statistical.js";
import { assembleLoadedCar } from "../../../server/assemble/loaded-car.js";
import { rideNumbersOf } from "../../../server/assemble/ride.js";
import type { DamperLaw } from "../../../server/elements/element.js";
import { expectClose } from "../../support/approx.js";
import { quill } from "../../support/quill.js";
import { ROAD_SHOWN } from "../../support/tolerances.js";

/** c₁ up to the knee on either side, c₂ beyond it. */
const knee = (c1: number, at: number, c2: number): DamperLaw => ({
  kind: "damper",
  force: (v) => Math.sign(v) * (Math.abs(v) < at ? c1 * Math.abs(v) : c1 * at + c2 * (Math.abs(v) - at)),
  damping: (v) => (Math.abs(v) < at ? c1 : c2),
  lowSpeed: c1,
  gasForce: 0,
  marks: [
    { at: -at, what: "knee" },
    { at, what: "knee" },
  ],
});

describe("the damping of a knee", () => {
  it.each([
    // erf of 1/√2, 1/(2√2) and 3/√2, from tables of the normal distribution.
    [0.05, 0.6826894921370859],
    [0.1, 0.3829249225480262],
    [0.05 / 3, 0.9973002039367398],
  ])("at an RMS speed of %d m/s is c₂ + (c₁ − c₂) erf(v/(σ√2))", (sigma, erf) => {
    expectClose(dampingOnRoad(knee(6000, 0.05, 1500), sigma), 1500 + 4500 * erf, ROAD_SHOWN);
  });

  it("is the low-speed damping where nothing moves", () => {
    expect(dampingOnRoad(knee(6000, 0.05, 1500), 0)).toBe(6000);
    expect(dampingOnRoad(knee(6000, 0.05, 1500), Number.NaN)).toBe(6000);
  });
});

describe("a car with digressive dampers", () => {
  const car = quill();
  const ride = carRide(() => assembleLoadedCar(car), [], rideNumbersOf(car));

  it("grows by more than the roughness, as its dampers give way", () => {
    const loads = ["A", "C"].map((letter) => {
      const found = ride.road(undefined, { class: letter, speed: 30, sides: "isotropic" });
      if (found.kind !== "road-response") throw new Error(found.reason);
      return found.front.platform;
    });
    // Four times as rough: linear dampers would give exactly four times.
    expect(loads[1]! / loads[0]!).toBeGreaterThan(4.01);
  });
});
