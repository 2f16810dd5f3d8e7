/**
 * Dampers: force against speed of deflection, bump (compression) and rebound each with its own
 * curve through the origin. Rebound forces are entered positive.
 *
 * Units: m/s and N, or rad/s and N·m. A positive force resists compression.
 *
 * Invariant: zero at rest, continuous, resists motion wherever the curves are positive.
 */
import { monotone } from "../../maths/monotone.js";
import type { DamperLaw } from "../element.js";

/** One side of a damper, for speeds from zero up. */
export interface HalfDamper {
  force(speed: number): number;
  slope(speed: number): number;
}

/** F = c v. */
export function constantDamping(c: number): HalfDamper {
  return { force: (v) => c * v, slope: () => c };
}

/**
 * Measured points, interpolated monotonically, straight on beyond the last two; it starts with
 * its first measured ratio, as nothing is known below it.
 *
 * @param speed strictly increasing and above zero
 * @param force as many
 */
export function damperTable(speed: readonly number[], force: readonly number[]): HalfDamper {
  const through = monotone([0, ...speed], [0, ...force], "chord");
  return { force: (v) => through.value(v), slope: (v) => through.slope(v) };
}

/** Two slopes: c₁ up to the knee, c₂ beyond it. */
export function kneeDamper(low: number, knee: number, high: number): HalfDamper {
  return {
    force: (v) => (v <= knee ? low * v : low * knee + high * (v - knee)),
    slope: (v) => (v < knee ? low : high),
  };
}

export function damperLaw(bump: HalfDamper, rebound: HalfDamper, gasForce = 0): DamperLaw {
  return {
    kind: "damper",
    force: (v) => (v >= 0 ? bump.force(v) : -rebound.force(-v)),
    damping: (v) => (v >= 0 ? bump.slope(v) : rebound.slope(-v)),
    gasForce,
    lowSpeed: (bump.slope(0) + rebound.slope(0)) / 2,
  };
}
