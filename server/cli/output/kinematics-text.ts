/** Kinematics for the terminal. */
import pc from "picocolors";
import type { KinematicsRow } from "../../analyses/results.js";
import type { CarModel } from "../../model/car.js";
import { kinematicsGrid } from "./kinematics-table.js";
import { table } from "./table.js";

export function kinematicsText(model: CarModel, axle: string, rows: readonly KinematicsRow[]): string {
  const grid = kinematicsGrid(model, rows);
  const columns = grid.heads.map((head) => ({ head, align: "right" as const }));
  const body = grid.rows.map((row) => row.map((value) => (value === undefined ? "-" : decimals(value))));
  const reasons =
    grid.reasons.length === 0
      ? ""
      : `\nNo figure (-) where:\n${grid.reasons.map((reason) => `  ${reason}\n`).join("")}`;
  return `${pc.bold(`${model.setup ?? model.name}, ${axle} axle`)}\n\n${table(columns, body)}${reasons}`;
}

function decimals(value: number): string {
  const text = value.toFixed(3);
  return /^-0\.0+$/.test(text) ? text.slice(1) : text;
}
