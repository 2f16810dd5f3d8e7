/** A CSV file as cells with their lines: separators, quotes, byte-order marks and line ends are the library's to know. */
import { CsvError, type InfoRecord, parse } from "csv-parse/sync";
import type { Cells } from "../../views/bench/table.js";
import { readText } from "../text-file.js";
import { UsageError } from "../usage-error.js";

export interface CsvFile {
  readonly rows: readonly Cells[];
  readonly separator: string;
}

const names: Readonly<Record<string, string>> = { comma: ",", semicolon: ";", tab: "\t" };

/** @param separator as on the command line; found out where it is not said */
export function csvCells(path: string, separator: string | undefined): CsvFile {
  const text = readText(path);
  const sign = separator === undefined ? separatorIn(text) : (names[separator] ?? separator);
  if (sign.length !== 1)
    throw new UsageError(`--separator "${separator ?? ""}": comma, semicolon, tab, or one character`);
  try {
    const records = parse(text, {
      bom: true,
      comment: "#",
      comment_no_infix: true,
      delimiter: sign,
      info: true,
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as readonly { readonly record: readonly string[]; readonly info: InfoRecord }[];
    const rows = records
      .map(({ record, info }) => ({ line: info.lines, cells: withoutEmptyEnd(record) }))
      .filter(({ cells }) => cells.length > 0);
    return { rows, separator: sign };
  } catch (error) {
    if (error instanceof CsvError) throw new UsageError(`${path}: ${error.message}`);
    throw error;
  }
}

/** The first line that is no comment decides; a number never holds a tab or semicolon. */
function separatorIn(text: string): string {
  const head = text
    .replace(/^\ufeff/, "")
    .split(/\r\n|\n|\r/, 200)
    .find((line) => line.trim() !== "" && !line.trim().startsWith("#"));
  const outside = (head ?? "").replace(/"[^"]*"/g, "");
  return ["\t", ";", ","].find((sign) => outside.includes(sign)) ?? ",";
}

/** What some programs leave behind a last separator. */
function withoutEmptyEnd(cells: readonly string[]): readonly string[] {
  let end = cells.length;
  while (end > 0 && cells[end - 1] === "") end--;
  return cells.slice(0, end);
}
