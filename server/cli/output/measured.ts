/** Measured against predicted for machines: JSON, whose form is described by `schema/measured.json`, and CSV. */
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent } from "../../views/figures.js";
import { measuredCar } from "../../views/measured.js";
import { csv } from "./csv.js";
import { json, quantity, rounded } from "./json.js";

export function measuredJson(car: CheckedCar): string {
  const measured = measuredCar(car);
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    when: measured?.when ?? null,
    values: (measured?.rows ?? []).map(({ name, unit, measured: value, predicted, off, allowed, isBeyond }) => ({
      figure: name,
      measured: quantity(value, unit),
      predicted: quantity(predicted, unit),
      off: quantity(off, unit),
      allowed: quantity(allowed, unit),
      beyond: isBeyond,
    })),
  });
}

export function measuredCsv(car: CheckedCar): string {
  const shown = (figure: Parameters<typeof quantity>[0], unit: string): string | number =>
    isAbsent(figure) ? "" : rounded(fromSI(figure, unit) ?? figure);
  return csv([
    ["figure", "measured", "predicted", "off", "allowed", "unit", "beyond"],
    ...(measuredCar(car)?.rows ?? []).map(({ name, unit, measured, predicted, off, allowed, isBeyond }) => [
      name,
      shown(measured, unit),
      shown(predicted, unit),
      shown(off, unit),
      shown(allowed, unit),
      unit,
      isBeyond ? "yes" : "no",
    ]),
  ]);
}
