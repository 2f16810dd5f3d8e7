/**
 * A measured curve from a CSV file: two columns of numbers under a header that names their units.
 *
 *   travel [mm]; deflection [mm]
 *   -30; -24.1
 *
 * Columns are parted by comma, semicolon or tab; with a semicolon or tab a number may have a
 * decimal comma. Cells may stand in quotes. Lines that begin with `#` and empty lines are passed over; further columns
 * are not read, but a row may not have more of them than the header: that would be a decimal comma among commas.
 *
 * Invariant: a curve is whole or not there: one bad row leaves no table, and is told with its line.
 */
import { parseUnit } from "../quantities/index.js";

export interface CsvColumn {
  readonly unit: string;
  readonly values: readonly number[];
}

export interface CsvTrouble {
  /** Counted from 1; 0 for the file as a whole. */
  readonly line: number;
  readonly detail: string;
}

export interface CsvCurve {
  /** The header's line, counted from 1. */
  readonly header: number;
  readonly keys: CsvColumn;
  readonly values: CsvColumn;
  /** The line of each row, counted from 1. */
  readonly lines: readonly number[];
}

const mostTroubles = 20;

export function readCsv(text: string): CsvCurve | { readonly troubles: readonly CsvTrouble[] } {
  const lines = text
    .replace(/^\ufeff/, "")
    .split(/\r\n|\n|\r/)
    .map((line, index) => ({ line: line.trim(), number: index + 1 }))
    .filter(({ line }) => line !== "" && !line.startsWith("#"));
  const header = lines.shift();
  if (header === undefined) return { troubles: [{ line: 0, detail: "it is empty" }] };
  const separator = separatorOf(header.line);
  const headings = cellsOf(header.line, separator);
  const [keyUnit, valueUnit] = headings.map(unitOfHeading);
  if (keyUnit === undefined || valueUnit === undefined) {
    const detail = "its header has to name two columns with their units, such as `travel [mm], deflection [mm]`";
    return { troubles: [{ line: header.number, detail }] };
  }
  const rows = lines.map(({ line, number }) => ({ number, ...readRow(line, separator) }));
  const troubles = troublesOf(rows, headings.length);
  if (troubles.length > 0) return { troubles: troubles.slice(0, mostTroubles) };
  return {
    header: header.number,
    keys: { unit: keyUnit, values: rows.map(({ key }) => key) },
    values: { unit: valueUnit, values: rows.map(({ value }) => value) },
    lines: rows.map(({ number }) => number),
  };
}

interface CsvRow {
  readonly number: number;
  readonly cells: number;
  readonly key: number;
  readonly value: number;
}

function troublesOf(rows: readonly CsvRow[], columns: number): readonly CsvTrouble[] {
  if (rows.length < 2) return [{ line: 0, detail: "it has fewer than two rows of numbers" }];
  const troubles: CsvTrouble[] = [];
  let before = Number.NEGATIVE_INFINITY;
  for (const { number, cells, key, value } of rows) {
    if (cells > columns) {
      const detail = `this row has ${cells} columns, and the header ${columns}; part them by semicolons if its numbers have decimal commas`;
      troubles.push({ line: number, detail });
    } else if (!Number.isFinite(key) || !Number.isFinite(value)) {
      troubles.push({ line: number, detail: "this row does not begin with two numbers" });
    } else if (key <= before) {
      troubles.push({ line: number, detail: "its first column does not rise from the row above" });
    } else before = key;
  }
  return troubles;
}

/** The header decides; a number never holds a tab or semicolon. */
function separatorOf(header: string): string {
  const outside = header.replace(/"[^"]*"/g, "");
  return ["\t", ";", ","].find((sign) => outside.includes(sign)) ?? ",";
}

/** Empty cells at the end are what some programs leave behind a last separator. */
function cellsOf(line: string, separator: string): string[] {
  const cells: string[] = [];
  let start = 0;
  let quoted = false;
  for (let index = 0; index <= line.length; index++) {
    if (line[index] === '"') quoted = !quoted;
    else if (index === line.length || (line[index] === separator && !quoted)) {
      cells.push(plain(line.slice(start, index)));
      start = index + 1;
    }
  }
  while (cells.length > 0 && cells.at(-1) === "") cells.pop();
  return cells;
}

/** Without its quotes; a doubled one inside is one. */
function plain(cell: string): string {
  const text = cell.trim();
  const inside = text.length > 1 && text.startsWith('"') && text.endsWith('"') ? text.slice(1, -1) : text;
  return inside.replaceAll('""', '"').trim();
}

function readRow(line: string, separator: string): Omit<CsvRow, "number"> {
  const cells = cellsOf(line, separator);
  const [key, value] = cells.map((cell) => readNumber(cell, separator !== ","));
  return { cells: cells.length, key: key ?? Number.NaN, value: value ?? Number.NaN };
}

function readNumber(cell: string, decimalComma: boolean): number {
  const text = decimalComma ? cell.replace(",", ".") : cell;
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
}

/** `travel [mm]`, `travel (mm)` or `travel mm`. */
function unitOfHeading(cell: string): string | undefined {
  const unit = /[[(]([^\])]*)[\])]\s*$/.exec(cell)?.[1] ?? /\s(\S+)$/.exec(cell)?.[1];
  const text = unit?.trim();
  return text !== undefined && text !== "" && parseUnit(text) !== undefined ? text : undefined;
}
