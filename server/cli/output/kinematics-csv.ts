/** Kinematics as CSV, full precision. */
import type { KinematicsRow } from "../../analyses/results.js";
import type { CarModel } from "../../model/car.js";
import { csv } from "./csv.js";
import { rounded } from "./json.js";
import { kinematicsGrid } from "./kinematics-table.js";

export function kinematicsCsv(model: CarModel, _axle: string, rows: readonly KinematicsRow[]): string {
  const grid = kinematicsGrid(model, rows);
  return csv([grid.heads, ...grid.rows.map((row) => row.map((value) => (value === undefined ? "" : rounded(value))))]);
}
