/** The rates of an axle: as a hover table and as one line above it. */
import { restWords } from "./rest-words.js";
import type { AxleRates, Figure } from "../analyses/results.js";
import type { CheckedCar } from "../findings/context.js";
import type { AxleName } from "../model/origin.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import { isAbsent, showFigure, showShare } from "./figures.js";
import { unitsOfCar } from "./units-of-car.js";

interface Row {
  readonly name: string;
  readonly figure: Figure;
  readonly dimension: DimensionName;
}

export function axleRows(rates: AxleRates): readonly Row[] {
  return [
    { name: "heave rate (both wheels)", figure: rates.heaveRate, dimension: "rate" },
    { name: "roll stiffness", figure: rates.rollStiffness, dimension: "torsional-rate" },
    { name: "single wheel, left", figure: rates.wheelRate.left, dimension: "rate" },
    { name: "single wheel, right", figure: rates.wheelRate.right, dimension: "rate" },
    { name: "with tyres: heave", figure: rates.rideRate.heave, dimension: "rate" },
    { name: "with tyres: roll", figure: rates.rideRate.roll, dimension: "torsional-rate" },
    { name: "with tyres: single wheel", figure: rates.rideRate.single, dimension: "rate" },
    { name: "heave frequency", figure: rates.heaveFrequency, dimension: "frequency" },
    { name: "heave damping", figure: rates.heaveDamping, dimension: "damping" },
    { name: "roll damping", figure: rates.rollDamping, dimension: "torsional-damping" },
  ];
}

export function axleSummary(car: CheckedCar, axle: AxleName): string {
  const rates = car.analysis.axles[axle]?.rates;
  const title = `**${axle} axle** of ${car.model.setup ?? car.model.name}, ${restWords(car, [axle])}`;
  if (rates === undefined) return `${title}\n\nNot computed: the axle is incomplete.`;
  const unit = unitsOfCar(car.model);
  const rows = axleRows(rates).map(
    ({ name, figure, dimension }) => `| ${name} | ${showFigure(figure, unit(dimension))} |`,
  );
  const share = `| share of the car's roll stiffness | ${showShare(rates.rollStiffnessShare)} |`;
  return [title, "", "| | |", "| --- | ---: |", ...rows, share].join("\n");
}

/** "heave 171.3 N/mm · roll 612 N*m/deg · wheel 58.8 N/mm · 52.1 % of the roll stiffness". */
export function axleLine(car: CheckedCar, axle: AxleName): string {
  const rates = car.analysis.axles[axle]?.rates;
  if (rates === undefined) return "not computed: the axle is incomplete";
  const unit = unitsOfCar(car.model);
  if (isAbsent(rates.heaveRate)) return `rates: none (${rates.heaveRate.reason})`;
  const parts = [
    `heave ${showFigure(rates.heaveRate, unit("rate"))}`,
    `roll ${showFigure(rates.rollStiffness, unit("torsional-rate"))}`,
    `single wheel ${showFigure(rates.wheelRate.left, unit("rate"))}`,
  ];
  if (!isAbsent(rates.heaveFrequency)) parts.push(showFigure(rates.heaveFrequency, "Hz", 3));
  if (!isAbsent(rates.rollStiffnessShare)) parts.push(`${showShare(rates.rollStiffnessShare)} of the roll stiffness`);
  return parts.join(" · ");
}
