/** Dampers on a random road against the closed form of a knee. */
import { describe, expect, it } from "vitest";
import { carRide } from "../../../server/analyses/whole-car/car-ride.js";
import { damperOnRoad, springOnRoad } from "../../../server/analyses/whole-car/statistical.js";
import { assembleLoadedCar } from "../../../server/assemble/loaded-car.js";
import { rideNumbersOf } from "../../../server/assemble/ride.js";
import { byRatios, constantRatio } from "../../../server/elements/connections/ratio.js";
import type { DamperLaw, SpringLaw } from "../../../server/elements/element.js";
import { expectClose } from "../../support/approx.js";
import { element } from "../../support/mechanisms.js";
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
    expectClose(damperOnRoad(knee(6000, 0.05, 1500), sigma).slope, 1500 + 4500 * erf, ROAD_SHOWN);
  });

  it("is the low-speed damping where nothing moves", () => {
    expect(damperOnRoad(knee(6000, 0.05, 1500), 0).slope).toBe(6000);
    expect(damperOnRoad(knee(6000, 0.05, 1500), Number.NaN).slope).toBe(6000);
  });
});

describe("a damper firmer in rebound", () => {
  it("has the mean of both slopes, and a mean force that pulls the car down: (c₁ − c₂) σ/√(2π)", () => {
    const law = { ...knee(0, 1, 0), force: (v: number) => v * (v > 0 ? 2000 : 5000), marks: [] };
    const { mean, slope } = damperOnRoad(law, 0.1);
    expectClose(slope, 3500, ROAD_SHOWN);
    expectClose(mean, (-3000 * 0.1) / Math.sqrt(2 * Math.PI), ROAD_SHOWN);
  });
});

describe("a stop behind a gap", () => {
  const [rate, gap, sigma] = [200e3, 0.004, 0.004];
  const law: SpringLaw = {
    kind: "spring",
    force: (s) => rate * Math.max(0, s - gap),
    rate: (s) => (s < gap ? 0 : rate),
    energy: (s) => (rate * Math.max(0, s - gap) ** 2) / 2,
    constantRate: undefined,
    range: undefined,
    stated: true,
    marks: [{ at: gap, what: "free" }],
  };
  const connection = byRatios({ corner: constantRatio(1) }, false, "left");
  const carrier = {
    element: element("stop", connection, law, { side: "left", for: ["corner"] }),
    seat: 0,
    hold: undefined,
    axle: 0,
    connection,
  } as const;

  it("one standard deviation away is there for the share of time that it is met: k (1 − Φ(1)), from tables", () => {
    const { mean, slope } = springOnRoad(carrier, 0, sigma);
    expectClose(slope, rate * 0.15865525393145707, ROAD_SHOWN);
    // σ φ(1) − g (1 − Φ(1)).
    expectClose(mean, rate * (sigma * 0.24197072451914337 - gap * 0.15865525393145707), ROAD_SHOWN);
  });

  it("is met more the nearer the mean stands to it", () => {
    expectClose(springOnRoad(carrier, gap, sigma).slope, rate / 2, ROAD_SHOWN);
    expect(springOnRoad(carrier, 0, 0)).toEqual({ mean: 0, slope: 0 });
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
