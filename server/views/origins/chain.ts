/**
 * Where a value comes from: every line that had a say in it, the one in force first, down to the car, the part, the `let` or the
 * language that it began with.
 */
import type { CheckedCar } from "../../findings/context.js";
import type { CarModel, ResolvedStatement } from "../../model/car.js";
import type { TreeStatement } from "../../model/tree.js";
import { nameOf } from "../comparison/pairs.js";
import { letsBehind, propertiesBehind } from "./behind.js";
import { defaultStep } from "./defaults.js";
import { foundAt, layersOf, ownSteps, type Step, valueOf } from "./steps.js";
import type { FileOf } from "./written.js";

export interface ValueChain {
  /** The car or set-up whose value it is; undefined for a part's figure and a `let`. */
  readonly of: string | undefined;
  readonly path: string;
  /** In force; undefined where it was taken out, and for a block. */
  readonly value: string | undefined;
  /** The line in force first. */
  readonly steps: readonly Step[];
}

/** Undefined where the path leads to nothing: no line and no word of the language. */
export function chainOf(car: CheckedCar, path: readonly string[], fileOf: FileOf): ValueChain | undefined {
  const { model } = car;
  const layers = layersOf(car);
  const own = layers.flatMap((layer, i) => ownSteps(layers[i - 1], layer, path, fileOf));
  const began = foundAt(layers[0], path) === undefined ? defaultStep(model, path) : undefined;
  const oldestFirst = [...(began === undefined ? [] : [began]), ...own];
  if (oldestFirst.length === 0) return undefined;
  const found = foundAt(model, path);
  const value = valueOf(found, path) ?? (own.length === 0 ? began?.value : undefined);
  const behind = found === undefined ? [] : readBy(model, found.statement, fileOf);
  const steps = [...oldestFirst]
    .reverse()
    .flatMap((step, i) => [
      step,
      ...(step.origin === undefined ? [] : letsBehind(step.origin, fileOf)),
      ...(i === 0 ? behind : []),
    ]);
  return { of: nameOf(model), path: path.join("."), value, steps };
}

/** Only the line in force still has its formula at hand. */
function readBy(model: CarModel, statement: ResolvedStatement, fileOf: FileOf): readonly Step[] {
  const { formula } = statement as TreeStatement;
  return formula === undefined ? [] : propertiesBehind(model, formula, fileOf);
}
