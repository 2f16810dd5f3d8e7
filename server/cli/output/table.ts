/** A table for the terminal, plain in a pipe: columns parted by blanks, numbers to the right. */
import Table from "cli-table3";
import type { Column } from "../../views/rates-page.js";

const noLines = Object.fromEntries(
  [
    "top",
    "top-mid",
    "top-left",
    "top-right",
    "bottom",
    "bottom-mid",
    "bottom-left",
    "bottom-right",
    "left",
    "left-mid",
    "mid",
    "mid-mid",
    "right",
    "right-mid",
  ].map((place) => [place, ""]),
);

export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const grid = new Table({
    head: columns.map(({ head }) => head),
    colAligns: columns.map(({ align }) => align),
    chars: { ...noLines, middle: "  " },
    style: { head: [], border: [], "padding-left": 0, "padding-right": 0 },
  });
  for (const row of rows) grid.push([...row]);
  return `${grid
    .toString()
    .split("\n")
    .map((line) => line.trimEnd())
    .join("\n")}\n`;
}
