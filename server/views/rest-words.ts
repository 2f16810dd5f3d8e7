/** At which position the figures of an axle at rest hold, in words. */
import type { AxleAnalysis } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import type { CarModel } from "../model/car.js";
import { keepsSeats } from "../model/keeps-seats.js";
import type { AxleName } from "../model/origin.js";
import { showFigure } from "./figures.js";
import { unitsOfCar } from "./units-of-car.js";

/** "at static trim", and how far the wheels stand from where the linkage is drawn if a set-up moves them. */
export function restWords({ model, analysis }: CheckedCar, axles: readonly AxleName[] = ["front", "rear"]): string {
  const unit = unitsOfCar(model)("length");
  const moved = axles.flatMap((name) => {
    const travel = travelOf(analysis.axles[name]);
    if (travel === 0) return [];
    const way = travel > 0 ? "bump" : "droop";
    return [`${axles.length > 1 ? `${name} ` : ""}wheels ${showFigure(Math.abs(travel), unit, 3)} in ${way}`];
  });
  return [restName(model), ...moved].join(", ");
}

/** How the car stands: set on the flat patch, or left as it was set for another. */
export const restName = (model: CarModel): string => (keepsSeats(model) ? "at rest on kept seats" : "at static trim");

const travelOf = (axle: AxleAnalysis | undefined): number => axle?.atRest.left.travel ?? 0;
