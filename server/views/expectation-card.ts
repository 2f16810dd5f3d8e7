/** An expectation beside the figure that it is about: value, margin, met or missed. */
import type { Statement } from "../../grammar/index.js";
import type { CheckedCar } from "../findings/context.js";
import { showFigure } from "./figures.js";

export function expectationCard(car: CheckedCar, statement: Statement, uri: string): string | undefined {
  const index = car.model.expectations.findIndex(
    ({ origin }) => origin.uri === uri && origin.start === statement.start,
  );
  const wanted = car.model.expectations[index];
  const judged = car.analysis.expectations.find((result) => result.index === index);
  if (wanted === undefined || judged === undefined) return undefined;
  const verdict = judged.met === undefined ? "not judged" : judged.met ? "met" : "missed";
  const value = showFigure(judged.value, judged.unit);
  const margin = judged.met === undefined ? "" : ` · margin ${showFigure(judged.margin, judged.unit)}`;
  return `**${wanted.figure}** is ${value} · ${verdict}${margin}`;
}
