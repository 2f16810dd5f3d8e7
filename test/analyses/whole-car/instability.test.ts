import { describe, expect, it } from "vitest";
import type { WholeCar } from "../../../server/analyses/whole-car/car-data.js";
import { onsetOfInstability } from "../../../server/analyses/whole-car/instability.js";
import { expectClose } from "../../support/approx.js";
import { car7 } from "../../support/whole-car.js";

/** Downforce areas that grow by `slope` m² for each metre that the axle drops, at a speed. */
const flying =
  (slope: number, lag?: number) =>
  (speed: number): WholeCar => {
    const stiffness = -(1.225 / 2) * speed * speed * slope;
    return {
      ...car7,
      air: {
        slopes: [
          [stiffness, 0],
          [0, stiffness],
        ],
        ...(lag === undefined ? {} : { lag }),
      },
    };
  };

const range = { from: 0, to: 200, steps: 20, width: 1e-6 };

describe("the speed at which a car becomes unstable", () => {
  it("is where the air takes all of the softer end's ride rate: v = √(2k/(ρ slope)) (AERO-2)", () => {
    const rate = (2 * 30e3 * 220e3) / 250e3;
    const onset = onsetOfInstability(flying(18), range);
    if (onset.kind !== "static-divergence") throw new Error(onset.kind);
    expectClose(onset.speed, Math.sqrt((2 * rate) / (1.225 * 18)), 1e-6);
  });

  it("is told apart from a growing swing, with what swings", () => {
    const onset = onsetOfInstability(flying(-200, 0.05), range);
    if (onset.kind !== "growing-oscillation") throw new Error(onset.kind);
    expect(["heave", "pitch"]).toContain(onset.mode.name);
    expect(onset.speed).toBeGreaterThan(10);
    const just = onsetOfInstability(flying(-200, 0.05), { ...range, to: onset.speed - 1e-3 });
    expect(just).toEqual({ kind: "stable", to: onset.speed - 1e-3 });
  });

  it("is not there without the lag, nor within the speeds of a stable car", () => {
    expect(onsetOfInstability(flying(-200), range)).toEqual({ kind: "stable", to: 200 });
    expect(onsetOfInstability(() => car7, range)).toEqual({ kind: "stable", to: 200 });
  });

  it("is told apart from a speed without equilibrium", () => {
    const onset = onsetOfInstability((speed) => (speed < 61 ? car7 : undefined), range);
    if (onset.kind !== "no-equilibrium") throw new Error(onset.kind);
    expectClose(onset.speed, 61, 1e-6);
  });
});
