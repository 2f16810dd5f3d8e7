/**
 * The Quill in its load cases against an independent solution: forces and moments summed with cross products, velocities
 * by differences, joints from their constraint equations, all solved with SciPy (load_cases.py). Own figures, no
 * published source.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { solveCase } from "../../server/analyses/equilibrium/car-cases.js";
import { assembleLoadedCar } from "../../server/assemble/loaded-car.js";
import { expectClose } from "../support/approx.js";
import { caseOf, readyFor } from "../support/loaded-car.js";
import { quill } from "../support/quill.js";
import { ORACLE_CASE, ORACLE_CASE_M } from "../support/tolerances.js";
import { number } from "../support/written-car.js";

interface SolvedCase {
  readonly speed: number;
  readonly lateral: number;
  readonly longitudinal: number;
  readonly ride_heights: readonly [number, number];
  readonly roll: number;
  readonly pitch: number;
  readonly travels: readonly number[];
  readonly loads: readonly number[];
}

const { cases } = JSON.parse(readFileSync(new URL("../data/quill-load-cases.json", import.meta.url), "utf8")) as {
  readonly cases: Readonly<Record<string, SolvedCase>>;
};

describe("the Quill in equilibrium (after a change of the sample: cd test/oracle && python3 load_cases.py)", () => {
  const ready = readyFor(assembleLoadedCar(quill()));

  it.each(Object.entries(cases))("%s", (_, wanted) => {
    const { speed, lateral, longitudinal } = wanted;
    const found = solveCase(ready, caseOf({ speed, lateral, longitudinal }));
    if (found.kind !== "equilibrium") throw new Error(found.kind);
    expectClose(number(found.front.rideHeight), wanted.ride_heights[0], 0, ORACLE_CASE_M);
    expectClose(number(found.rear.rideHeight), wanted.ride_heights[1], 0, ORACLE_CASE_M);
    expectClose(found.roll, wanted.roll, ORACLE_CASE, ORACLE_CASE_M);
    expectClose(found.pitch, wanted.pitch, ORACLE_CASE, ORACLE_CASE_M);
    expect(wanted.loads).toHaveLength(4);
    for (const [i, wheel] of found.wheels.entries()) {
      expectClose(wheel.travel, wanted.travels[i] ?? 0, 0, ORACLE_CASE_M);
      expectClose(wheel.load, wanted.loads[i] ?? 0, ORACLE_CASE);
    }
  });
});
