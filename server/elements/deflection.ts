/**
 * How far an element is deflected at the travels of both wheels of its axle, and how that moves on.
 *
 * m for telescopic elements (compression positive), rad for torsional ones; travels in m, bump positive.
 */

/** Deflection with gradient and Hessian with respect to the two wheel travels of its axle (left, right). */
export interface Deflection {
  readonly s: number;
  readonly dL: number;
  readonly dR: number;
  readonly dLL: number;
  readonly dLR: number;
  readonly dRR: number;
}

/** Why a deflection is not to be had at these travels. */
export interface NoDeflection {
  readonly kind: "no-deflection";
  readonly reason: "drop-link" | "coincident-ends" | "tie";
  /** The side whose drop link cannot follow. */
  readonly side: "left" | "right" | undefined;
}

/** m or rad: below what positions are solved to, above what rounding leaves of a design position. */
const ROUNDING = 1e-14;

/**
 * A deflection as it is, and 0 at design: a law that begins there (a stop without a gap, a spring that only pushes, a stage in
 * squat and another in rise) would otherwise take its side by the last bit of a square root.
 */
export const fromDesign = (s: number): number => (Math.abs(s) < ROUNDING ? 0 : s);
