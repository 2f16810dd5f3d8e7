/** What a random road does to one car or set-up, as tables of text. */
import type { RoadAsked } from "../analyses/whole-car/car-ride.js";
import type { RoadResponse } from "../analyses/whole-car/road.js";
import type { Figure } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import { showQuantity } from "../quantities/index.js";
import { titleOf } from "./car-title.js";
import { isAbsent, showFigure } from "./figures.js";
import { nameOfCase, wheelName } from "./modes-page.js";
import type { RatesPage } from "./rates-page.js";
import { cell, left, right, type Section } from "./section.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

interface RoadRow {
  readonly subject: string;
  readonly name: string;
  readonly figure: Figure;
  readonly unit: string;
}

export function roadRows({ wheels, front, rear, body }: RoadResponse, unit: ShowUnit): readonly RoadRow[] {
  const length = unit("length");
  return [
    ...(
      [
        ["front", front],
        ["rear", rear],
      ] as const
    ).flatMap(([subject, axle]) => [
      { subject, name: "contact", figure: axle.contact, unit: "%" },
      { subject, name: "platform", figure: axle.platform, unit: length },
    ]),
    ...wheels.flatMap(({ contact, load, travel, travelSpeed }, i) => {
      const subject = wheelName(i);
      return [
        { subject, name: "contact", figure: contact, unit: "%" },
        { subject, name: "tyre load", figure: load, unit: unit("force") },
        { subject, name: "travel", figure: travel, unit: length },
        { subject, name: "speed of travel", figure: travelSpeed, unit: "mm/s" },
      ];
    }),
    { subject: "body", name: "heave acceleration", figure: body.heave, unit: "g" },
  ];
}

export function roadPage(car: CheckedCar, road: RoadAsked, at: string | undefined): RatesPage {
  const unit = unitsOfCar(car.model);
  const reasons = new Set<string>();
  const found = car.ride.road(at, road);
  if (isAbsent(found)) return { title: titleOf(car.model), sections: [], reasons: [found.reason] };
  const section: Section = {
    title: `Root mean squares ${nameOfCase(at)} on a road of class ${road.class} at ${showQuantity(road.speed, unit("speed"), 4)}, left and right ${road.sides}`,
    columns: [left("of"), left("figure"), right("value")],
    rows: roadRows(found, unit).map(({ subject, name, figure, unit: shown }) => [
      subject,
      name,
      cell(figure, shown, reasons),
    ]),
  };
  const raised: Section = {
    title: "What it adds to the mean ride height",
    columns: [left("of"), right("value")],
    rows: [
      ["front", showFigure(found.front.raised, unit("length"), 3)],
      ["rear", showFigure(found.rear.raised, unit("length"), 3)],
    ],
  };
  return { title: titleOf(car.model), sections: [section, raised], reasons: [...reasons], notes: [LINEAR] };
}

const LINEAR =
  "dampers, gaps, stops and springs that are not straight count with the line nearest to them for the movements they meet, tyres with their rate; no wheel leaves the road";
