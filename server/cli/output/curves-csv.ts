/** Curves of an element as CSV: a row a point, full precision; marks and curves beside have their name in their own column. */
import type { CarModel } from "../../model/car.js";
import type { CurveSheet, SheetCurve } from "../../views/curve-sheet.js";
import { csv } from "./csv.js";
import { rounded } from "./json.js";

const HEAD = ["curve", "line", "mark", "x", "x unit", "y", "y unit"];

type Row = readonly (string | number)[];

function rowsOf({ title, x, y, points, marks, beside }: SheetCurve): readonly Row[] {
  const row = (line: string, mark: string, point: { readonly x: number; readonly y: number }): Row => [
    title,
    line,
    mark,
    rounded(point.x),
    x.unit,
    rounded(point.y),
    y.unit,
  ];
  return [
    ...points.map((point) => row("", "", point)),
    ...marks.map((mark) => row("", mark.label, mark)),
    ...beside.flatMap((other) => other.points.map((point) => row(other.label, "", point))),
  ];
}

export const curvesCsv = (_model: CarModel, sheet: CurveSheet): string => csv([HEAD, ...sheet.curves.flatMap(rowsOf)]);
