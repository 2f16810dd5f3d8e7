/** Transfer functions for machines: JSON, whose form is described by `schema/response.json`, and CSV, a column a curve. */
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent } from "../../views/figures.js";
import { type Response, unitOfGain } from "../../views/response-page.js";
import { unitsOfCar } from "../../views/units-of-car.js";
import { csv } from "./csv.js";
import { absence, json, rounded } from "./json.js";

const inDegrees = (phase: number): number => rounded((phase * 180) / Math.PI);

export function responseJson(car: CheckedCar, asked: Response, at: string | undefined): string {
  const found = car.ride.response(at, asked);
  const unit = unitsOfCar(car.model);
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    case: at ?? null,
    road: asked.motion,
    ...(isAbsent(found)
      ? absence(found)
      : {
          frequency: { unit: "Hz", values: asked.frequencies.map(rounded) },
          curves: found.curves.map(({ of, name, quantity, gain, phase }) => {
            const shown = unitOfGain(quantity, unit);
            return {
              of,
              figure: name,
              gain: { unit: shown, values: gain.map((value) => rounded(fromSI(value, shown) ?? value)) },
              phase: { unit: "deg", values: phase.map(inDegrees) },
            };
          }),
        }),
  });
}

export function responseCsv(car: CheckedCar, asked: Response, at: string | undefined): string {
  const found = car.ride.response(at, asked);
  if (isAbsent(found)) return csv([["frequency Hz"]]);
  const unit = unitsOfCar(car.model);
  const curves = found.curves.map(({ of, name, quantity, gain, phase }) => {
    const shown = unitOfGain(quantity, unit);
    return [
      [`${of} ${name} ${shown}`, ...gain.map((value) => rounded(fromSI(value, shown) ?? value))],
      [`${of} ${name} phase deg`, ...phase.map(inDegrees)],
    ];
  });
  const [first, ...columns] = [["frequency Hz", ...asked.frequencies.map(rounded)], ...curves.flat()];
  return csv(first.map((cell, row) => [cell, ...columns.map((column) => column[row] ?? "")]));
}
