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
  const shown = spread(frequencies);
  const section: Section = {
    title: `Gain over the height of the road, ${asked.motion}, ${nameOfCase(at)}`,
    columns: [
      left("of"),
      left("figure"),
      left("unit"),
      right("largest"),
      right("at"),
      ...shown.map(({ value }) => right(showQuantity(value, "Hz", 3))),
    ],
    rows: found.curves.map((curve) => rowOf(curve, frequencies, shown, unitOfGain(curve.quantity, unit))),
  };
  return { title, sections: [section], reasons: [], notes: [LINEAR] };
}

function rowOf(
  { of, name, gain }: ResponseCurve,
  frequencies: readonly number[],
  shown: readonly Place[],
  unit: string,
): readonly string[] {
  const largest = Math.max(...gain);
  return [
    of.replace("-", " "),
    name,
    unit,
    showSmall(largest, unit),
    showQuantity(frequencies[gain.indexOf(largest)] ?? 0, "Hz", 3),
    ...gain.filter((_, index) => shown.some((place) => place.index === index)).map((value) => showSmall(value, unit)),
  ];
}

/** A gain without its unit; below a hundred-thousandth of it, none that anybody could measure. */
function showSmall(value: number, unit: string): string {
  const [text = ""] = showFigure(value, unit, 3).split(" ");
  return Number(text) < 1e-5 ? "0" : text;
}

interface Place {
  readonly index: number;
  readonly value: number;
}

/** At most six of them, evenly among them, first and last included. */
function spread(frequencies: readonly number[]): readonly Place[] {
  const [last, most] = [frequencies.length - 1, MOST_SHOWN - 1];
  const kept = new Set(Array.from({ length: MOST_SHOWN }, (_, i) => Math.round((i * last) / most)));
  return frequencies.map((value, index) => ({ index, value })).filter(({ index }) => kept.has(index));
}

const LINEAR =
  "gains of small movements: dampers with their low-speed coefficients, springs, gaps and stops as they stand there; phases are in CSV and JSON";
