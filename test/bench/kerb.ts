/** How long one kerb strike of the sample car takes, once warm: from an equilibrium that is at hand, with its figures. */
import { strikeFigures } from "../../server/analyses/kerb/figures.js";
import { strike } from "../../server/analyses/kerb/strike.js";
import { isAbsent } from "../../server/analyses/absent.js";
import { equilibrium } from "../../server/analyses/equilibrium/solve.js";
import { assembleLoadedCar } from "../../server/assemble/loaded-car.js";
import { rideNumbersOf } from "../../server/assemble/ride.js";
import { AT_REST } from "../../server/elements/loaded-car.js";
import { readyFor } from "../support/loaded-car.js";
import { quill } from "../support/quill.js";
import { row, spread } from "./statistics.js";

const RUNS = 15;

const kerb = {
  shape: "half-sine",
  height: 0.04,
  length: 0.6,
  contact: 0.12,
  speed: 25,
  wheels: "left",
  axle: "both",
  after: 0.6,
} as const;

export function benchKerb(): void {
  console.log("\nA kerb strike in the time domain");
  const car = quill();
  const ready = readyFor(assembleLoadedCar(car));
  const solution = equilibrium(ready, { ...AT_REST, speed: kerb.speed });
  if (solution.kind !== "solved") throw new Error(solution.kind);
  const numbers = rideNumbersOf(car);
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    const pass = strike(ready, solution, numbers, kerb);
    if (isAbsent(pass) || pass.kind !== "solved") throw new Error(pass.kind);
    strikeFigures(ready.standing, pass.moments);
    return performance.now() - start;
  });
  console.log(row("one side over 40 mm, 0.6 s after it", spread(times.slice(3)).p50, "ms"));
}
