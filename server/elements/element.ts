/**
 * An element as the analyses meet it: a deflection that follows the wheels, and a law.
 *
 * Deflection s: m for telescopic elements (compression positive), rad for torsional ones
 * (positive as the left wheel's bump makes it; for a right corner element as its own wheel's bump makes it).
 * Wheels in the order FL, FR, RL, RR; travel bump positive, m.
 *
 * Invariant: no state is kept; motions are passed in and results come back fresh.
 */
import type { AxleMotion } from "../linkage/corner.js";
import type { ElementKind, Mode } from "./kinds.js";

export type { ElementKind, Mode } from "./kinds.js";

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
  readonly reason: "drop-link" | "coincident-ends";
}

export interface Connection {
  readonly kind: "between" | "twists" | "bar" | "ratio";
  /** What the figures rest on. */
  readonly basis: "hardpoints" | "planar" | "ratio";
  readonly torsional: boolean;
  /** Deflection from design position. */
  deflection(motion: AxleMotion): Deflection | NoDeflection;
}

/** Force (N or N·m) against deflection from the *seat*: positive resists compression. */
export interface SpringLaw {
  readonly kind: "spring";
  /** `seat` shifts the spring (the trim): force at deflection s is force(s + seat). */
  force(s: number): number;
  /** dF/ds at s. */
  rate(s: number): number;
  /** ∫F ds from the free position, J. */
  energy(s: number): number;
  /** True where the law itself fixes the force at design (preload, gap): it is not a trim element by default. */
  readonly stated: boolean;
}

/** Force against speed of deflection; positive speed in compression. */
export interface DamperLaw {
  readonly kind: "damper";
  force(v: number): number;
  /** Damping at small speed, N·s/m (N·m·s/rad): mean of the bump and rebound slopes at the origin. */
  readonly lowSpeed: number;
}

export type Law = SpringLaw | DamperLaw;

export interface Element {
  readonly path: string;
  readonly kind: ElementKind;
  readonly for: readonly Mode[];
  readonly side: "left" | "right" | undefined;
  readonly connection: Connection;
  /** Undefined where no law is written or this kind is not computed yet; `lawMissing` says which. */
  readonly law: Law | undefined;
  readonly lawMissing: string | undefined;
}
