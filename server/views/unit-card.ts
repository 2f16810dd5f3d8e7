/** A quantity in the other system of units: what a colleague with other gauges would read. */
import type { Quantity } from "../../grammar/index.js";
import { dimensionOfUnit, showQuantity, toSI, unitSystem, unitsOf } from "../quantities/index.js";

export function unitCard(quantity: Quantity): string | undefined {
  const unit = quantity.unit?.text;
  if (unit === undefined) return undefined;
  const dimension = dimensionOfUnit(unit);
  const si = toSI(quantity.value, unit);
  if (dimension === undefined || si === undefined) return undefined;
  const own = unitSystem(unit);
  const others = unitsOf(dimension).filter((other) => unitSystem(other) !== own && other !== unit);
  const other = others[0];
  return other === undefined ? undefined : `${quantity.digits} ${unit} = ${showQuantity(si, other, 6)}`;
}
