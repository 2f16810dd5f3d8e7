/**
 * The curves of elements for the panel: forces, motion ratios and rates, those of one kind in one plot.
 *
 * Invariant: an element without a curve is named beside the plot with its reason.
 */
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import { curveSheet, type SheetCurve } from "../curve-sheet.js";
import { type ElementSubject, everyElement } from "../subject.js";
import type { PlaceOf } from "./corner-points.js";
import type { PanelCurve, PanelSeries } from "./data.js";

const GROUPS: Readonly<Record<SheetCurve["kind"], string>> = {
  law: "forces",
  "motion-ratio": "rates",
  "at-wheels": "rates",
};

interface ElementPlot extends PanelCurve {
  readonly series: PanelSeries[];
  /** By reason, the elements that have no curve here. */
  readonly without: Map<string, string[]>;
}

/** Curves of one kind over one axis in one unit stand in one plot; of a corner element the left side says it for both. */
export function elementCurves(car: CheckedCar, placeOf: PlaceOf): readonly PanelCurve[] {
  const plots = new Map<string, ElementPlot>();
  for (const subject of everyElement(car).filter(({ model }) => model.side !== "right")) {
    for (const curve of curveSheet(subject)?.curves ?? []) {
      const key = [curve.kind, curve.x.name, curve.x.unit, curve.y.name, curve.y.unit].join(" | ");
      const plot = plots.get(key) ?? emptyPlot(key, curve);
      plots.set(key, plot);
      const reason = curve.reason ?? (curve.points.length < 2 ? "it is not moved there" : undefined);
      if (reason === undefined) plot.series.push(seriesOf(subject, curve, plot.series, placeOf));
      else plot.without.set(reason, [...(plot.without.get(reason) ?? []), calledIn(subject)]);
    }
  }
  return [...plots.values()].map(({ without, ...plot }) => ({ ...plot, missing: withoutWords(without) }));
}

const withoutWords = (without: ReadonlyMap<string, readonly string[]>): string | undefined =>
  without.size === 0
    ? undefined
    : [...without].map(([reason, names]) => `${sentence([...new Set(names)].join(", "))}: ${reason}.`).join(" ");

const calledIn = ({ axle, model }: ElementSubject): string =>
  axle === undefined ? model.name : `${axle.name} ${model.name}`;

export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Titled by what it shows, and by the mode where its axis is a mode's travel. */
function emptyPlot(id: string, { kind, x, y }: SheetCurve): ElementPlot {
  const [, mode] = /(in \w+)$/.exec(x.name) ?? [];
  const against = kind === "law" ? ` against ${x.name.split(",")[0] ?? x.name}` : mode === undefined ? "" : `, ${mode}`;
  const [group, title] = [GROUPS[kind], `${sentence(y.name)}${against}`];
  const follows = /heave/.test(x.name) ? ({ motion: "heave", scale: fromSI(1, x.unit) ?? 1000 } as const) : undefined;
  return { id, group, title, x, y, follows, series: [], missing: undefined, without: new Map() };
}

function seriesOf(
  subject: ElementSubject,
  { points, title }: SheetCurve,
  beside: readonly PanelSeries[],
  placeOf: PlaceOf,
): PanelSeries {
  const { axle, model } = subject;
  const path = calledIn(subject);
  const label = beside.some((one) => one.label === path) ? `${path}, ${title}` : path;
  return { label, axle: axle?.name, place: placeOf(model.origin), points: points.map(({ x, y }) => [x, y] as const) };
}
