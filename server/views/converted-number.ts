/**
 * The digits of a value in another unit: as few as still say the same.
 *
 * "The same" is within half of the last digit that the author wrote, and within 5 parts in a
 * million (lengths: never finer than 2 µm), whichever is closer. From that follows: a number of up to
 * five digits (lengths: down to 0.01 mm) comes back as it was written when it is converted back.
 */
import { dimensionOfUnit, fromSI, toSI } from "../quantities/index.js";

const mostDecimals = 12;
// Neither is a round decimal, so that no difference of two decimals lies exactly on the edge.
const significant = 4.93e-6;
/** m */
const finestLength = 1.93e-6;

/** Undefined where a unit is not known. */
export function convertedNumber(digits: string, from: string, to: string): string | undefined {
  const written = Number(digits);
  const value = change(written, from, to);
  if (value === undefined || !Number.isFinite(value)) return undefined;
  const tolerance = toleranceOf(written, digits, from);
  for (let decimals = 0; decimals <= mostDecimals; decimals++) {
    const text = value.toFixed(decimals);
    const back = change(Number(text), to, from);
    if (back !== undefined && Math.abs(back - written) <= tolerance) return signed(digits, trimmed(text));
  }
  return signed(digits, trimmed(value.toFixed(mostDecimals)));
}

function change(value: number, from: string, to: string): number | undefined {
  const si = toSI(value, from);
  return si === undefined ? undefined : fromSI(si, to);
}

/** In the unit that the author used. */
function toleranceOf(written: number, digits: string, unit: string): number {
  const lastDigit = 10 ** -decimalsOf(digits) / 2;
  const floor = dimensionOfUnit(unit) === "length" ? (fromSI(finestLength, unit) ?? 0) : 0;
  return Math.min(lastDigit, Math.max(Math.abs(written) * significant, floor));
}

function decimalsOf(digits: string): number {
  return /\.(\d*)/.exec(digits)?.[1]?.length ?? 0;
}

function trimmed(text: string): string {
  const short = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return short === "-0" ? "0" : short;
}

/** `by +2 mm` keeps its plus. */
function signed(digits: string, text: string): string {
  return digits.startsWith("+") && !text.startsWith("-") ? `+${text}` : text;
}
