/** The legend of a plot: which entries stand in one row. */
import type { LineStyleName, SignName } from "./palette.js";

export interface Entry {
  readonly label: string;
  /** A line's sample, else a symbol. */
  readonly style?: LineStyleName | undefined;
  readonly sign?: SignName | undefined;
}

const SAMPLE = 16;
const GAP = 12;

/** @param figure width of one character */
export const entryWidth = ({ label }: Entry, figure: number): number => SAMPLE + label.length * figure + GAP;

/** As many in a row as fit; one that is too long for any has a row of its own. */
export function legendRows(entries: readonly Entry[], width: number, figure: number): readonly (readonly Entry[])[] {
  const rows: Entry[][] = [];
  let left = 0;
  for (const entry of entries) {
    const wide = entryWidth(entry, figure);
    const row = rows.at(-1);
    if (row === undefined || wide - GAP > left) {
      rows.push([entry]);
      left = width - wide;
    } else {
      row.push(entry);
      left -= wide;
    }
  }
  return rows;
}
