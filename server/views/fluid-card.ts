/** What gas and oil do in an element: pressure at rest and over the travel, and how much of the gas volume is swept. */
import type { ElementFigures } from "../analyses/results.js";
import { isAbsent, showFigure, showShare } from "./figures.js";
import type { ElementSubject } from "./subject.js";
import type { ShowUnit } from "./units-of-car.js";

/** Lines for the card of an element; none where there is neither gas nor oil. */
export function fluidRows(element: ElementSubject, figures: ElementFigures, unit: ShowUnit): readonly string[] {
  const { fluid } = figures;
  if (fluid === undefined) return [];
  const count =
    fluid.volumes > 1 ? [`${fluid.volumes} volumes of oil; motion and own rate are those of the first`] : [];
  const rows = [...count, `${figures.measure === "volume" ? "oil" : "gas"} ${pressures(fluid, unit)}`];
  if (fluid.used !== undefined)
    rows.push(`sweeps ${showShare(fluid.used)} of the gas volume at most${left(figures, unit)}`);
  return [...rows, ...trimRow(element)];
}

function pressures({ pressure, over }: NonNullable<ElementFigures["fluid"]>, unit: ShowUnit): string {
  const at = (value: number): string => showFigure(value, unit("pressure"), 3);
  const rest = `at ${showFigure(pressure, unit("pressure"), 3)} above atmosphere at rest`;
  return isAbsent(over) ? rest : `${rest}, ${at(over.lowest)} to ${at(over.highest)} over the travel`;
}

function left({ fluid, measure }: ElementFigures, unit: ShowUnit): string {
  const ends = fluid?.ends;
  if (ends === undefined || isAbsent(ends)) return "";
  const what = measure === "volume" ? unit("volume") : unit("length");
  return `; next to none would be left after ${showFigure(ends, what, 3)}`;
}

/** A seat is a length: whoever sets the pressure instead changes what is written. */
function trimRow({ model, car, axle }: ElementSubject): readonly string[] {
  const trim = axle && car.analysis.axles[axle.name]?.rates.trim;
  if (trim === undefined || isAbsent(trim) || !trim.some(({ path }) => path === model.path)) return [];
  return ["carries the weight by its length: its pressure at rest is that of the charge, compressed by the trim"];
}
