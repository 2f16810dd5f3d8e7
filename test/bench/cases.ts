/**
 * Load cases of the sample car, warm: one case, all of a car's from its numbers on, and a case that has no equilibrium.
 *
 * Run by `npm run bench`. Budget: one case within 0.25 ms, since six of them with modes and road have to fit in 3 ms.
 */
import { solveCase } from "../../server/analyses/equilibrium/car-cases.js";
import { assembleLoadedCar, loadCaseOf } from "../../server/assemble/loaded-car.js";
import { caseOf, readyFor } from "../support/loaded-car.js";
import { quill } from "../support/quill.js";
import { row, spread } from "./statistics.js";

const WARM_UP = 3000;
const ROUNDS = 3000;

function measured(run: () => unknown, rounds = ROUNDS): number {
  for (let i = 0; i < Math.min(WARM_UP, rounds); i++) run();
  const times: number[] = [];
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    run();
    times.push(performance.now() - start);
  }
  return spread(times).p50;
}

export function benchCases(): void {
  const car = quill();
  const loaded = assembleLoadedCar(car);
  const ready = readyFor(loaded);
  const cases = car.cases.map(loadCaseOf);
  console.log("load cases (median)");
  for (const asked of cases) {
    console.log(
      row(
        `  ${asked.name}`,
        measured(() => solveCase(ready, asked)),
        "ms",
        { atMost: 0.25 },
      ),
    );
  }
  console.log(
    row(
      "  seats and places of a car, before its first case",
      measured(() => readyFor(loaded), 500),
      "ms",
    ),
  );
  const tips = caseOf({ lateral: 30 });
  console.log(
    row(
      "  a case that has no equilibrium",
      measured(() => solveCase(ready, tips), 100),
      "ms",
    ),
  );
}
