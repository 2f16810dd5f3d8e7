/**
 * How far a figure has to move to be told: the step of its adjuster where it has one, else a share of itself; and never
 * less than that share of a size that is felt, so that a figure near nought is not told for moving by next to nothing.
 *
 * The sizes are common practice, no published source: a thousandth of them is less than is measured on a car.
 */
import type { DimensionName } from "../../../grammar/vocabulary/word.js";
import type { CarModel } from "../../model/car.js";
import { propertyAt } from "../../model/property-at.js";
import { dimensionOfUnit } from "../../quantities/index.js";
import type { FigureRow } from "./figure-rows.js";

/** As a share of the figure. */
export const USUAL_THRESHOLD = 0.005;

/** SI. */
const FELT: Partial<Readonly<Record<DimensionName, number>>> = {
  number: 0.2,
  share: 0.2,
  length: 0.01,
  angle: Math.PI / 180,
  force: 200,
  moment: 50,
  rate: 5000,
  "torsional-rate": 1000,
  damping: 500,
  "torsional-damping": 100,
  stress: 20e6,
  pressure: 1e5,
  // A unit in MPa counts as that of a modulus; the figures in it are stresses.
  modulus: 20e6,
  frequency: 1,
  volume: 1e-6,
  area: 0.05,
  "piston-area": 1e-5,
  "angle-per-length": 1,
  "angle-per-acceleration": 5e-4,
};

export function thresholdOf(row: FigureRow, old: number, now: number, share: number, car: CarModel): number {
  const step = stepOf(row, car);
  if (step !== undefined) return step;
  const felt = FELT[dimensionOfUnit(row.unit) ?? "any"] ?? 0;
  return share * Math.max(Math.abs(old), Math.abs(now), felt);
}

/** A figure that its own adjuster sets cannot be set more closely than this; a hair less, so that one step is told. */
function stepOf({ property }: FigureRow, car: CarModel): number | undefined {
  const found = property === undefined ? undefined : propertyAt(car, property);
  if (found?.kind !== "number" || found.step === undefined) return undefined;
  return found.step.value * ONE_STEP;
}

const ONE_STEP = 0.999;
