/** Answers of `solve` in every format. JSON is described by `schema/solve.json`. */
import type { CheckedCar } from "../../findings/context.js";
import type { Answer, SolveAnswer } from "../../snapshot/solve.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { solvePage } from "../../views/solve-page.js";
import { json, quantity } from "./json.js";
import { pageText } from "./rates-text.js";

type Solved = Extract<SolveAnswer, { readonly answer: unknown }>;

export const solveOutputs = {
  text: (car: CheckedCar, found: Solved, wanted: readonly string[]) => pageText(solvePage(car, found, wanted)),
  markdown: (car: CheckedCar, found: Solved, wanted: readonly string[]) => pageMarkdown(solvePage(car, found, wanted)),
  json: solveJson,
} as const;

function solveJson(car: CheckedCar, found: Solved, wanted: readonly string[]): string {
  const { before, answer, onSteps, withPart, atBounds } = found;
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    met: answer.isMet,
    atBounds,
    before: answerJson({ ...before, isMet: before.outcomes.every(({ isMet }) => isMet) }, wanted),
    answer: answerJson(answer, wanted),
    onSteps: onSteps === undefined ? null : answerJson(onSteps, wanted),
    withPart: withPart === undefined ? null : answerJson(withPart, wanted),
  });
}

const answerJson = ({ isMet, settings, outcomes }: Answer, wanted: readonly string[]): object => ({
  met: isMet,
  settings: settings.map(({ path, text, steps }) => ({ path, value: text, steps: steps ?? null })),
  figures: outcomes.map(({ value, unit, isMet: met, margin }, i) => ({
    expected: wanted[i] ?? "",
    value: quantity(value, unit),
    met,
    margin: quantity(margin, unit),
  })),
});
