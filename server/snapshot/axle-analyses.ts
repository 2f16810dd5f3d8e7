/** Analyses of axles, kept by their numbers: cars and set-ups that share an axle share its figures. */
import { analyseAxle } from "../analyses/analyse-axle.js";
import { carElementFigures } from "../analyses/car-elements.js";
import type { AxleAnalysis, ElementFigures } from "../analyses/results.js";
import { assembleAxle, axleKey } from "../assemble/assemble.js";
import { assembleCarElements } from "../assemble/car-elements.js";
import type { AxleModel, CarModel } from "../model/car.js";
import { BoundedCache } from "./bounded-cache.js";

/** Both axles of a hundred set-ups: more than anybody edits at a time. */
const mostAxles = 200;

export class AxleAnalyses {
  readonly #kept = new BoundedCache<string, AxleAnalysis>(mostAxles);

  of(axle: AxleModel, car: CarModel): AxleAnalysis {
    return this.#kept.get(axleKey(axle, car), () => analyseAxle(assembleAxle(axle, car)));
  }

  /** Figures of the elements that join the axles; few cars have any. */
  joining(car: CarModel): readonly ElementFigures[] {
    if (car.elements.length === 0) return [];
    const { elements, axles } = assembleCarElements(car);
    return carElementFigures(elements, axles);
  }
}
