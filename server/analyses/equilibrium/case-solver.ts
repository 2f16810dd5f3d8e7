/**
 * A car on the flat patch and its solved load cases, shared by whoever asks about them: each is worked out when it is
 * first asked for and kept as long as this is.
 *
 * Invariant: nothing is assembled or solved for a car whose cases nobody asks for.
 */
import type { CarUnderLoad, LoadCase } from "../../elements/loaded-car.js";
import { isAbsent } from "../absent.js";
import type { Absent } from "../results.js";
import type { Outcome } from "./outcome.js";
import { equilibrium, type Ready, readyCar } from "./solve.js";
import { standingCar } from "./standing.js";

export interface CaseSolver {
  /** The car ready for any case, or what is missing. */
  ready(): Ready | Absent;
  solve(asked: LoadCase): Outcome;
}

export function caseSolver(car: () => CarUnderLoad): CaseSolver {
  const outcomes = new Map<string, Outcome>();
  let made: Ready | Absent | undefined;
  const ready = (): Ready | Absent => {
    if (made !== undefined) return made;
    const standing = standingCar(car());
    return (made = isAbsent(standing) ? standing : readyCar(standing));
  };
  return {
    ready,
    solve(asked) {
      const found = ready();
      if (isAbsent(found)) return found;
      const key = JSON.stringify(asked);
      const before = outcomes.get(key);
      if (before !== undefined) return before;
      const outcome = equilibrium(found, asked);
      outcomes.set(key, outcome);
      return outcome;
    },
  };
}
