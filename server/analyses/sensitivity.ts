/**
 * How an axle's element follows the four modes of the car: ds per unit amplitude at every wheel.
 *
 * Sign patterns over FL, FR, RL, RR: heave (+, +, +, +), pitch (+, +, −, −), roll (−, +, −, +),
 * warp (−, +, +, −). An axle sees only its own two of them.
 */
import type { Deflection } from "../elements/element.js";
import type { AxleName } from "../elements/mechanism.js";
import type { ByMode } from "./results.js";

/** The patterns, as plain numbers in the order FL, FR, RL, RR. */
export const PATTERNS = {
  heave: [1, 1, 1, 1],
  pitch: [1, 1, -1, -1],
  roll: [-1, 1, -1, 1],
  warp: [-1, 1, 1, -1],
} as const;

export type CarMode = keyof typeof PATTERNS;

export function sensitivity(axle: AxleName, { dL, dR }: Deflection): ByMode {
  const [left, right] = axle === "front" ? ([0, 1] as const) : ([2, 3] as const);
  // Adding 0 turns a −0 into a 0.
  const along = (mode: CarMode): number => PATTERNS[mode][left] * dL + PATTERNS[mode][right] * dR + 0;
  return { heave: along("heave"), roll: along("roll"), pitch: along("pitch"), warp: along("warp") };
}
