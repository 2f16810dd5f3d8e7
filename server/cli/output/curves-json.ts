/** Curves of an element for a machine, described by `schema/curves.json`. */
import type { CarModel } from "../../model/car.js";
import type { CurveSheet, SheetCurve, SheetMark } from "../../views/curve-sheet.js";
import { json, rounded } from "./json.js";

type Pair = readonly [number, number];

const pair = ({ x, y }: { readonly x: number; readonly y: number }): Pair => [rounded(x), rounded(y)];

const markJson = (mark: SheetMark) => ({ what: mark.what, at: pair(mark) });

function curveJson({ title, kind, x, y, points, marks, beside, reason }: SheetCurve): object {
  const head = { title, kind, x, y };
  if (reason !== undefined) return { ...head, absent: reason };
  return {
    ...head,
    points: points.map(pair),
    marks: marks.map(markJson),
    beside: beside.map((other) => ({ label: other.label, points: other.points.map(pair) })),
  };
}

export function curvesJson(model: CarModel, sheet: CurveSheet): string {
  const { path, kind } = sheet;
  return json({
    car: model.name,
    setup: model.setup ?? null,
    element: path,
    kind,
    curves: sheet.curves.map(curveJson),
  });
}
