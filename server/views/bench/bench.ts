/** What comes of a table from a bench: lines of the language, curves to look at, and what has to be said about them. */
import type { DimensionName } from "../../../grammar/vocabulary/word.js";
import type { Point } from "../../maths/polyline.js";
import { fromSI, showNumber, toSI } from "../../quantities/index.js";
import type { SheetCurve } from "../curve-sheet.js";
import type { Fit } from "./fit.js";
import type { BenchColumn, BenchTable } from "./table.js";

export type BenchKind = "damper" | "spring" | "ratio";

export interface Imported {
  readonly kind: BenchKind;
  readonly variants: readonly Variant[];
  readonly curves: readonly SheetCurve[];
  readonly remarks: readonly string[];
}

/** One setting of the damper, or all there is. */
export interface Variant {
  /** As the columns are called; empty where there is one. */
  readonly label: string;
  /** Statements of the element's block. */
  readonly lines: readonly string[];
  /** Words of the block whose place they take. */
  readonly replaces: readonly string[];
}

/** A share of the largest measured value, or a value in the unit of the column. */
export type Tolerance = { readonly share: number } | { readonly value: number; readonly unit: string };

export interface BenchOptions {
  readonly tolerance: Tolerance;
  /** Clicks from closed that the damper stands at, where two settings are given. */
  readonly clicks: number | undefined;
  /** `heave`, … of a ratio; undefined for the corner's own. */
  readonly mode: string | undefined;
  /** Part of a column's name: only these columns are taken. */
  readonly column: string | undefined;
}

/** What cannot be made of it, in a sentence. */
export class NoCurve extends Error {}

const digits = 4;
export const figure = (value: number, unit: string): string => `${showNumber(value, digits)} ${unit}`;

/** `name { 10 mm/s: 20 N, … }`, one row a line. */
export const rowsOf = (name: string, points: readonly Point[], x: BenchColumn, y: BenchColumn): string =>
  `${name} {\n${points.map((point) => `${figure(point.x, x.unit)}: ${figure(point.y, y.unit)}`).join("\n")}\n}`;

/** Written with four digits, two points may fall together: the second is left out. */
export function written(points: readonly Point[]): readonly Point[] {
  const rounded = points.map(({ x, y }) => ({ x: Number(showNumber(x, digits)), y: Number(showNumber(y, digits)) }));
  return rounded.filter(({ x }, i) => i === 0 || x > (rounded[i - 1]?.x ?? 0));
}

export const columnsOf = ({ columns }: BenchTable, ...dimensions: readonly DimensionName[]): readonly number[] =>
  columns.flatMap(({ dimension }, index) => (dimensions.includes(dimension) ? [index] : []));

/** Those of the dimensions that the user asked for by a part of their name. */
export const askedColumns = (
  table: BenchTable,
  column: string | undefined,
  ...dimensions: readonly DimensionName[]
): readonly number[] =>
  columnsOf(table, ...dimensions).filter(
    (index) => column === undefined || table.columns[index]?.name.toLowerCase().includes(column.toLowerCase()) === true,
  );

/** In the unit of the column. */
export function allowedOff(tolerance: Tolerance, values: readonly Point[], unit: string): number {
  if ("share" in tolerance) return tolerance.share * Math.max(...values.map(({ y }) => Math.abs(y)), 0);
  return fromSI(toSI(tolerance.value, tolerance.unit) ?? 0, unit) ?? 0;
}

export const pointsOf = ({ rows }: BenchTable, x: number, y: number): readonly Point[] =>
  rows.map(({ values }) => ({ x: values[x] ?? 0, y: values[y] ?? 0 }));

export function sheetCurve(
  title: string,
  fit: Pick<Fit, "points">,
  raw: readonly Point[],
  x: BenchColumn,
  y: BenchColumn,
  words: readonly [x: string, y: string],
): SheetCurve {
  return {
    title,
    kind: "law",
    x: { name: words[0], unit: x.unit },
    y: { name: words[1], unit: y.unit },
    points: fit.points,
    marks: [],
    beside: [{ label: "measured", points: [...raw].sort((a, b) => a.x - b.x) }],
    reason: undefined,
  };
}

/** "bump: 5 of 240 points, residual 1.2 N root mean square, 4.1 N at most (tolerance 9.4 N)" */
export function residualWords(name: string, fit: Fit, count: number, tolerance: number, unit: string): string {
  const told = (value: number): string => `${showNumber(value < 1e-6 * tolerance ? 0 : value, 3)} ${unit}`;
  const [rms, largest, allowed] = [fit.rms, fit.largest, tolerance].map(told);
  const points = fit.points.length === 1 ? "1 point" : `${fit.points.length} points`;
  const repeated =
    fit.repeated === 0 ? "" : `; ${fit.repeated} rows share their value with another and are taken by their mean`;
  const wide =
    fit.largest > 2 * tolerance
      ? "; the measured points spread by more than the tolerance: a loop, friction or noise"
      : "";
  return `${name}: ${points} for ${count} measured, residual ${rms} root mean square, ${largest} at most (tolerance ${allowed})${repeated}${wide}`;
}
