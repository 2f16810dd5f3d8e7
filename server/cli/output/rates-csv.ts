/** Rates as CSV: one figure a row, so that a spreadsheet can filter and pivot. */
import type { Figure } from "../../analyses/results.js";
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import { axleRows } from "../../views/axle-summary.js";
import { isAbsent } from "../../views/figures.js";
import { everyElement } from "../../views/subject.js";
import { unitsOfCar } from "../../views/units-of-car.js";
import { csv } from "./csv.js";
import { rounded } from "./json.js";

type Row = readonly [subject: string, figure: string, value: number | string, unit: string];

export function ratesCsv(car: CheckedCar): string {
  return csv([["subject", "figure", "value", "unit"], ...axleFigures(car), ...carFigures(car), ...elementFigures(car)]);
}

function axleFigures(car: CheckedCar): readonly Row[] {
  const unit = unitsOfCar(car.model);
  return (["front", "rear"] as const).flatMap((name) => {
    const rates = car.analysis.axles[name]?.rates;
    return rates === undefined
      ? []
      : axleRows(rates).map((row) => rowOf(name, row.name, row.figure, unit(row.dimension)));
  });
}

/** About the centre of gravity; what couples heave with a turn is in the JSON. */
function carFigures(car: CheckedCar): readonly Row[] {
  const unit = unitsOfCar(car.model);
  const { front, rear } = car.analysis.axles;
  if (front === undefined || rear === undefined) return [];
  const { springs, withTyres } = car.analysis.modal;
  const named = [
    ["springs", springs],
    ["with tyres", withTyres],
  ] as const;
  return named.flatMap(([name, { body }]) => [
    rowOf("car", `heave rate, ${name}`, body.heave, unit("rate")),
    rowOf("car", `pitch stiffness, ${name}`, body.pitch, unit("torsional-rate")),
    rowOf("car", `roll stiffness, ${name}`, body.roll, unit("torsional-rate")),
  ]);
}

function elementFigures(car: CheckedCar): readonly Row[] {
  return everyElement(car).flatMap(({ figures }) => {
    if (figures === undefined) return [];
    const { path, sensitivity, leak, torsional, measure } = figures;
    const motion = isAbsent(sensitivity)
      ? []
      : (["heave", "roll", "pitch", "warp"] as const).map((mode) =>
          rowOf(path, `motion in ${mode}`, sensitivity[mode], measure === "volume" ? "m^2" : torsional ? "rad/m" : "1"),
        );
    if (leak === undefined || isAbsent(leak)) return motion;
    return [
      ...motion,
      rowOf(path, `leak into ${leak.mode} at design`, leak.firstOrder, "1"),
      rowOf(path, `leak into ${leak.mode} over travel`, leak.finite, "1"),
      rowOf(path, `leak into ${leak.mode} of the rate`, leak.rate, "1"),
    ];
  });
}

/** Sensitivities and leaks stay plain numbers; everything else is turned into its unit. */
function rowOf(subject: string, name: string, figure: Figure, unit: string): Row {
  if (isAbsent(figure)) return [subject, name, "", unit];
  return [subject, name, rounded(unit === "1" ? figure : (fromSI(figure, unit) ?? figure)), unit];
}
