/** Analyses of axles, kept by their numbers: cars and set-ups that share an axle share its figures. */
import { analyseAxle } from "../analyses/analyse-axle.js";
import type { AxleAnalysis } from "../analyses/results.js";
import { assembleAxle, axleKey } from "../assemble/assemble.js";
import type { AxleModel, CarModel } from "../model/car.js";
import { BoundedCache } from "./bounded-cache.js";

/** Both axles of a hundred set-ups: more than anybody edits at a time. */
const mostAxles = 200;

export class AxleAnalyses {
  readonly #kept = new BoundedCache<string, AxleAnalysis>(mostAxles);

  of(axle: AxleModel, car: CarModel): AxleAnalysis {
    return this.#kept.get(axleKey(axle, car), () => analyseAxle(assembleAxle(axle, car)));
  }
}
