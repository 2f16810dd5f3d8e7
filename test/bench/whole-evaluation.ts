/**
 * Full evaluation of a car, warm: seats on the flat patch, six load cases, modes, and road response with its elements'
 * nearest lines. Beside it the same by NumPy and SciPy (`engineer.py`), where they are installed.
 */
import { execFileSync } from "node:child_process";
import { type CaseSolver, caseSolver } from "../../server/analyses/equilibrium/case-solver.js";
import { carRide } from "../../server/analyses/whole-car/car-ride.js";
import { assembleLoadedCar, loadCaseOf } from "../../server/assemble/loaded-car.js";
import type { LoadCase } from "../../server/elements/loaded-car.js";
import { rideNumbersOf } from "../../server/assemble/ride.js";
import { caseOf } from "../support/loaded-car.js";
import { quill } from "../support/quill.js";
import { row, spread } from "./statistics.js";

const ROUNDS = 300;
const MORE = [
  caseOf({ name: "faster-bend", speed: 30, lateral: 17.6 }),
  caseOf({ name: "trail", speed: 40, lateral: 11.8, longitudinal: -7.8 }),
  caseOf({ name: "exit", speed: 25, lateral: 7.8, longitudinal: 4.9 }),
];

export function benchWholeEvaluation(): void {
  console.log("\nFull evaluation of a car (trim, six load cases, modes, road response)");
  const car = quill();
  const loaded = assembleLoadedCar(car);
  const numbers = rideNumbersOf(car);
  const cases = [...car.cases.map(loadCaseOf), ...MORE];
  const evaluate = (): void => {
    const solver = caseSolver(() => loaded);
    const ride = carRide(() => loaded, cases, numbers, solver);
    for (const asked of cases) {
      const { kind } = solver.solve(asked);
      if (kind !== "solved") throw new Error(`${asked.name} has no equilibrium`);
    }
    const road = ride.road(undefined, { class: "B", speed: 100 / 3, sides: "isotropic" });
    if (ride.at(undefined).kind !== "ride" || road.kind !== "road-response") throw new Error("the car has figures");
  };
  for (let i = 0; i < ROUNDS; i++) evaluate();
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    evaluate();
    return performance.now() - start;
  });
  const { p50 } = spread(times);
  console.log(row("full evaluation of a car", p50, "ms", { atMost: 3 }));
  const engineer = engineersRun();
  if (engineer === undefined)
    return console.log("the same in SciPy: left out, since python3 with numpy, scipy and mpmath is not there");
  holdAgainst(
    engineer,
    cases,
    caseSolver(() => loaded),
  );
  console.log(row("the same in SciPy, corners in closed form", 1000 / engineer.perSecond, "ms"));
  console.log(row("evaluations for each of SciPy's", 1000 / p50 / engineer.perSecond, "", { atLeast: 100 }));
}

interface EngineersRun {
  readonly perSecond: number;
  /** Front and rear ride height, m, then the four loads, N. */
  readonly cases: Readonly<Record<string, readonly number[]>>;
}

/** Both have to find the same equilibria, or the comparison says nothing. */
function holdAgainst({ cases: theirs }: EngineersRun, cases: readonly LoadCase[], solver: CaseSolver): void {
  for (const asked of cases) {
    const found = solver.solve(asked);
    if (found.kind !== "solved") throw new Error(`${asked.name} has no equilibrium`);
    const ours = [...found.balance.heights, ...found.balance.wheels.map(({ load }) => load)];
    const off = ours.map((value, i) => Math.abs(value / (theirs[asked.name]?.[i] ?? Number.NaN) - 1));
    if (!off.every((value) => value < SAME)) throw new Error(`${asked.name}: SciPy finds another equilibrium`);
  }
}

/** Relative; SciPy's stops at a residual of a thousandth of a newton. */
const SAME = 1e-5;

/** On one core; undefined without SciPy. */
function engineersRun(): EngineersRun | undefined {
  const env = { ...process.env, OPENBLAS_NUM_THREADS: "1", OMP_NUM_THREADS: "1" };
  try {
    execFileSync("python3", ["-c", "import numpy, scipy, mpmath"], { stdio: "ignore" });
  } catch {
    return undefined;
  }
  return JSON.parse(
    execFileSync("python3", ["test/bench/engineer.py", "3"], { encoding: "utf8", env }),
  ) as EngineersRun;
}
