/** A spring's bench: force against deflection. A straight one is a rate, any other a curve from where it begins to carry. */
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
import { fitted, straight } from "./fit.js";
import type { BenchColumn, BenchTable } from "./table.js";

const replaces = ["rate", "curve", "coil", "power-law", "squat", "rise", "fit"];

export function springOf(table: BenchTable, { tolerance, column }: BenchOptions): Imported {
  const [deflection] = columnsOf(table, "length", "angle");
  const forces = askedColumns(table, column, "force", "moment");
  const [force, more] = forces;
  if (deflection === undefined) throw new NoCurve("a spring needs a column of deflection, such as deflection [mm]");
  if (force === undefined) throw new NoCurve("a spring needs a column of force, such as force [N]");
  if (more !== undefined) throw new NoCurve("it has several columns of force: choose one with --column");
  const [x, y] = [table.columns[deflection], table.columns[force]] as [BenchColumn, BenchColumn];
  const raw = pointsOf(table, deflection, force);
  const allowed = allowedOff(tolerance, raw, y.unit);
  const line = straight(raw);
  const words = ["deflection", y.dimension === "moment" ? "moment" : "force"] as const;
  const rate = `${y.unit}/${x.unit}`;
  if (line.slope > 0 && line.largest <= allowed) {
    const ends = [Math.min(...raw.map((point) => point.x)), Math.max(...raw.map((point) => point.x))];
    const points = ends.map((at) => ({ x: at, y: line.offset + line.slope * at }));
    const told = `a straight line of ${figure(line.slope, rate)} passes all ${raw.length} points within ${figure(line.largest, y.unit)} (tolerance ${figure(allowed, y.unit)})`;
    const offset =
      Math.abs(line.offset) > allowed
        ? [
            `the line carries ${figure(line.offset, y.unit)} at a deflection of 0 ${x.unit}: preload of the bench, not entered`,
          ]
        : [];
    return {
      kind: "spring",
      variants: [{ label: "", lines: [`rate ${figure(line.slope, rate)}`], replaces }],
      curves: [sheetCurve("force against deflection", { points }, raw, x, y, words)],
      remarks: [told, ...offset],
    };
  }
  const carrying = raw.filter((point) => point.x >= 0 && point.y >= 0);
  const fit = carrying.length < 2 ? undefined : fitted(carrying, allowed, "chord", { x: 0, y: 0 });
  const points = fit === undefined ? [] : written([{ x: 0, y: 0 }, ...fit.points]);
  if (fit === undefined || points.length < 2 || !rises(points))
    throw new NoCurve("no force that rises with deflection; compression is entered positive");
  const left = raw.length - carrying.length;
  return {
    kind: "spring",
    variants: [{ label: "", lines: [rowsOf("curve", points, x, y)], replaces }],
    curves: [sheetCurve("force against deflection", { points }, carrying, x, y, words)],
    remarks: [
      residualWords("curve", { ...fit, points }, carrying.length, allowed, y.unit),
      ...(left === 0 ? [] : [`${left} rows below nought are left out`]),
    ],
  };
}

const rises = (points: readonly { readonly y: number }[]): boolean => (points.at(-1)?.y ?? 0) > (points[0]?.y ?? 0);
