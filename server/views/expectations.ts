/** How each expectation of a car or set-up stands, as text: one wording for hovers, tests in the editor and reports. */
import type { CarAnalysis } from "../analyses/results.js";
import { digitsFor, wantedWords } from "../analyses/wanted-words.js";
import type { CheckedCar } from "../findings/context.js";
import type { ExpectationModel } from "../model/car.js";
import type { Origin } from "../model/origin.js";
import type { FileView } from "../snapshot/workspace.js";
import { isAbsent, showFigure } from "./figures.js";

export interface JudgedExpectation {
  /** "front.heave-rate at hairpin above 150 N/mm" */
  readonly text: string;
  /** The figure with its case: "front.heave-rate at hairpin". */
  readonly asked: string;
  readonly origin: Origin;
  readonly verdict: "met" | "missed" | "not-judged";
  readonly wanted: string;
  /** Undefined where it is not judged. */
  readonly actual: string | undefined;
  /** Distance to the nearest limit, negative where it is missed; undefined where it is not judged. */
  readonly margin: string | undefined;
  /** Figure, what is wanted, margin or reason. */
  readonly message: string;
}

export interface JudgedCar {
  readonly name: string;
  readonly nameOrigin: Origin;
  readonly expectations: readonly JudgedExpectation[];
}

/** Cars and set-ups that are expected to do something, in the order of the text. */
export const judgedCars = ({ cars }: FileView): readonly JudgedCar[] =>
  cars
    .map((car) => {
      const { setup, name, nameOrigin } = car.model;
      return { name: setup ?? name, nameOrigin, expectations: expectationsOf(car) };
    })
    .filter(({ expectations }) => expectations.length > 0);

type Judged = CarAnalysis["expectations"][number];

export const expectationsOf = ({ model, analysis }: CheckedCar): readonly JudgedExpectation[] =>
  analysis.expectations.flatMap((judged) => {
    const expected = model.expectations[judged.index];
    return expected === undefined ? [] : [shown(expected, judged)];
  });

function shown(expected: ExpectationModel, judged: Judged): JudgedExpectation {
  const wanted = wantedWords(expected.wants);
  const asked = expected.at === undefined ? expected.figure : `${expected.figure} at ${expected.at}`;
  return { text: `${asked} ${wanted}`, asked, origin: expected.origin, wanted, ...verdictOf(judged, asked, wanted) };
}

type Verdict = Pick<JudgedExpectation, "verdict" | "actual" | "margin" | "message">;

function verdictOf({ value, margin, met, unit }: Judged, asked: string, wanted: string): Verdict {
  if (met === undefined || typeof value !== "number" || typeof margin !== "number") {
    const reason = isAbsent(value) ? value.reason : "there is no figure";
    const message = `${asked} is not judged: ${reason}.`;
    return { verdict: "not-judged", actual: undefined, margin: undefined, message };
  }
  const by = Math.abs(margin);
  const actual = showFigure(value, unit, met ? 4 : digitsFor(value, by));
  const distance = showFigure(by, unit, 3);
  const ends = met ? `met with a margin of ${distance}` : `missed by ${distance}`;
  return {
    verdict: met ? "met" : "missed",
    actual,
    margin: met ? distance : `-${distance}`,
    message: `${asked} is ${actual}; wanted ${wanted}: ${ends}.`,
  };
}
