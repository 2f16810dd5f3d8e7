/** How fast the linear whole car is, once warm: eigenvalues, modes, and a random road; mirrored and not. */
import { carDynamics } from "../../server/analyses/whole-car/dynamics.js";
import { modesOf } from "../../server/analyses/whole-car/modes.js";
import { partOf } from "../../server/analyses/whole-car/parts.js";
import { roadResponse } from "../../server/analyses/whole-car/road.js";
import { stateSpace } from "../../server/analyses/whole-car/state-space.js";
import { spectrumOf } from "../../server/maths/eigen.js";
import { car7, crookedCar } from "../support/whole-car.js";
import { row, spread } from "./statistics.js";

const RUNS = 1000;

/** The median, µs. */
function microseconds(work: () => unknown): number {
  for (let run = 0; run < RUNS; run++) work();
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    work();
    return 1000 * (performance.now() - start);
  });
  return spread(times).p50;
}

const road = { roughness: 16e-6, speed: 40, staticLoads: [3000, 3000, 3000, 3000] };

export function benchRide(): void {
  console.log("\nModes and road response of the linear car");
  const space = stateSpace(carDynamics(car7));
  if (space === undefined) throw new Error("the check case has masses");
  console.log(
    row(
      "eigenvalues and vectors of the 14-state problem",
      microseconds(() => spectrumOf(space.a)),
      "µs",
      { atMost: 100 },
    ),
  );
  console.log(
    row(
      "the same with its matrices",
      microseconds(() => partOf(carDynamics(car7), undefined)),
      "µs",
    ),
  );
  console.log(
    row(
      "modes, mirrored car",
      microseconds(() => modesOf(car7)),
      "µs",
    ),
  );
  console.log(
    row(
      "modes, unlike sides and lag (16 states)",
      microseconds(() => modesOf(crookedCar)),
      "µs",
    ),
  );
  console.log(
    row(
      "road response, mirrored car",
      microseconds(() => roadResponse(car7, road)),
      "µs",
    ),
  );
  console.log(
    row(
      "road response, unlike sides and lag",
      microseconds(() => roadResponse(crookedCar, road)),
      "µs",
    ),
  );
}
