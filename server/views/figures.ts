/** Figures as text, one way for every face: a value with its unit, or why there is none. */
import type { Absent, Figure } from "../analyses/results.js";
import { fromSI, showQuantity } from "../quantities/index.js";

export function isAbsent(figure: unknown): figure is Absent {
  return typeof figure === "object" && figure !== null && (figure as { kind?: unknown }).kind === "absent";
}

/** In the shown unit: what rounding leaves of forces and rates that cancel. */
const NOUGHT = 1e-9;

/** "171.3 N/mm", or the reason in brackets. */
export function showFigure(figure: Figure, unit: string, digits = 4): string {
  if (isAbsent(figure)) return `none (${figure.reason})`;
  const shown = fromSI(figure, unit);
  return shown !== undefined && Math.abs(shown) < NOUGHT ? `0 ${unit}`.trim() : showQuantity(figure, unit, digits);
}

/** "2.1 %": a fraction as a percentage; below a hundredth of a per cent it is nought for any reader. */
export function showShare(figure: Figure): string {
  if (isAbsent(figure)) return `none (${figure.reason})`;
  const percent = figure * 100;
  return `${Math.abs(percent) < 0.005 ? "0" : trimmed(percent, Math.abs(percent) < 10 ? 2 : 1)} %`;
}

/** A plain ratio to three decimals, a nought below a millionth. */
export function showRatio(value: number): string {
  return Math.abs(value) < 1e-6 ? "0" : trimmed(value, 3);
}

function trimmed(value: number, decimals: number): string {
  const text = value.toFixed(decimals).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
}
