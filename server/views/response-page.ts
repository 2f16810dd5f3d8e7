/** Transfer functions of one car or set-up as a table of text: where each peaks, and its gain at a few frequencies. */
import type { CarRide } from "../analyses/whole-car/car-ride.js";
import { type Quantity, type ResponseCurve, ROAD_MOTIONS } from "../analyses/whole-car/frequency-response.js";
import type { CheckedCar } from "../findings/context.js";
import { showQuantity } from "../quantities/index.js";
import { titleOf } from "./car-title.js";
import { isAbsent, showFigure } from "./figures.js";
import { nameOfCase } from "./modes-page.js";
import type { RatesPage } from "./rates-page.js";
import { left, right, type Section } from "./section.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

export type Response = Parameters<CarRide["response"]>[1];

/** What `--road` may say, the usual one first. */
export const roadMotions = ROAD_MOTIONS;

/** Of the road's height: N/mm, mm/mm, deg/mm. */
export function unitOfGain(quantity: Quantity, unit: ShowUnit): string {
  if (quantity === "load") return unit("rate");
  const length = unit("length");
  return quantity === "angle" ? `deg/${length}` : `${length}/${length}`;
}

const MOST_SHOWN = 6;

export function responsePage(car: CheckedCar, asked: Response, at: string | undefined): RatesPage {
  const unit = unitsOfCar(car.model);
  const title = titleOf(car.model);
  const found = car.ride.response(at, asked);
  if (isAbsent(found)) return { title, sections: [], reasons: [found.reason] };
  const { frequencies } = asked;
  const shown = spread(frequencies.length);
  const section: Section = {
    title: `Gain over the height of the road, ${asked.motion}, ${nameOfCase(at)}`,
    columns: [
      left("of"),
      left("figure"),
      left("unit"),
      right("largest"),
      right("at"),
      ...shown.map((index) => right(showQuantity(frequencies[index]!, "Hz", 3))),
    ],
    rows: found.curves.map((curve) => rowOf(curve, frequencies, shown, unitOfGain(curve.quantity, unit))),
  };
  return { title, sections: [section], reasons: [], notes: [LINEAR] };
}

function rowOf(
  { of, name, gain }: ResponseCurve,
  frequencies: readonly number[],
  shown: readonly number[],
  unit: string,
): readonly string[] {
  const peak = gain.reduce((best, value, index) => (value > gain[best]! ? index : best), 0);
  return [
    of.replace("-", " "),
    name,
    unit,
    showSmall(gain[peak]!, unit),
    showQuantity(frequencies[peak]!, "Hz", 3),
    ...shown.map((index) => showSmall(gain[index]!, unit)),
  ];
}

/** A gain without its unit; below a hundred-thousandth of it, none that anybody could measure. */
function showSmall(value: number, unit: string): string {
  const [text = ""] = showFigure(value, unit, 3).split(" ");
  return Number(text) < 1e-5 ? "0" : text;
}

/** At most six of the frequencies, evenly among them, first and last included. */
function spread(count: number): readonly number[] {
  const many = Math.min(count, MOST_SHOWN);
  return Array.from({ length: many }, (_, i) => (many === 1 ? 0 : Math.round((i * (count - 1)) / (many - 1))));
}

const LINEAR =
  "gains of small movements: dampers with their low-speed coefficients, springs, gaps and stops as they stand there; phases are in CSV and JSON";
