/** A car on a random road for machines: JSON, whose form is described by `schema/road.json`, and CSV. */
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent } from "../../views/figures.js";
import { type roadPage, roadRows } from "../../views/road-page.js";
import { unitsOfCar } from "../../views/units-of-car.js";
import { csv } from "./csv.js";
import { absence, json, quantity, rounded } from "./json.js";

type Road = Parameters<typeof roadPage>[1];

export function roadJson(car: CheckedCar, road: Road, at: string | undefined): string {
  const found = car.ride.road(at, road);
  const unit = unitsOfCar(car.model);
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    case: at ?? null,
    road: { class: road.class, speed: quantity(road.speed, unit("speed")), sides: road.sides },
    ...(isAbsent(found)
      ? absence(found)
      : {
          figures: roadRows(found, unit).map(({ subject, name, figure, unit: shown }) => ({
            of: subject,
            figure: name,
            rms: quantity(figure, shown),
          })),
        }),
  });
}

export function roadCsv(car: CheckedCar, road: Road, at: string | undefined): string {
  const found = car.ride.road(at, road);
  const rows = isAbsent(found) ? [] : roadRows(found, unitsOfCar(car.model));
  return csv([
    ["of", "figure", "rms", "unit"],
    ...rows.map(({ subject, name, figure, unit }) => [
      subject,
      name,
      isAbsent(figure) ? "" : rounded(fromSI(figure, unit) ?? figure),
      unit,
    ]),
  ]);
}
