/**
 * The load cases of a car, each put into equilibrium when it is first asked for and kept as long as this is.
 *
 * Invariant: nothing is assembled or solved for a car whose cases nobody asks for.
 */
import type { CarUnderLoad, LoadCase } from "../../elements/loaded-car.js";
import { absent, isAbsent } from "../absent.js";
import { sweepOf } from "../sweeps/car-sweeps.js";
import { caseFigures } from "./case-figures.js";
import type { CarCases, CaseResult } from "./results.js";
import { type CaseSolver, caseSolver } from "./case-solver.js";
import type { Outcome } from "./outcome.js";
import { equilibrium, type Ready } from "./solve.js";
import { whyNotWords } from "./words.js";

/** One case of a car that is ready. */
export const solveCase = (car: Ready, asked: LoadCase): CaseResult => resultOf(car, asked, equilibrium(car, asked));

function resultOf(car: Ready, asked: LoadCase, outcome: Outcome): CaseResult {
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

export function carCases(
  car: () => CarUnderLoad,
  cases: readonly LoadCase[],
  solver: CaseSolver = caseSolver(car),
): CarCases {
  const byName = new Map(cases.map((one) => [one.name, one]));
  const known = new Map<string, CaseResult>();
  return {
    names: cases.map(({ name }) => name),
    at(name) {
      const asked = byName.get(name);
      if (asked === undefined) return undefined;
      const before = known.get(name);
      if (before !== undefined) return before;
      const found = solver.ready();
      const result = isAbsent(found) ? { ...found, name } : resultOf(found, asked, solver.solve(asked));
      known.set(name, result);
      return result;
    },
    sweep(question) {
      const base = question.from === undefined ? undefined : byName.get(question.from);
      if (question.from !== undefined && base === undefined) return absent(`the car has no case ${question.from}`);
      const found = solver.ready();
      return isAbsent(found) ? found : sweepOf(found, (asked) => solveCase(found, asked), base, question);
    },
  };
}
