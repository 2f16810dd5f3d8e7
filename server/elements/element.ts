/**
 * An element as the analyses meet it: a deflection that follows the wheels, and a law.
 *
 * Deflection s: m for telescopic elements (compression positive), rad for torsional ones
 * (positive as the left wheel's bump makes it; for a right corner element as its own wheel's bump makes it),
 * m³ for hydraulic ones (oil pushed out positive): their force is a pressure, N/m².
 * Wheels in the order FL, FR, RL, RR; travel bump positive, m.
 *
 * Invariant: no state is kept; motions are passed in and results come back fresh.
 */
import type { AxleMotion } from "../linkage/corner.js";
import type { Vec3 } from "../maths/vec3.js";
import type { BarLever } from "./connections/bar-lever.js";
import type { Deflection, NoDeflection } from "./deflection.js";
import type { ElementKind, Mode } from "./kinds.js";
import type { Mark } from "./laws/curve.js";
import type { Strength } from "./strength.js";

export type { Deflection, NoDeflection } from "./deflection.js";
export type { ElementKind, Mode } from "./kinds.js";

export interface Connection {
  readonly kind: "between" | "twists" | "bar" | "tee" | "ratio" | "cylinders";
  /** What the figures rest on. */
  readonly basis: "hardpoints" | "planar" | "ratio";
  readonly torsional: boolean;
  /** Set where its deflection is a swept volume. */
  readonly measure?: "volume" | undefined;
  /** Set where it cannot work at all, in plain words: "its drop link is off on the left side". */
  readonly idle: string | undefined;
  /** Modes whose motion is stated, for a connection by ratios; undefined where geometry says it for all. */
  readonly statedFor: readonly Mode[] | undefined;
  /** Deflection from design position. */
  deflection(motion: AxleMotion): Deflection | NoDeflection;
  /** The levers of a bar whose drop links are both on. */
  readonly levers?: { readonly left: BarLever; readonly right: BarLever } | undefined;
  /** Of a T-shaped bar whose drop links are both on. */
  readonly tee?:
    | {
        /** Distance of the cross arm's ends from the stem, and the links' moment arm about it, m. */
        readonly arm: number;
        readonly linkArm: number;
        /** Angle of its drop links from where they no longer hold it, rad; undefined where they do not reach. */
        transmission(motion: AxleMotion): number | undefined;
        /** Where the ends of its cross arm are, car frame, m; undefined where its drop links do not reach. */
        ends(motion: AxleMotion): { readonly left: Vec3; readonly right: Vec3 } | undefined;
      }
    | undefined;
  /** Distance between the two ends at design, m, where it is drawn. */
  readonly designLength?: number | undefined;
}

/**
 * Force (N or N·m) against deflection: positive resists compression. The trim of an axle shifts
 * its springs by a *seat*: the force at deflection s is then force(s + seat).
 */
export interface SpringLaw {
  readonly kind: "spring";
  force(s: number): number;
  /** dF/ds at s; at a kink that towards more compression. */
  rate(s: number): number;
  /** ∫F ds from the free position, J. */
  energy(s: number): number;
  /** The rate, where it is the same at every deflection. */
  readonly constantRate: number | undefined;
  /** Measured range of a table, from design: outside of it the law is extrapolated. */
  readonly range: { readonly from: number; readonly to: number } | undefined;
  /** True where the law itself fixes the force at design (preload, gap): it is not a trim element by default. */
  readonly stated: boolean;
  /** Of gas springs and hydraulic links. */
  readonly fluid?: FluidState | undefined;
  /** Where it begins to carry, goes over into another stage, or is extrapolated; rising, from design. */
  readonly marks?: readonly Mark[] | undefined;
}

/** What the pressure of a gas or an oil does as its element is deflected. */
export interface FluidState {
  /** Pressure above atmosphere, Pa. */
  gauge(s: number): number;
  /** Share of the gas volume at design that is swept away; 1 would compress it to nothing. Undefined without gas. */
  readonly used: ((s: number) => number) | undefined;
  /** Deflection beyond which the law is continued straight, since next to no gas is left. */
  readonly ends: number | undefined;
}

/** Force against speed of deflection; positive speed in compression. */
export interface DamperLaw {
  readonly kind: "damper";
  force(v: number): number;
  /** dF/dv. */
  damping(v: number): number;
  /** Damping at small speed, N·s/m (N·m·s/rad): mean of the bump and rebound slopes at the origin. */
  readonly lowSpeed: number;
  /** Force of the damper's own gas at design, N: positive pushes it apart. */
  readonly gasForce: number;
  /** How much it grows with compression, N/m; none where it is constant. */
  readonly gasRate?: number | undefined;
  /** Speeds at which a slope goes over into another, or a table ends; rising, rebound negative. */
  readonly marks?: readonly SpeedMark[] | undefined;
  /** Of one with clickers: force with all of them closed, and open. */
  readonly settings?: { readonly closed: SpeedForce; readonly open: SpeedForce } | undefined;
}

export interface SpeedForce {
  /** Against speed of deflection; positive speed in compression. */
  force(v: number): number;
}

export interface SpeedMark {
  readonly at: number;
  readonly what: "knee" | "table-end";
}

/** Force against acceleration of deflection, F = b s̈: carries nothing at rest. */
export interface InerterLaw {
  readonly kind: "inerter";
  /** b, kg (kg·m²). */
  readonly inertance: number;
}

/** What an actuator keeps: a change of its length from design (extension positive, m) or a force (pushing apart positive, N). */
export interface Held {
  readonly kind: "length" | "force";
  readonly value: number;
}

/** A length or a force, case by case; in a case that is not among them it keeps its design length. */
export interface HoldLaw {
  readonly kind: "hold";
  /** What it keeps in every case, where one setting is written for all. */
  readonly always: Held | undefined;
  readonly cases: ReadonlyMap<string, Held>;
}

export type Law = SpringLaw | DamperLaw | InerterLaw | HoldLaw;

export interface Element {
  readonly path: string;
  /** The last part of its path: both sides of a corner element share it. */
  readonly name: string;
  readonly kind: ElementKind;
  readonly for: readonly Mode[];
  readonly side: "left" | "right" | undefined;
  /**
   * Set on what stands in the mechanism beside the element of the same path, which has the claim and the figures: a
   * further oil volume of a hydraulic link (`volume of b`), the resistance of a line (`flow of a`).
   */
  readonly part?: string | undefined;
  /** Undefined where none is written or it cannot be built; `connectionMissing` says which. */
  readonly connection: Connection | undefined;
  readonly connectionMissing: string | undefined;
  /** Undefined where no law is written or this kind is not computed yet; `lawMissing` says which. */
  readonly law: Law | undefined;
  readonly lawMissing: string | undefined;
  /** What it can bear, where that is worked out. */
  readonly strength?: Strength | undefined;
}
