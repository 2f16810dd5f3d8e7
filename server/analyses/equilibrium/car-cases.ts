/**
 * The load cases of a car, each put into equilibrium when it is first asked for and kept as long as this is.
 *
 * Invariant: nothing is assembled or solved for a car whose cases nobody asks for.
 */
import type { CarUnderLoad, LoadCase } from "../../elements/loaded-car.js";
import { absent, isAbsent } from "../absent.js";
import type { Absent } from "../results.js";
import { sweepOf } from "../sweeps/car-sweeps.js";
import { caseFigures } from "./case-figures.js";
import type { CarCases, CaseResult } from "./results.js";
import { equilibrium, type Ready, readyCar } from "./solve.js";
import { standingCar } from "./standing.js";
import { whyNotWords } from "./words.js";

/** The car on the flat patch, ready for any case, or what is missing. */
function ready(car: CarUnderLoad): Ready | Absent {
  const standing = standingCar(car);
  return isAbsent(standing) ? standing : readyCar(standing);
}

/** One case of a car that is ready. */
export function solveCase(car: Ready, asked: LoadCase): CaseResult {
  const outcome = equilibrium(car, asked);
  const { name } = asked;
  switch (outcome.kind) {
    case "solved":
      return caseFigures(car.standing, asked, outcome);
    case "absent":
      return { ...outcome, name };
    case "not-converged": {
      const { reason, iterations, residual, element, reached } = outcome;
      const words = whyNotWords(reason);
      return { kind: "no-equilibrium", name, why: reason, words, iterations, residual, element, reached };
    }
  }
}

export function carCases(car: () => CarUnderLoad, cases: readonly LoadCase[]): CarCases {
  const byName = new Map(cases.map((one) => [one.name, one]));
  const known = new Map<string, CaseResult>();
  let made: Ready | Absent | undefined;
  const readied = (): Ready | Absent => (made ??= ready(car()));
  return {
    names: cases.map(({ name }) => name),
    at(name) {
      const asked = byName.get(name);
      if (asked === undefined) return undefined;
      const before = known.get(name);
      if (before !== undefined) return before;
      const found = readied();
      const result = isAbsent(found) ? { ...found, name } : solveCase(found, asked);
      known.set(name, result);
      return result;
    },
    sweep(question) {
      const base = question.from === undefined ? undefined : byName.get(question.from);
      if (question.from !== undefined && base === undefined) return absent(`the car has no case ${question.from}`);
      const found = readied();
      return isAbsent(found) ? found : sweepOf(found, (asked) => solveCase(found, asked), base, question);
    },
  };
}
