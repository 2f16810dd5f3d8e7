/**
 * What was measured, held against what is predicted: difference, tolerance, and whether it is beyond that.
 *
 * Usual tolerances are what such readings repeat within (common practice, no published source): 1 mm of a height, 0.1 deg of
 * camber or toe, a point of a share, 2 % of loads and ratios, 3 % of pressures, 5 % of rates and frequencies, 10 % of damping.
 *
 * Invariant: never NaN; what is not predicted has no difference, and says why.
 */
import { dimensionOfUnit, toSI } from "../quantities/index.js";
import { GRAVITY } from "./loads.js";
import type { Absent, Figure } from "./results.js";
import { isAbsent } from "./absent.js";

export interface Reading {
  readonly figure: string;
  readonly at: string | undefined;
  readonly value: number;
  readonly unit: string;
  readonly within: { readonly value: number; readonly isShare: boolean } | undefined;
  readonly wheel: number | undefined;
}

export interface Residual {
  readonly predicted: Figure;
  /** Measured less predicted, SI. */
  readonly off: Figure;
  /** SI */
  readonly allowed: Figure;
  readonly isBeyond: boolean;
}

export interface Predictions {
  figure(asked: Pick<Reading, "figure" | "at">): Figure;
  /** N, FL FR RL RR. */
  readonly loads: readonly number[] | Absent;
}

/** A difference on its limit is within it, whatever rounding did. */
const ROUNDING = 1e-9;

export function residualOf(reading: Reading, predictions: Predictions): Residual {
  const predicted = predictedOf(reading, predictions);
  if (isAbsent(predicted)) return { predicted, off: predicted, allowed: predicted, isBeyond: false };
  const off = reading.value - predicted;
  const allowed = allowedOf(reading, predicted);
  return { predicted, off, allowed, isBeyond: Math.abs(off) > allowed * (1 + ROUNDING) };
}

function predictedOf({ figure, at, wheel }: Reading, predictions: Predictions): Figure {
  if (wheel === undefined) return predictions.figure({ figure, at });
  const { loads } = predictions;
  if (isAbsent(loads)) return loads;
  return (loads[wheel] ?? 0) / GRAVITY;
}

function allowedOf({ unit, within }: Reading, predicted: number): number {
  if (within !== undefined) return Math.abs(within.isShare ? within.value * predicted : within.value);
  const usual = USUAL[dimensionOfUnit(unit) ?? ""] ?? { share: 0.05 };
  return "share" in usual ? usual.share * Math.abs(predicted) : usual.size;
}

const USUAL: Readonly<Record<string, { readonly share: number } | { readonly size: number }>> = {
  length: { size: 1e-3 },
  angle: { size: toSI(0.1, "deg") ?? 0 },
  share: { size: 0.01 },
  number: { share: 0.02 },
  mass: { share: 0.02 },
  force: { share: 0.02 },
  moment: { share: 0.02 },
  pressure: { share: 0.03 },
  rate: { share: 0.05 },
  "torsional-rate": { share: 0.05 },
  frequency: { share: 0.05 },
  damping: { share: 0.1 },
  "torsional-damping": { share: 0.1 },
};
