/** In which units the figures of a car are shown: the author's system, read off what the author wrote. */
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import type { CarModel } from "../model/car.js";
import { unitSystem, usualUnit } from "../quantities/index.js";

export type ShowUnit = (dimension: DimensionName) => string;

export function unitsOfCar(car: CarModel): ShowUnit {
  const system = systemOf(car);
  return (dimension) => usualUnit(dimension, system);
}

/** The first length that the author gave decides: nobody mixes the two in one car's main dimensions. */
function systemOf(car: CarModel): "si" | "inch" {
  const lengths = [car.axles.front?.track, car.axles.rear?.track, car.wheelbase, car.axles.front?.wheel.left.centre];
  const given = lengths.find((length) => length !== undefined);
  return given === undefined ? "si" : unitSystem(given.unit);
}
