/** Walking over the axles and elements of a checked car with their figures. */
import type { AxleAnalysis, ElementFigures } from "../analyses/results.js";
import type { AxleModel, ElementModel } from "../model/car.js";
import type { CheckedCar, CheckedElement } from "./context.js";

export type { CheckedElement } from "./context.js";

export interface CheckedAxle {
  readonly axle: AxleModel;
  readonly analysis: AxleAnalysis;
}

export function axlesOf({ model, analysis }: Pick<CheckedCar, "model" | "analysis">): readonly CheckedAxle[] {
  return (["front", "rear"] as const).flatMap((name) => {
    const axle = model.axles[name];
    const figures = analysis.axles[name];
    return axle === undefined || figures === undefined ? [] : [{ axle, analysis: figures }];
  });
}

/** Elements with their figures, those of the axles first. */
export function checkedElements(car: Pick<CheckedCar, "model" | "analysis">): readonly CheckedElement[] {
  const ofAxles = axlesOf(car).flatMap(({ axle, analysis }) => pairs(axle.elements, analysis.elements, axle));
  return [...ofAxles, ...pairs(car.model.elements, car.analysis.elements, undefined)];
}

export const elementsOf = ({ elements }: CheckedCar): readonly CheckedElement[] => elements;

function pairs(
  models: readonly ElementModel[],
  figures: readonly ElementFigures[],
  axle: AxleModel | undefined,
): readonly CheckedElement[] {
  const byPath = new Map(figures.map((own) => [own.path, own]));
  return models.flatMap((model) => {
    const own = byPath.get(model.path);
    return own === undefined ? [] : [{ model, figures: own, axle }];
  });
}

export function elementAt(car: CheckedCar, path: string): CheckedElement | undefined {
  return elementsOf(car).find(({ model }) => model.path === path);
}
