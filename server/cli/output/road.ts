/** A car on a random road for machines: JSON, whose form is described by `schema/road.json`, and CSV. */
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent } from "../../views/figures.js";
import { type roadPage, roadRows } from "../../views/road-page.js";
import { type ShowUnit, unitsOfCar } from "../../views/units-of-car.js";
import { csv } from "./csv.js";
import { absence, json, quantity, rounded } from "./json.js";

type RoadResponse = Parameters<typeof roadRows>[0];
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
          meanRideHeight: {
            front: quantity(found.front.raised, unit("length")),
            rear: quantity(found.rear.raised, unit("length")),
          },
        }),
  });
}

/** What the road adds to the mean ride heights, a value and no root mean square. */
const raisedRows = ({ front, rear }: RoadResponse, unit: ShowUnit) =>
  [
    { subject: "front", figure: front.raised },
    { subject: "rear", figure: rear.raised },
  ].map((row) => ({ ...row, name: "change of mean ride height", unit: unit("length") }));

export function roadCsv(car: CheckedCar, road: Road, at: string | undefined): string {
  const found = car.ride.road(at, road);
  const unit = unitsOfCar(car.model);
  const rows = isAbsent(found) ? [] : [...roadRows(found, unit), ...raisedRows(found, unit)];
  return csv([
    ["of", "figure", "value", "unit"],
    ...rows.map(({ subject, name, figure, unit: shown }) => [
      subject,
      name,
      isAbsent(figure) ? "" : rounded(fromSI(figure, shown) ?? figure),
      shown,
    ]),
  ]);
}
