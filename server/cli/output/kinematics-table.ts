/** The rows of `kinematics` as cells, for the terminal and for CSV: numbers only, units in the heads. */
import type { Figure, KinematicsRow, WheelRow } from "../../analyses/results.js";
import type { CarModel } from "../../model/car.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent } from "../../views/figures.js";
import { deflectionUnit } from "./kinematics-json.js";

export interface Grid {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly (number | undefined)[])[];
  /** Why cells are empty, each reason once. */
  readonly reasons: readonly string[];
}

export function kinematicsGrid(model: CarModel, rows: readonly KinematicsRow[]): Grid {
  const reasons = new Set<string>();
  const paths = rows[0]?.elements.map(({ path }) => path) ?? [];
  const heads = [
    "heave mm",
    "roll deg",
    ...wheelHeads("L"),
    ...wheelHeads("R"),
    ...paths.map((path) => `${path} ${deflectionUnit(model, path)}`),
  ];
  return { heads, rows: rows.map((row) => cells(model, row, reasons)), reasons: [...reasons] };
}

const wheelHeads = (side: string): string[] =>
  ["x mm", "y mm", "z mm", "camber deg", "toe deg", "rocker deg"].map((head) => `${side} ${head}`);

function cells(model: CarModel, row: KinematicsRow, reasons: Set<string>): readonly (number | undefined)[] {
  return [
    row.heave * 1000,
    fromSI(row.roll, "deg"),
    ...wheelCells(row.left, reasons),
    ...wheelCells(row.right, reasons),
    ...row.elements.map(({ path, deflection }) => cell(deflection, deflectionUnit(model, path), reasons)),
  ];
}

function wheelCells(wheel: KinematicsRow["left"], reasons: Set<string>): readonly (number | undefined)[] {
  if (isAbsent(wheel)) {
    reasons.add(wheel.reason);
    return Array.from({ length: 6 }, () => undefined);
  }
  const { centre, camber, toe, rocker }: WheelRow = wheel;
  return [
    ...centre.map((metres) => metres * 1000),
    fromSI(camber, "deg"),
    fromSI(toe, "deg"),
    cell(rocker, "deg", reasons),
  ];
}

function cell(figure: Figure, unit: string, reasons: Set<string>): number | undefined {
  if (!isAbsent(figure)) return fromSI(figure, unit);
  reasons.add(figure.reason);
  return undefined;
}
