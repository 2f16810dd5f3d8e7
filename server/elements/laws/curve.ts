/**
 * A force that follows a deflection, before gaps, preload and direction are put on it: the
 * part that the force laws are composed of.
 *
 * Units: m and N for telescopic elements, rad and N·m for torsional ones; compression (or twist
 * as the left wheel's bump makes it) positive, a positive force resists it.
 *
 * Invariant: force never falls with deflection, is continuous, and is the derivative of energy;
 * rate is the derivative of force (at a kink: towards more compression).
 */

export interface Curve {
  force(x: number): number;
  rate(x: number): number;
  /** ∫F dx from 0, J. */
  energy(x: number): number;
  /** The rate, where it is the same everywhere. */
  readonly constantRate: number | undefined;
  /** Measured range of a table; outside of it the curve is extrapolated. */
  readonly range: { readonly from: number; readonly to: number } | undefined;
}

/** The same curve pulled instead of pushed: F(x) = −F₀(−x). */
export function reversed(curve: Curve): Curve {
  return {
    force: (x) => -curve.force(-x),
    rate: (x) => curve.rate(-x),
    energy: (x) => curve.energy(-x),
    constantRate: curve.constantRate,
    range: curve.range === undefined ? undefined : { from: -curve.range.to, to: -curve.range.from },
  };
}

/** The curve read from another starting point: F(x) = F₀(x + offset), its energy still from its free position. */
export function shifted(curve: Curve, offset: number): Curve {
  if (offset === 0) return curve;
  return {
    force: (x) => curve.force(x + offset),
    rate: (x) => curve.rate(x + offset),
    energy: (x) => curve.energy(x + offset),
    constantRate: curve.constantRate,
    range: curve.range === undefined ? undefined : { from: curve.range.from - offset, to: curve.range.to - offset },
  };
}
