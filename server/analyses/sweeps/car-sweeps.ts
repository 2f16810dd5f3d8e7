/**
 * Sweeps of a car that is ready: over speed up to a top speed, with the unstable branch where there is one, and over
 * lateral acceleration until the first wheel lifts.
 */
import { AT_REST, type LoadCase } from "../../elements/loaded-car.js";
import { isAbsent } from "../absent.js";
import { caseFigures } from "../equilibrium/case-figures.js";
import { pressurePath } from "../equilibrium/pressure-path.js";
import type { CaseResult, Sweep, SweepPoint, SweepQuestion, SweepResult } from "../equilibrium/results.js";
import { equilibrium, type Ready } from "../equilibrium/solve.js";
import { stableBranch } from "./stable-branch.js";

/** @param solve one case of the car, @param base the case that everything else is taken from */
export function sweepOf(
  ready: Ready,
  solve: (asked: LoadCase) => CaseResult,
  base: LoadCase | undefined,
  { over, to, steps }: SweepQuestion,
): SweepResult {
  const asked = base ?? { ...AT_REST, name: "sweep" };
  const values = Array.from({ length: steps + 1 }, (_, i) => (to * i) / steps);
  if (over === "lateral") {
    return stableBranch({
      over,
      values,
      at: (lateral) => solve({ ...asked, lateral }),
      ends: ({ wheels }) => wheels.some(({ isLifted }) => isLifted),
    });
  }
  const stable = stableBranch({ over, values, at: (speed) => solve({ ...asked, speed }) });
  return isAbsent(stable) ? stable : { ...stable, points: [...stable.points, ...turnedBack(ready, asked, stable, to)] };
}

/** What comes back from the end of the stable branch: the unstable branch, and what is stable again beyond it. */
function turnedBack(ready: Ready, asked: LoadCase, { points, end }: Sweep, to: number): readonly SweepPoint[] {
  const [first] = points;
  const { density } = ready.standing.car;
  if (end === undefined || first === undefined || ready.standing.air === undefined) return [];
  const start = equilibrium(ready, { ...asked, speed: 0 });
  if (start.kind !== "solved") return [];
  const path = pressurePath(ready, asked, start, (density * to * to) / 2);
  const turn = path.findIndex(({ isStable }) => !isStable);
  if (turn < 0) return [];
  return path.slice(turn).map(({ pressure, isStable, solved }) => {
    const speed = Math.sqrt((2 * pressure) / density);
    const figures = caseFigures(ready.standing, { ...asked, speed }, solved);
    return { value: speed, branch: isStable ? "stable" : "unstable", figures };
  });
}
