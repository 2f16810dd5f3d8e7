/** The adjustment matrix in every format. JSON is described by `schema/adjust.json`. */
import type { Figure } from "../../analyses/results.js";
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import type { AdjustmentMatrix } from "../../snapshot/adjust.js";
import { adjustPage } from "../../views/adjust-page.js";
import { isAbsent } from "../../views/figures.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { type ShowUnit, unitsOfCar } from "../../views/units-of-car.js";
import { csv } from "./csv.js";
import { json, quantity, rounded } from "./json.js";
import { pageText } from "./rates-text.js";

type Column = AdjustmentMatrix["figures"][number];

export const adjustOutputs = {
  text: (car: CheckedCar, matrix: AdjustmentMatrix) => pageText(adjustPage(car, matrix)),
  markdown: (car: CheckedCar, matrix: AdjustmentMatrix) => pageMarkdown(adjustPage(car, matrix)),
  csv: adjustCsv,
  json: adjustJson,
} as const;

function unitOf({ group, name }: Column, unit: ShowUnit): string {
  if (group === "share") return "%";
  if (group === "height") return unit("length");
  const isAngular = /roll|pitch/.test(name);
  if (group === "rate") return unit(isAngular ? "torsional-rate" : "rate");
  return unit(isAngular ? "torsional-damping" : "damping");
}

const numberIn = (figure: Figure | undefined, unit: string): number | string =>
  typeof figure === "number" ? rounded(fromSI(figure, unit) ?? figure) : "";

function adjustCsv(car: CheckedCar, { figures, rows }: AdjustmentMatrix): string {
  const unit = unitsOfCar(car.model);
  const units = figures.map((figure) => unitOf(figure, unit));
  return csv([
    ["path", "for", "now", "step", "independence", ...figures.map(({ name }, i) => `${name} (${units[i] ?? ""})`)],
    ...rows.map(({ path, now, step, independence, changes, for: modes }) => [
      path,
      modes.join(" and "),
      now,
      step,
      typeof independence === "number" ? rounded(independence) : "",
      ...figures.map((_, i) => numberIn(changes[i], units[i] ?? "")),
    ]),
  ]);
}

function adjustJson(car: CheckedCar, { figures, rows, offDiagonals, stuck }: AdjustmentMatrix): string {
  const unit = unitsOfCar(car.model);
  const plain = (figure: Figure) => (isAbsent(figure) ? { absent: figure.reason } : rounded(figure));
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    adjusters: rows.map(({ path, now, step, independence, changes, relative, for: modes }) => ({
      path,
      for: modes,
      now,
      step,
      independence: plain(independence),
      changes: Object.fromEntries(
        figures.map((figure, i) => [
          figure.name,
          { by: quantity(changes[i] ?? 0, unitOf(figure, unit)), relative: plain(relative[i] ?? 0) },
        ]),
      ),
    })),
    offDiagonals: offDiagonals.map(({ path, figure, relative, overTarget }) => ({
      path,
      figure,
      relative: rounded(relative),
      overTarget: overTarget === undefined ? null : rounded(overTarget),
    })),
    stuck: stuck.map(({ path, why }) => ({ path, reason: why })),
  });
}
