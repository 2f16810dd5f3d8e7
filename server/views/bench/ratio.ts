/** Travel of the wheel against deflection of an element, as two dials show it: a measured motion ratio. */
import {
  allowedOff,
  askedColumns,
  type BenchOptions,
  columnsOf,
  figure,
  type Imported,
  NoCurve,
  pointsOf,
  residualWords,
  rowsOf,
  sheetCurve,
  written,
} from "./bench.js";
import { showNumber } from "../../quantities/index.js";
import { fitted, straight } from "./fit.js";
import type { BenchColumn, BenchTable } from "./table.js";

export function ratioOf(table: BenchTable, { tolerance, mode, column }: BenchOptions): Imported {
  const lengths = columnsOf(table, "length");
  const isWheel = (index: number): boolean => /wheel|travel|hub|contact/i.test(table.columns[index]?.name ?? "");
  const travel = lengths.find(isWheel) ?? lengths[0];
  const others = askedColumns(table, column, "length", "angle").filter((index) => index !== travel);
  const [deflection, more] = others;
  if (travel === undefined || deflection === undefined)
    throw new NoCurve(
      "a motion ratio needs columns of wheel travel and of deflection, such as travel [mm], damper [mm]",
    );
  if (more !== undefined) throw new NoCurve("it has several columns of deflection: choose one with --column");
  const [x, y] = [table.columns[travel], table.columns[deflection]] as [BenchColumn, BenchColumn];
  const raw = pointsOf(table, travel, deflection);
  const allowed = allowedOff(tolerance, raw, y.unit);
  const fit = fitted(raw, allowed, "free");
  if (fit === undefined) throw new NoCurve("it has fewer than two different travels");
  const points = written(fit.points);
  const mean = straight(raw).slope;
  const unit = x.unit === y.unit ? "" : ` ${y.unit}/${x.unit}`;
  const head = mode === undefined ? "ratio" : `ratio ${mode}`;
  return {
    kind: "ratio",
    variants: [{ label: "", lines: [rowsOf(head, points, x, y)], replaces: [head] }],
    curves: [sheetCurve("deflection against travel", { points }, raw, x, y, ["travel", "deflection"])],
    remarks: [
      residualWords("ratio", fit, raw.length, allowed, y.unit),
      `the mean ratio is ${showNumber(mean, 4)}${unit}, over ${figure(points[0]?.x ?? 0, x.unit)} to ${figure(points.at(-1)?.x ?? 0, x.unit)}`,
    ],
  };
}
