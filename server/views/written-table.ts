/**
 * A table as it is written: rows of numbers with units, or a CSV file that stands beside the text. Read off the syntax
 * tree, so that it is there on the shelf as well as in a car, and while the rest of the text is incomplete.
 */
import type { Item, Statement } from "../../grammar/index.js";
import { readCsv } from "../model/csv.js";
import { relativeTo } from "../model/relative.js";
import { fromSI, toSI } from "../quantities/index.js";
import type { FileView } from "../snapshot/workspace.js";

export interface WrittenTable {
  readonly keyUnit: string;
  readonly valueUnit: string;
  /** In these units; keys rising. */
  readonly keys: readonly number[];
  readonly values: readonly number[];
}

interface Cell {
  readonly value: number;
  readonly unit: string;
}

/** A plain number with its unit; what has to be worked out first is left to the model. */
const cellOf = (item: Item): Cell | undefined =>
  item.kind === "quantity" ? { value: item.value, unit: item.unit?.text ?? "" } : undefined;

/** All in the unit of the first. */
function column(cells: readonly (Cell | undefined)[]): { unit: string; values: readonly number[] } | undefined {
  const unit = cells[0]?.unit;
  if (unit === undefined) return undefined;
  const values: number[] = [];
  for (const cell of cells) {
    const si = cell && toSI(cell.value, cell.unit);
    const value = cell?.unit === unit ? cell.value : si === undefined ? undefined : fromSI(si, unit);
    if (value === undefined || !Number.isFinite(value)) return undefined;
    values.push(value);
  }
  return { unit, values };
}

function ofRows(statement: Statement): WrittenTable | undefined {
  const rows = (statement.block?.entries ?? []).flatMap((entry) => (entry.kind === "row" ? [entry] : []));
  const [keys, values] = [column(rows.map(({ key }) => cellOf(key))), column(rows.map(({ value }) => cellOf(value)))];
  if (keys === undefined || values === undefined) return undefined;
  return { keyUnit: keys.unit, valueUnit: values.unit, keys: keys.values, values: values.values };
}

const isCsv = ({ items }: Statement): boolean =>
  items.some((item) => item.kind === "path" && item.segments.length === 1 && item.segments[0]?.text === "csv");

function ofCsv(file: FileView, statement: Statement): WrittenTable | undefined {
  const path = statement.items.find((item) => item.kind === "text");
  if (path === undefined || !isCsv(statement)) return undefined;
  const target = relativeTo(file.uri, path.value);
  const text = "uri" in target ? file.textOf(target.uri) : undefined;
  const curve = text === undefined ? undefined : readCsv(text);
  if (curve === undefined || "troubles" in curve) return undefined;
  const { keys, values } = curve;
  return { keyUnit: keys.unit, valueUnit: values.unit, keys: keys.values, values: values.values };
}

const rises = ({ keys }: WrittenTable): boolean => keys.every((key, i) => i === 0 || key > (keys[i - 1] ?? key));

/** @returns undefined where the statement is no table, or not one that a curve goes through */
export function tableOf(file: FileView, statement: Statement): WrittenTable | undefined {
  const table = ofRows(statement) ?? ofCsv(file, statement);
  return table !== undefined && table.keys.length > 1 && rises(table) ? table : undefined;
}
