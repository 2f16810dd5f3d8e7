/** Sweeps for every format of `cases --sweep`. JSON is described by `schema/case-sweep.json`. */
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent } from "../../views/figures.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { sweepColumns, sweepPage, sweepUnit } from "../../views/sweep-page.js";
import { unitsOfCar } from "../../views/units-of-car.js";
import { csv } from "./csv.js";
import { json, quantity, rounded } from "./json.js";
import { pageText } from "./rates-text.js";

type Sweep = Parameters<typeof sweepPage>[1];

function sweepCsv(car: CheckedCar, sweep: Sweep): string {
  const unit = unitsOfCar(car.model);
  const columns = sweepColumns(sweep, unit);
  const own = sweepUnit(sweep, unit);
  return csv([
    [`${sweep.over} (${own})`, "branch", ...columns.map(({ key, unit: in_ }) => `${key} (${in_})`)],
    ...sweep.points.map(({ value, branch, figures }) => [
      rounded(fromSI(value, own) ?? value),
      branch,
      ...columns.map(({ of, unit: in_ }) => {
        const figure = of(figures);
        return isAbsent(figure) ? "" : rounded(fromSI(figure, in_) ?? figure);
      }),
    ]),
  ]);
}

function sweepJson(car: CheckedCar, sweep: Sweep): string {
  const unit = unitsOfCar(car.model);
  const own = sweepUnit(sweep, unit);
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    over: sweep.over,
    points: sweep.points.map(({ value, branch, figures }) => ({
      value: quantity(value, own),
      branch,
      figures: Object.fromEntries(
        sweepColumns(sweep, unit).map(({ key, of, unit: in_ }) => [key, quantity(of(figures), in_)]),
      ),
    })),
    events: sweep.events.map(({ what, name, value }) => ({ what, name, at: quantity(value, own) })),
    end: sweep.end === undefined ? null : { at: quantity(sweep.end.value, own), reason: sweep.end.why },
  });
}

export const sweepOutputs = {
  text: (car: CheckedCar, sweep: Sweep) => pageText(sweepPage(car, sweep)),
  markdown: (car: CheckedCar, sweep: Sweep) => pageMarkdown(sweepPage(car, sweep)),
  csv: sweepCsv,
  json: sweepJson,
} as const;
