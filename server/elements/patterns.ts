/**
 * The four modes of the car as patterns of wheel travel, unit amplitude at every wheel, in the order FL, FR, RL, RR:
 * heave (+, +, +, +), pitch (+, +, −, −), roll (−, +, −, +), warp (−, +, +, −).
 *
 * Invariant: each two are at right angles, so that the same patterns over 4 take travels apart again.
 */
export const PATTERNS = {
  heave: [1, 1, 1, 1],
  pitch: [1, 1, -1, -1],
  roll: [-1, 1, -1, 1],
  warp: [-1, 1, 1, -1],
} as const;

export type CarMode = keyof typeof PATTERNS;

/** In the order of the patterns' matrix. */
export const CAR_MODES = ["heave", "pitch", "roll", "warp"] as const;
