/** The rows of `kinematics` as cells, for the terminal and for CSV: numbers only, units in the heads, as the author works in. */
import type { Figure, KinematicsRow, WheelRow } from "../../analyses/results.js";
import type { CarModel } from "../../model/car.js";
import { fromSI } from "../../quantities/index.js";
import { isAbsent } from "../../views/figures.js";
import { type ShowUnit, unitsOfCar } from "../../views/units-of-car.js";
import { deflectionUnit } from "./kinematics-json.js";

export interface Grid {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly (number | undefined)[])[];
  /** Why cells are empty, each reason once. */
  readonly reasons: readonly string[];
}

export function kinematicsGrid(model: CarModel, rows: readonly KinematicsRow[]): Grid {
  const reasons = new Set<string>();
  const unit = unitsOfCar(model);
  const length = unit("length");
  const elements = rows[0]?.elements.map(({ path }) => ({ path, unit: shownUnit(model, path, unit) })) ?? [];
  const heads = [
    `heave ${length}`,
    "roll deg",
    ...wheelHeads("L", length),
    ...wheelHeads("R", length),
    ...elements.map((element) => `${element.path} ${element.unit}`),
  ];
  const cellsOf = (row: KinematicsRow): readonly (number | undefined)[] => [
    fromSI(row.heave, length),
    fromSI(row.roll, "deg"),
    ...wheelCells(row.left, length, reasons),
    ...wheelCells(row.right, length, reasons),
    ...row.elements.map(({ deflection }, i) => cell(deflection, elements[i]?.unit ?? length, reasons)),
  ];
  return { heads, rows: rows.map(cellsOf), reasons: [...reasons] };
}

function shownUnit(model: CarModel, path: string, unit: ShowUnit): string {
  const own = deflectionUnit(model, path);
  if (own === "deg") return own;
  return unit(own === "ml" ? "volume" : "length");
}

const wheelHeads = (side: string, length: string): string[] =>
  [`x ${length}`, `y ${length}`, `z ${length}`, "camber deg", "toe deg", "rocker deg"].map((head) => `${side} ${head}`);

function wheelCells(
  wheel: KinematicsRow["left"],
  length: string,
  reasons: Set<string>,
): readonly (number | undefined)[] {
  if (isAbsent(wheel)) {
    reasons.add(wheel.reason);
    return Array.from({ length: 6 }, () => undefined);
  }
  const { centre, camber, toe, rocker }: WheelRow = wheel;
  return [
    ...centre.map((metres) => fromSI(metres, length)),
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
