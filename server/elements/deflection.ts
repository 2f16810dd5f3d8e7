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
