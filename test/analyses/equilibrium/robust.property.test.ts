/**
 * Whatever is asked: a case comes to figures that balance, or to a reason; nothing throws and nothing is NaN. Solutions
 * mirror, and the energy of springs, tyres, gravity and air is at rest in them.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solveCase } from "../../../server/analyses/equilibrium/car-cases.js";
import type { CaseFigures } from "../../../server/analyses/equilibrium/results.js";
import { equilibrium } from "../../../server/analyses/equilibrium/solve.js";
import { assembleLoadedCar } from "../../../server/assemble/loaded-car.js";
import type { CarUnderLoad, LoadCase } from "../../../server/elements/loaded-car.js";
import { expectClose } from "../../support/approx.js";
import { brokenSamples } from "../../support/shared-car.js";
import { caseOf, readyFor } from "../../support/loaded-car.js";
import { quill, quillText } from "../../support/quill.js";
import { carOf } from "../../support/written-car.js";

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** From nothing at all to far beyond anything that drives. */
const cases: fc.Arbitrary<LoadCase> = fc
  .record({
    speed: double(0, 180),
    lateral: double(-60, 60),
    longitudinal: double(-60, 30),
    vertical: double(-15, 40),
    banking: double(-1, 1),
    gradient: double(-1, 1),
  })
  .map(caseOf);

const cars: readonly (readonly [string, CarUnderLoad])[] = [
  ["the Quill", assembleLoadedCar(quill())],
  [
    "stops with little gap",
    assembleLoadedCar(carOf((brokenSamples["cases.crank"] ?? "").replace("gap 22 mm", "gap 2 mm"))),
  ],
  [
    "springs that only push",
    assembleLoadedCar(carOf((brokenSamples["cases.crank"] ?? "").replaceAll("acts both-ways", "acts in-compression"))),
  ],
  ["much downforce", assembleLoadedCar(quill(quillText.replace("downforce-front 0.85 m^2", "downforce-front 3 m^2")))],
];

/** Every number of the figures, wherever it stands. */
function numbersIn(value: unknown): readonly number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

describe.each(cars)("%s", (_, car) => {
  const ready = readyFor(car);

  it("comes to figures that balance, or to a reason", () => {
    fc.assert(
      fc.property(cases, (asked) => {
        const result = solveCase(ready, asked);
        expect(numbersIn(result).filter((value) => !Number.isFinite(value))).toEqual([]);
        if (result.kind === "equilibrium") expect(result.residual).toBeLessThanOrEqual(1e-6);
        else if (result.kind === "no-equilibrium") expect(result.words.length).toBeGreaterThan(10);
        else expect(result.reason.length).toBeGreaterThan(10);
      }),
      { numRuns: 60 },
    );
  });

  it("balances the forces on the whole car: weight, downforce, grip", () => {
    fc.assert(
      fc.property(cases, (asked) => {
        const outcome = equilibrium(ready, asked);
        fc.pre(outcome.kind === "solved");
        if (outcome.kind !== "solved") return;
        const { balance, load } = outcome;
        const sum = (of: "load" | "lateral" | "longitudinal"): number =>
          balance.wheels.reduce((total, wheel) => total + wheel[of], 0);
        const { mass } = ready.standing;
        const down = load.pressure * (balance.areas.front.area + balance.areas.rear.area);
        expectClose(sum("load"), down - mass * load.body[2], 1e-9, 1e-5);
        expectClose(sum("lateral"), -mass * load.body[1], 1e-9, 1e-6);
        const drag = load.pressure * balance.areas.drag.area;
        expectClose(sum("longitudinal"), drag - mass * load.body[0], 1e-9, 1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it("turns right as it turns left", () => {
    fc.assert(
      fc.property(cases, (asked) => {
        const left = solveCase(ready, asked);
        const right = solveCase(ready, { ...asked, lateral: -asked.lateral, banking: -asked.banking });
        expect(right.kind).toBe(left.kind);
        if (left.kind !== "equilibrium" || right.kind !== "equilibrium") return;
        for (const [i, wheel] of left.wheels.entries()) {
          const image = right.wheels[i ^ 1]!;
          expectClose(image.load, wheel.load, 1e-7, 1e-4);
          expectClose(image.travel, wheel.travel, 1e-7, 1e-9);
        }
        expectClose(right.roll, -left.roll, 1e-7, 1e-9);
      }),
      { numRuns: 40 },
    );
  });
});

describe("a case", () => {
  const [, car] = cars[0]!;
  const ready = readyFor(car);
  const solved = (asked: Partial<LoadCase>): CaseFigures => {
    const result = solveCase(ready, caseOf(asked));
    if (result.kind !== "equilibrium") throw new Error(JSON.stringify(result));
    return result;
  };

  it("without load is the car at rest", () => {
    const found = solved({});
    for (const { travel } of found.wheels) expect(Math.abs(travel)).toBeLessThan(1e-9);
    expect(found.roll).toBe(0);
    expect(found.pitch).toBe(0);
  });

  it("does not depend on what was asked before", () => {
    const first = solved({ lateral: 9, speed: 30 });
    solved({ lateral: -14 });
    expect(solved({ lateral: 9, speed: 30 })).toEqual(first);
  });

  it("with a lifted wheel carries the axle's whole load on the other one, and the springs hold what hangs", () => {
    const found = solved({ lateral: 24.4 });
    const [inner, outer] = found.wheels;
    expect(inner?.isLifted).toBe(true);
    expectClose(outer?.load ?? 0, 540 * 0.44 * 9.80665, 0.01);
    expect(inner?.lateral).toBe(0);
  });

  it("tips over at g t/(2 h) or a little before, as its centre of gravity moves outwards (any text on vehicle dynamics)", () => {
    const rigid = (9.80665 * (0.44 * 1.48 + 0.56 * 1.44)) / (2 * 0.285);
    const result = solveCase(ready, caseOf({ lateral: rigid }));
    if (result.kind !== "no-equilibrium") throw new Error(result.kind);
    expect(result.why).toEqual({ kind: "tips-over", side: "left" });
    expect(result.reached).toBeGreaterThan(0.95);
    expect(result.reached).toBeLessThan(1);
  });
});
