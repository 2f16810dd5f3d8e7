/**
 * A table from a bench: columns with their unit and what is measured in them. In: cells as text, with the lines that they
 * stand on. Out: numbers, or what is wrong, line by line.
 */
import type { DimensionName } from "../../../grammar/vocabulary/word.js";
import { matchesDimension, parseUnit } from "../../quantities/index.js";

export interface Cells {
  /** Counted from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface BenchColumn {
  /** As in the header, without its unit. */
  readonly name: string;
  readonly unit: string;
  readonly dimension: BenchDimension;
}

export interface BenchRow {
  readonly line: number;
  readonly values: readonly number[];
}

export interface BenchTable {
  /** Those with a unit that a bench measures in. */
  readonly columns: readonly BenchColumn[];
  readonly rows: readonly BenchRow[];
  /** Rows that are left out, each with what is wrong with it. */
  readonly bad: readonly string[];
}

export type BenchDimension = Extract<
  DimensionName,
  "length" | "angle" | "damper-speed" | "angular-speed" | "force" | "moment"
>;
const measured: readonly BenchDimension[] = ["length", "angle", "damper-speed", "angular-speed", "force", "moment"];

/** @param units where the header names none; @param decimalComma whether a number may have one */
export function benchTable(
  rows: readonly Cells[],
  units: readonly string[] | undefined,
  decimalComma: boolean,
): BenchTable | string {
  const [first, second] = rows;
  if (first === undefined) return "it holds no rows";
  const isNumber = (cell: string): boolean => !Number.isNaN(numberIn(cell, decimalComma));
  const hasHeader = !first.cells.some(isNumber);
  if (!hasHeader && units === undefined)
    return `line ${first.line}: there is no header; say what the columns are with --units, such as mm/s,N`;
  const unitRow = hasHeader && second !== undefined && !second.cells.some(isNumber) ? second.cells : undefined;
  const columns = first.cells.map((cell, i) =>
    columnOf(hasHeader ? cell : `column ${i + 1}`, units?.[i] ?? unitRow?.[i]),
  );
  const unknown = units?.find((unit) => unit !== "" && unit !== "-" && parseUnit(unit) === undefined);
  if (unknown !== undefined) return `--units: "${unknown}" is no unit; leave a column out with -`;
  const used = columns.flatMap((column, index) => (column === undefined ? [] : [{ column, index }]));
  if (used.length < 2) {
    const heads = first.cells.map((cell) => `"${cell}"`).join(", ");
    return `line ${first.line}: two columns with units are needed, such as "velocity [mm/s]" and "force [N]"; it has ${heads}`;
  }
  const body = rows.slice(hasHeader ? (unitRow === undefined ? 1 : 2) : 0);
  return { columns: used.map(({ column }) => column), ...readRows(body, used, first.cells.length, decimalComma) };
}

function readRows(
  body: readonly Cells[],
  used: readonly { readonly column: BenchColumn; readonly index: number }[],
  width: number,
  decimalComma: boolean,
): Pick<BenchTable, "rows" | "bad"> {
  const rows: BenchRow[] = [];
  const bad: string[] = [];
  for (const { line, cells } of body) {
    const values = used.map(({ index }) => numberIn(cells[index] ?? "", decimalComma));
    const wrong = used.find((_, i) => Number.isNaN(values[i]));
    const beyond = cells.slice(width).some((cell) => cell !== "");
    if (beyond) bad.push(`line ${line}: ${cells.length} columns, and the header has ${width}`);
    else if (wrong === undefined) rows.push({ line, values });
    else bad.push(`line ${line}: "${cells[wrong.index] ?? ""}" is no number (${wrong.column.name})`);
  }
  return { rows, bad };
}

/** "velocity [mm/s]", "force (N)", "travel mm", "Force_N". */
function columnOf(heading: string, unitGiven: string | undefined): BenchColumn | undefined {
  const found = /^(.*?)\s*[[(]([^\])]*)[\])]\s*$/.exec(heading) ?? /^(.*?)[\s_,]+([^\s_,]+)$/.exec(heading);
  const written = found !== null && parseUnit(found[2]?.trim() ?? "") !== undefined ? found : undefined;
  const unit = (unitGiven ?? written?.[2] ?? "").replace(/^[[(]|[\])]$/g, "").trim();
  const info = unit === "" ? undefined : parseUnit(unit);
  const dimension = info && measured.find((one) => matchesDimension(info, one));
  return dimension && { name: (written?.[1] ?? heading).trim() || heading, unit, dimension };
}

function numberIn(cell: string, decimalComma: boolean): number {
  const text = (decimalComma ? cell.replace(",", ".") : cell).replace("\u2212", "-").trim();
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) && Number.isFinite(Number(text))
    ? Number(text)
    : Number.NaN;
}
