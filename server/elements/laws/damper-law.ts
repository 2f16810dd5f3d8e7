/**
 * Dampers: force against speed of deflection, bump (compression) and rebound each with its own
 * curve through the origin. Rebound forces are entered positive.
 *
 * Units: m/s and N, or rad/s and N·m. A positive force resists compression.
 *
 * Invariant: zero at rest, continuous, resists motion wherever the curves are positive.
 */
import { monotone } from "../../maths/monotone.js";
import type { DamperLaw, SpeedMark } from "../element.js";

/** One side of a damper, for speeds from zero up. */
export interface HalfDamper {
  force(speed: number): number;
  slope(speed: number): number;
  readonly marks?: readonly SpeedMark[] | undefined;
}

const NO_GAS = { force: 0, rate: 0 };

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
  return {
    force: (v) => through.value(v),
    slope: (v) => through.slope(v),
    marks: [{ at: through.to, what: "table-end" }],
  };
}

/** Two slopes: c₁ up to the knee, c₂ beyond it. */
export function kneeDamper(low: number, knee: number, high: number): HalfDamper {
  return {
    force: (v) => (v <= knee ? low * v : low * knee + high * (v - knee)),
    slope: (v) => (v < knee ? low : high),
    marks: [{ at: knee, what: "knee" }],
  };
}

/** Between two settings of an adjuster: force (1 − share) · closed + share · open. */
export function blended(closed: HalfDamper, open: HalfDamper, share: number): HalfDamper {
  const mix = (a: number, b: number): number => (1 - share) * a + share * b;
  return {
    force: (v) => mix(closed.force(v), open.force(v)),
    slope: (v) => mix(closed.slope(v), open.slope(v)),
    marks: [...(closed.marks ?? []), ...(open.marks ?? [])].sort((a, b) => a.at - b.at),
  };
}

/** A setting that is everywhere the same multiple of a measured one. */
export function scaled(measured: HalfDamper, factor: number): HalfDamper {
  return {
    force: (v) => factor * measured.force(v),
    slope: (v) => factor * measured.slope(v),
    marks: measured.marks,
  };
}

/** Force of a damper's own gas at a deflection, N: gas force and its rise with compression, never below nought. */
export const gasForceAt = ({ gasForce, gasRate = 0 }: DamperLaw, s: number): number =>
  Math.max(0, gasForce + gasRate * s);

/** Its rate there, N/m. */
export const gasRateAt = ({ gasForce, gasRate = 0 }: DamperLaw, s: number): number =>
  gasForce + gasRate * s > 0 ? gasRate : 0;

/** @param gas of its own, at design: N, and N/m of compression */
export function damperLaw(
  bump: HalfDamper,
  rebound: HalfDamper,
  gas: { readonly force: number; readonly rate: number } = NO_GAS,
): DamperLaw {
  const turned = (rebound.marks ?? []).map((mark) => ({ ...mark, at: -mark.at })).reverse();
  return {
    kind: "damper",
    force: (v) => (v >= 0 ? bump.force(v) : -rebound.force(-v)),
    damping: (v) => (v >= 0 ? bump.slope(v) : rebound.slope(-v)),
    gasForce: gas.force,
    gasRate: gas.rate === 0 ? undefined : gas.rate,
    marks: [...turned, ...(bump.marks ?? [])],
    lowSpeed: (bump.slope(0) + rebound.slope(0)) / 2,
  };
}
