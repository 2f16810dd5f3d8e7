/** Rates at the positions of a load case, for every format of `rates --at`. JSON is described by `schema/rates-at.json`. */
import type { CheckedCar } from "../../findings/context.js";
import { axleRateRows } from "../../views/case-rows.js";
import { ratesAtPage, whyNone } from "../../views/cases-page.js";
import { isAbsent } from "../../views/figures.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { unitsOfCar } from "../../views/units-of-car.js";
import { fromSI } from "../../quantities/index.js";
import { UsageError } from "../usage-error.js";
import { csv } from "./csv.js";
import { json, quantity, rounded } from "./json.js";
import { pageText } from "./rates-text.js";

type Solved = Extract<NonNullable<ReturnType<CheckedCar["cases"]["at"]>>, { kind: "equilibrium" }>;

/** @throws a usage error where the car has no such case, or no equilibrium in it */
function solvedAt(car: CheckedCar, name: string): Solved {
  const result = car.cases.at(name);
  if (result === undefined)
    throw new UsageError(`there is no case ${name}; the cases are ${car.cases.names.join(", ") || "none"}`);
  if (result.kind !== "equilibrium") throw new UsageError(`${name}: ${whyNone(result) ?? ""}`);
  return result;
}

function page(car: CheckedCar, name: string) {
  solvedAt(car, name);
  return ratesAtPage(car, name) ?? { title: name, sections: [], reasons: [] };
}

const rowsAt = (car: CheckedCar, name: string) => {
  const { front, rear } = solvedAt(car, name);
  const unit = unitsOfCar(car.model);
  return [...axleRateRows("front", front, unit), ...axleRateRows("rear", rear, unit)];
};

/** Motions are plain ratios (rad/m where torsional, m² where a volume is swept), as in `rates`. */
export const ratesAt = {
  text: (car: CheckedCar, name: string) => pageText(page(car, name)),
  markdown: (car: CheckedCar, name: string) => pageMarkdown(page(car, name)),
  csv: (car: CheckedCar, name: string) =>
    csv([
      ["subject", "figure", "value", "unit"],
      ...rowsAt(car, name).map(
        ({ subject, name: figure, figure: value, unit }) =>
          [subject, figure, isAbsent(value) ? "" : rounded(fromSI(value, unit) ?? value), unit] as const,
      ),
      ...solvedAt(car, name).elements.flatMap(({ path, sensitivity }) =>
        Object.entries(sensitivity).map(([mode, value]) => [path, `motion in ${mode}`, rounded(value), "1"] as const),
      ),
    ]),
  json: (car: CheckedCar, name: string) =>
    json({
      car: car.model.name,
      setup: car.model.setup ?? null,
      at: name,
      rates: rowsAt(car, name).map(({ subject, name: figure, figure: value, unit }) => ({
        axle: subject,
        figure,
        value: quantity(value, unit),
      })),
      elements: solvedAt(car, name).elements.map(({ path, sensitivity: { heave, pitch, roll, warp } }) => ({
        path,
        sensitivity: { heave: rounded(heave), pitch: rounded(pitch), roll: rounded(roll), warp: rounded(warp) },
      })),
    }),
} as const;
