/** A curve of an element as a plot: which line style and symbol stands for what, and the whole in words. */
import type { MarkKind } from "../analyses/curve-data.js";
import { showNumber } from "../quantities/index.js";
import type { CurveSheet, SheetCurve, SheetMark } from "./curve-sheet.js";
import type { LineStyleName, SignName } from "./drawings/palette.js";
import { drawPlot, type Plot, type PlotAxis, type PlotMarks, svgOf } from "./drawings/plot.js";

const SIGNS: Readonly<Record<MarkKind, SignName>> = {
  static: "dot",
  carries: "triangle",
  "no-load": "open-diamond",
  stage: "diamond",
  knee: "plus",
  "table-end": "asterisk",
  bind: "cross",
  "stroke-end": "square",
  stress: "star",
  "gas-end": "open-triangle",
  "travel-end": "open-square",
  "link-binds": "times",
};

const BESIDE: readonly LineStyleName[] = ["dashed", "dotted", "dash-dotted"];

const shown = (value: number, { unit }: PlotAxis): string => `${showNumber(value, 3)} ${unit}`.trim();

/** Marks of one kind together, in the order in which they are met. */
function byKind(marks: readonly SheetMark[]): readonly (readonly [MarkKind, readonly SheetMark[]])[] {
  const kinds = new Map<MarkKind, SheetMark[]>();
  for (const mark of marks) kinds.set(mark.what, [...(kinds.get(mark.what) ?? []), mark]);
  return [...kinds];
}

/** "stage used up at -4.1 mm and 4.2 mm". */
function places(marks: readonly SheetMark[], x: PlotAxis): string {
  const at = [...new Set(marks.map((mark) => shown(mark.x, x)))];
  return `${marks[0]?.label ?? ""} at ${at.join(" and ")}`;
}

/** From end to end, and every mark with its figures. */
function describe(path: string, { title, x, y, points, marks }: SheetCurve): string {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return `${path}: ${title}`;
  const at = (point: { readonly x: number; readonly y: number }): string =>
    `${shown(point.y, y)} at ${shown(point.x, x)}`;
  const told = marks.map((mark) => `${mark.label} ${at(mark)}`);
  return `${path}, ${title}: from ${at(first)} to ${at(last)}${told.length === 0 ? "" : `; ${told.join("; ")}`}`;
}

export function plotOf(path: string, curve: SheetCurve): Plot {
  const marks = byKind(curve.marks).map(
    ([what, same]): PlotMarks => ({ points: same, sign: SIGNS[what], label: places(same, curve.x) }),
  );
  const beside = curve.beside.map(({ label, points }, i) => ({ label, points, style: BESIDE[i] ?? "dotted" }));
  return {
    description: describe(path, curve),
    x: curve.x,
    y: { ...curve.y, fromZero: curve.kind === "law" },
    lines: [...beside, { points: curve.points, style: "main" }],
    marks,
  };
}

/** All curves of an element below each other in one image; those that are not to be had are left out. */
export function sheetSvg(title: string, { path, curves }: CurveSheet): string {
  const drawings = curves.flatMap((curve) => (curve.reason === undefined ? [drawPlot(plotOf(path, curve))] : []));
  return svgOf(drawings, title);
}
