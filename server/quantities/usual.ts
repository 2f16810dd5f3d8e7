/** Which units are usual for a dimension, in the system of units that the author works in. */
import { usualUnits } from "../../grammar/vocabulary/units.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import { parseUnit } from "./unit.js";

/** The usual units, SI first, each once; none where the dimension is decided elsewhere. */
export function unitsOf(dimension: DimensionName): readonly string[] {
  if (dimension === "any") return [];
  const { si, inch } = usualUnits[dimension];
  return [...new Set([...si, ...inch])];
}

export function usualUnit(dimension: DimensionName, system: "si" | "inch"): string {
  return dimension === "any" ? "" : (usualUnits[dimension][system][0] ?? "");
}

/** Inch units say that the author works in them; deg, s, g and % are at home in both and count as SI. */
export function unitSystem(unitText: string): "si" | "inch" {
  return parseUnit(unitText)?.system === "inch" ? "inch" : "si";
}
