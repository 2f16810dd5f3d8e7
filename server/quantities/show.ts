/** Quantities as text, one way for every face: the author's unit, few digits, no noise. */
import { fromSI } from "./convert.js";

const defaultDigits = 4;
/** As many as can be written without an exponent: below that a number would lose digits. */
const mostDecimals = 20;

/**
 * "120 N/mm", "-2.5 deg", "44 %". Rounded to significant digits (4 unless told), without
 * trailing zeros, never "-0". Where the unit is not known the SI value stands with no unit of
 * its own, since a wrong one would be worse.
 */
export function showQuantity(si: number, unitText: string, significantDigits = defaultDigits): string {
  const value = fromSI(si, unitText);
  if (value === undefined) return `${showNumber(si, significantDigits)} (SI)`;
  const number = showNumber(value, significantDigits);
  return unitText === "" ? number : `${number} ${unitText}`;
}

/** Whole numbers keep all their digits up to a million: 2540 stays 2540 at three significant ones. */
export function showNumber(value: number, significantDigits = defaultDigits): string {
  if (!Number.isFinite(value)) return "no figure";
  if (value === 0) return "0";
  const size = Math.floor(Math.log10(Math.abs(value)));
  if (size >= 15 || significantDigits - 1 - size > mostDecimals)
    return trimExponent(value.toExponential(significantDigits - 1));
  const decimals = Math.max(0, significantDigits - 1 - size);
  const text = value.toFixed(decimals);
  return withoutMinusZero(decimals === 0 ? text : text.replace(/\.?0+$/, ""));
}

function withoutMinusZero(text: string): string {
  return text === "-0" ? "0" : text;
}

function trimExponent(text: string): string {
  return text.replace(/\.?0+e/, "e").replace("e+", "e");
}

/**
 * For text that goes back into a file: the fewest digits (at most twelve) that mean the same, so
 * that 0.1 in, converted and back, is 0.1 again.
 */
export function writeQuantity(si: number, unitText: string, significantDigits = 12): string | undefined {
  const value = fromSI(si, unitText);
  if (value === undefined || !Number.isFinite(value)) return undefined;
  const number = showNumber(value, significantDigits);
  return unitText === "" ? number : `${number} ${unitText}`;
}
