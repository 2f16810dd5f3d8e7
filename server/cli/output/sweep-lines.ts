/**
 * The lines of `sweep`: a head that says what is swept, then one line a set-up. JSON lines are described by
 * `schema/sweep.json`.
 *
 * Invariant: the start of a line, up to its figures, is known from its number alone: by it a sweep finds its way back.
 */
import type { Cell, SweptAxis, SweptFigure } from "../../snapshot/sweep.js";
import { csv } from "./csv.js";
import { rounded, schemaVersion } from "./json.js";

export interface SweepTable {
  readonly car: string;
  readonly setup: string | undefined;
  readonly axes: readonly SweptAxis[];
  readonly figures: readonly SweptFigure[];
  /** Rows of the whole sweep, and those that are made here. */
  readonly rows: number;
  readonly from: number;
  readonly to: number;
}

export interface SweepFormat {
  head(table: SweepTable): string;
  /** What a row's line begins with. */
  start(table: SweepTable, row: number, values: readonly string[]): string;
  line(table: SweepTable, row: number, values: readonly string[], cells: readonly Cell[]): string;
}

/** "40 N/mm" as the number and the unit; a part's name has none. */
function partsOf(value: string): { readonly shown: string | number; readonly unit: string } {
  const found = /^([-+]?[\d.]+)(?:\s+(\S+))?$/.exec(value);
  return found === null ? { shown: value, unit: "" } : { shown: Number(found[1]), unit: found[2] ?? "" };
}

const headed = (name: string, unit: string): string => (unit === "" ? name : `${name} (${unit})`);

const asCsv: SweepFormat = {
  head: ({ axes, figures }) =>
    csv([
      [
        ...axes.map(({ path, values }) => headed(path, partsOf(values[0] ?? "").unit)),
        ...figures.map(({ name, unit }) => headed(name, unit)),
      ],
    ]),
  start: (_table, _row, values) => `${csv([values.map((value) => partsOf(value).shown)]).trimEnd()},`,
  line: (_table, _row, values, cells) =>
    csv([
      [
        ...values.map((value) => partsOf(value).shown),
        ...cells.map((cell) => (typeof cell === "number" ? rounded(cell) : "")),
      ],
    ]),
};

const asJsonLines: SweepFormat = {
  head: ({ car, setup, axes, figures, rows, from, to }) =>
    `${JSON.stringify({
      schema: schemaVersion,
      car,
      setup: setup ?? null,
      vary: axes.map(({ path, values }) => ({ path, unit: partsOf(values[0] ?? "").unit, values: values.length })),
      figures: figures.map(({ name, unit }) => ({ figure: name, unit })),
      rows,
      from,
      to,
    })}\n`,
  start: ({ axes }, row, values) =>
    `${JSON.stringify({ row, vary: Object.fromEntries(axes.map(({ path }, i) => [path, partsOf(values[i] ?? "").shown])) }).slice(0, -1)},`,
  line(table, row, values, cells) {
    const figures = Object.fromEntries(
      table.figures.map(({ name }, i) => {
        const cell = cells[i] ?? { why: "not computed" };
        return [name, typeof cell === "number" ? rounded(cell) : { absent: cell.why }];
      }),
    );
    return `${this.start(table, row, values)}${JSON.stringify({ figures }).slice(1)}\n`;
  },
};

export const sweepFormats = { csv: asCsv, jsonl: asJsonLines } as const;
