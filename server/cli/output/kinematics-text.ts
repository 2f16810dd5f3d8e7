/** Kinematics for the terminal. */
import pc from "picocolors";
import type { KinematicsRow } from "../../analyses/results.js";
import type { CarModel } from "../../model/car.js";
import { kinematicsGrid } from "./kinematics-table.js";
import { table } from "./table.js";

export function kinematicsText(model: CarModel, axle: string, rows: readonly KinematicsRow[]): string {
  const grid = kinematicsGrid(model, rows);
  const columns = grid.heads.map((head) => ({ head, align: "right" as const }));
  const body = grid.rows.map((row) =>
    row.map((value, column) => (value === undefined ? "-" : decimals(value, decimalsOf(grid.heads[column])))),
  );
  const reasons =
    grid.reasons.length === 0
      ? ""
      : `\nNo figure (-) where:\n${grid.reasons.map((reason) => `  ${reason}\n`).join("")}`;
  return `${pc.bold(`${model.setup ?? model.name}, ${axle} axle`)}\n\n${table(columns, body)}${reasons}`;
}

/** An inch is worth a digit more than a millimetre. */
const decimalsOf = (head = ""): number => (/ in(\^3)?$/.test(head) ? 4 : 3);

function decimals(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return /^-0\.0+$/.test(text) ? text.slice(1) : text;
}
