/** A point written back in the author's unit, to a hundredth of a millimetre: finer than any workshop. */
import { fromSI } from "../../quantities/index.js";

/** Whether the author wrote plain numbers: a name or a sum must not be replaced by its value of today. */
export function isPlain(written: string): boolean {
  return /^\(\s*[-+\d.]+(?:\s*[a-z]+)?(?:\s*,\s*[-+\d.]+(?:\s*[a-z]+)?){1,2}\s*,?\s*\)/.test(written);
}

/** @param point in m; undefined where the unit is none of length */
export function coordinatesText(point: readonly number[], unit: string): string | undefined {
  const size = fromSI(1e-5, unit);
  if (size === undefined) return undefined;
  const decimals = Math.max(0, Math.ceil(-Math.log10(size)));
  const numbers = point.map((metres) => plain((fromSI(metres, unit) ?? metres).toFixed(decimals)));
  return `(${numbers.join(", ")}) ${unit}`;
}

function plain(text: string): string {
  const trimmed = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return trimmed === "-0" ? "0" : trimmed;
}
