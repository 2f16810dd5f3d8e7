/** Sweeps over speed and lateral acceleration: where they end, what begins on the way, and the unstable branch. */
import { describe, expect, it } from "vitest";
import { carCases, solveCase } from "../../../server/analyses/equilibrium/car-cases.js";
import type { Sweep, SweepQuestion } from "../../../server/analyses/equilibrium/results.js";
import { assembleLoadedCar, loadCaseOf } from "../../../server/assemble/loaded-car.js";
import type { Air } from "../../../server/elements/air.js";
import { AT_REST, type CarUnderLoad, type LoadCase } from "../../../server/elements/loaded-car.js";
import { monotoneSurface } from "../../../server/maths/monotone-surface.js";
import { expectClose } from "../../support/approx.js";
import { plainCar, readyFor } from "../../support/loaded-car.js";
import { quill } from "../../support/quill.js";
import { number } from "../../support/written-car.js";

function sweep(car: CarUnderLoad, question: Partial<SweepQuestion>, cases: readonly LoadCase[] = []): Sweep {
  const found = carCases(() => car, cases).sweep({ over: "speed", from: undefined, to: 60, steps: 12, ...question });
  if (found.kind === "absent") throw new Error(found.reason);
  return found;
}

const car = quill();
const loaded = assembleLoadedCar(car);

describe("lateral sweep", () => {
  const found = sweep(loaded, { over: "lateral", to: 40, steps: 20 });

  it("goes on until the first wheel lifts, and ends just there", () => {
    expect(found.end?.why).toMatch(/wheel lifts$/);
    const last = found.points.at(-1)!;
    expect(last.value).toBe(found.end?.value);
    const inner = Math.min(...last.figures.wheels.map(({ load }) => load));
    expect(inner).toBeGreaterThanOrEqual(0);
    expect(inner).toBeLessThan(1);
    expect(found.events.at(-1)).toMatchObject({ what: "wheel-lifts", value: expect.closeTo(last.value, 5) });
    // A rigid car lifts its inner wheels at g t/(2h); a share of the roll stiffness apart from that of the mass is earlier.
    expect(last.value).toBeLessThan((9.80665 * 1.46) / (2 * 0.285));
    expect(last.value).toBeGreaterThan(0.6 * ((9.80665 * 1.46) / (2 * 0.285)));
  });

  it("rolls in proportion while nothing changes over, and each point is the case by itself", () => {
    const [, first, second] = found.points;
    expectClose(second!.figures.roll / first!.figures.roll, 2, 0.02);
    const alone = solveCase(readyFor(loaded), { ...AT_REST, name: "alone", lateral: second!.value });
    if (alone.kind !== "equilibrium") throw new Error(alone.kind);
    expect(alone.roll).toBe(second!.figures.roll);
  });
});

describe("speed sweep", () => {
  it("of the Quill sinks all the way, at the speeds that were asked for", () => {
    const found = sweep(loaded, { to: 55, steps: 11 });
    expect(found.end).toBeUndefined();
    expect(found.points.map(({ value }) => Math.round(value))).toEqual([0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55]);
    const heights = found.points.map(({ figures }) => number(figures.front.rideHeight));
    for (const [i, height] of heights.slice(1).entries()) expect(height).toBeLessThan(heights[i]!);
    const top = car.cases.find(({ name }) => name === "top-speed")!;
    const alone = solveCase(readyFor(loaded), loadCaseOf(top));
    const near = sweep(loaded, { to: 195 / 3.6, steps: 3 }).points.at(-1)!;
    if (alone.kind !== "equilibrium") throw new Error(alone.kind);
    expectClose(number(near.figures.front.rideHeight), number(alone.front.rideHeight), 1e-9);
  });

  /** Half a car on 100 kN/m whose downforce grows the more the lower it stands. */
  const sinking = (front: Air["front"]): CarUnderLoad =>
    plainCar(
      {
        mass: 600,
        massFront: 0.5,
        cgHeight: 0,
        front: { track: 1.5, x: 0, wheelRate: 60e3, tyreRate: 300e3, unsprung: 0, wheelHeight: 0.3, rideHeight: 0.05 },
        rear: {
          track: 1.5,
          x: -2.7,
          wheelRate: 60e3,
          tyreRate: 300e3,
          unsprung: 0,
          wheelHeight: 0.3,
          rideHeight: 0.05,
        },
      },
      {
        air: {
          front,
          rear: { kind: "slopes", area: 0, byFront: 0, byRear: 0, at: [0.05, 0.05] },
          drag: undefined,
          lag: undefined,
        },
      },
    );
  const heights = Array.from({ length: 26 }, (_, i) => 0.001 + (i * 0.069) / 25);
  const exponential = (c0: number, decay: number): Air["front"] => {
    const row = heights.map((h) => c0 * Math.exp((0.05 - h) / decay));
    return { kind: "table", surface: monotoneSurface(heights, [0.02, 0.08], [row, row]) };
  };

  it("names the fold where stable and unstable branch meet: k δ = q c₀ e^(d/δ) at d = δ, q = k δ/(e c₀)", () => {
    const [c0, decay, k] = [2, 0.012, 100e3];
    const found = sweep(sinking(exponential(c0, decay)), { to: 60, steps: 30 });
    const q = (k * decay) / (Math.E * c0);
    expectClose(found.end!.value, Math.sqrt((2 * q) / 1.225), 2e-3);
    expect(found.end?.why).toMatch(/downforce grows faster/);
    const unstable = found.points.filter(({ branch }) => branch === "unstable");
    expect(unstable.length).toBeGreaterThan(10);
    for (const { value, figures } of unstable) {
      const drop = 0.05 - number(figures.front.rideHeight);
      expect(drop).toBeGreaterThan(0.95 * decay);
      expect(value).toBeLessThan(1.002 * found.end!.value);
      // The same law in closed form, to what the table's interpolation leaves.
      expectClose(k * drop, ((1.225 * value * value) / 2) * c0 * Math.exp(drop / decay), 5e-3);
    }
  });

  it("a table that stalls below turns the path once more: stable again, low down", () => {
    const row = heights.map((h) =>
      h > 0.03 ? 2 * Math.exp((0.05 - h) / 0.009) : 2 * Math.exp(0.02 / 0.009) * (h / 0.03),
    );
    const air: Air["front"] = { kind: "table", surface: monotoneSurface(heights, [0.02, 0.08], [row, row]) };
    const branches = sweep(sinking(air), { to: 60, steps: 30 }).points.map(({ branch }) => branch);
    const runs = branches.filter((branch, i) => branch !== branches[i - 1]);
    expect(runs.slice(0, 2)).toEqual(["stable", "unstable"]);
  });
});

describe("asking", () => {
  it("says what is missing", () => {
    expect(carCases(() => loaded, []).sweep({ over: "speed", from: "nowhere", to: 50, steps: 5 })).toEqual({
      kind: "absent",
      reason: "the car has no case nowhere",
    });
    const still = { ...loaded, drive: undefined };
    expect(carCases(() => still, []).sweep({ over: "speed", from: undefined, to: 50, steps: 5 })).toMatchObject({
      kind: "absent",
    });
  });
});
