/** Kinematics for a machine: what an independent solver can be held against. Described by `schema/kinematics.json`. */
import type { KinematicsRow, WheelRow } from "../../analyses/results.js";
import type { CarModel } from "../../model/car.js";
import { isAbsent } from "../../views/figures.js";
import { absence, json, quantity, rounded } from "./json.js";

export function kinematicsJson(model: CarModel, axle: string, rows: readonly KinematicsRow[]): string {
  return json({ car: model.name, setup: model.setup ?? null, axle, rows: rows.map((row) => rowJson(model, row)) });
}

function rowJson(model: CarModel, row: KinematicsRow): object {
  return {
    heave: quantity(row.heave, "mm"),
    roll: quantity(row.roll, "deg"),
    left: isAbsent(row.left) ? absence(row.left) : wheelJson(row.left),
    right: isAbsent(row.right) ? absence(row.right) : wheelJson(row.right),
    elements: row.elements.map(({ path, deflection }) => ({
      path,
      deflection: quantity(deflection, deflectionUnit(model, path)),
    })),
  };
}

function wheelJson(wheel: WheelRow): object {
  return {
    travel: quantity(wheel.travel, "mm"),
    centre: { value: wheel.centre.map(inMillimetres), unit: "mm" },
    contact: { value: wheel.contact.map(inMillimetres), unit: "mm" },
    camber: quantity(wheel.camber, "deg"),
    toe: quantity(wheel.toe, "deg"),
    rocker: quantity(wheel.rocker, "deg"),
  };
}

const inMillimetres = (metres: number): number => rounded(metres * 1000);

/** Twist in degrees, telescopic travel in millimetres, oil that is pushed out in millilitres. */
export function deflectionUnit(model: CarModel, path: string): "mm" | "deg" | "ml" {
  const elements = [...(model.axles.front?.elements ?? []), ...(model.axles.rear?.elements ?? []), ...model.elements];
  const connection = elements.find((element) => element.path === path)?.connection;
  if (connection?.kind === "cylinders") return "ml";
  const torsional =
    connection?.kind === "twists" ||
    connection?.kind === "bar" ||
    connection?.kind === "tee" ||
    (connection?.kind === "ratio" && connection.torsional);
  return torsional ? "deg" : "mm";
}
