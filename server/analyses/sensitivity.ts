/**
 * How an axle's element follows the four modes of the car: ds per unit amplitude at every wheel.
 *
 * Sign patterns over FL, FR, RL, RR: heave (+, +, +, +), pitch (+, +, −, −), roll (−, +, −, +),
 * warp (−, +, +, −). An axle sees only its own two of them.
 */
import type { Deflection } from "../elements/element.js";
import type { AxleName } from "../elements/mechanism.js";
import { type CarMode, PATTERNS } from "../elements/patterns.js";
import type { ByMode } from "./results.js";

/** Parts that cancel to less than this share of them are nothing: a zero is a zero. */
const ROUNDING = 1e-14;

/** a + b, and 0 (never −0) where they cancel to within rounding. */
export function settled(a: number, b: number): number {
  const sum = a + b;
  return Math.abs(sum) <= ROUNDING * (Math.abs(a) + Math.abs(b)) ? 0 : sum;
}

export function sensitivity(axle: AxleName, { dL, dR }: Deflection): ByMode {
  const [left, right] = axle === "front" ? ([0, 1] as const) : ([2, 3] as const);
  const along = (mode: CarMode): number => settled(PATTERNS[mode][left] * dL, PATTERNS[mode][right] * dR);
  return { heave: along("heave"), roll: along("roll"), pitch: along("pitch"), warp: along("warp") };
}
