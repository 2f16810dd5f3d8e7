/**
 * What a corner of the car offers to everything above it: at a wheel travel, where each
 * body is and how it moves on. One corner is always computed as a *left* one; the right side
 * is the mirror image (y → −y), put back by `sideOf` users through `mirrored`.
 *
 * Travel is the wheel centre's vertical movement relative to the body in m, bump positive.
 * Derivatives are with respect to travel and analytic.
 *
 * Invariant: linkage never sees text; a position that cannot be reached is data, not a throw.
 */
import type { Vec3 } from "../maths/vec3.js";

/** A value with its first and second derivative with respect to wheel travel. */
export interface Jet {
  readonly value: number;
  readonly d: number;
  readonly dd: number;
}

/** A point with its first and second derivative with respect to wheel travel. */
export interface PointMotion {
  readonly p: Vec3;
  readonly d: Vec3;
  readonly dd: Vec3;
}

export type Body = "chassis" | "lower-wishbone" | "upper-wishbone" | "upright" | "track-rod" | "rocker";

/** The state of one corner at one travel, in the frame of a left corner. */
export interface CornerMotion {
  readonly travel: number;
  /** A point fixed to `body`, given at its design position. */
  point(body: Body, design: Vec3): PointMotion;
  /** Angle about the rocker's axis from design, rad; positive as bump makes it at design. Undefined without a rocker. */
  readonly rocker: Jet | undefined;
  /** Wheel centre, camber, toe, contact patch; undefined for a corner given by ratios. */
  readonly wheel: WheelMotion | undefined;
}

export interface WheelMotion {
  readonly centre: PointMotion;
  /** ISO 8855, top outboard positive, rad. */
  readonly camber: Jet;
  /** Toe-in positive, rad. */
  readonly toe: Jet;
  /** Lowest point of the wheel's circle carried as a material point of the upright from design. */
  readonly contact: PointMotion;
  readonly caster: number | undefined;
  readonly kingpin: number | undefined;
}

export type BindingLink = "lower-wishbone" | "upper-wishbone" | "track-rod" | "push-rod" | "pull-rod" | "drop-link";

/** Why a demanded travel has no position. */
export interface Unreachable {
  readonly kind: "unreachable";
  readonly link: BindingLink;
  readonly travel: number;
  /** The furthest travel on the way there that can still be reached, m. */
  readonly limit: number;
}

/** How far a corner can go between two travels, and where it comes near to a toggle. */
export interface Reach {
  readonly from: number;
  readonly to: number;
  readonly bound: { readonly low: Unreachable | undefined; readonly high: Unreachable | undefined };
  /** Smallest transmission angle met on the way, rad: 0 is a toggle. One per link that can toggle. */
  readonly toggles: readonly { readonly link: BindingLink; readonly travel: number; readonly angle: number }[];
}

export interface Corner {
  readonly basis: "hardpoints" | "planar" | "ratio";
  motion(travel: number): CornerMotion | Unreachable;
  reach(from: number, to: number): Reach;
}

/** Both corners of an axle at one pair of travels, each in the frame of a left corner. */
export interface AxleMotion {
  readonly left: CornerMotion;
  readonly right: CornerMotion;
}
