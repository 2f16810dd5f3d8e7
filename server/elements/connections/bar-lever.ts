/**
 * A lever of an anti-roll bar with the drop link that works it, in the frame of a left corner:
 * its angle, and where its end is, against the travel of its own wheel.
 *
 * Invariant: the drop link keeps its design length; its upper end is carried by a body of the corner.
 */
import type { Body, CornerMotion, Jet, PointMotion } from "../../linkage/corner.js";
import { type Lever, leverAngle, type LeverMotion, leverMotion } from "../../linkage/lever.js";
import { cross, dot, sub, unit, type Vec3 } from "../../maths/vec3.js";
import type { NoDeflection } from "../deflection.js";

export interface BarLever {
  readonly lever: Lever;
  /** What carries the upper end of the drop link, and where that end is at design. */
  readonly body: Body;
  readonly linkEnd: Vec3;
}

const doesNotReach = (side: "left" | "right"): NoDeflection => ({ kind: "no-deflection", reason: "drop-link", side });

/** Angle and end of the lever; `side` only names the drop link that does not reach. */
export function barLeverMotion(
  bar: BarLever,
  corner: CornerMotion,
  side: "left" | "right",
): LeverMotion | NoDeflection {
  const motion = leverMotion(bar.lever, corner.point(bar.body, bar.linkEnd));
  return "kind" in motion ? doesNotReach(side) : motion;
}

/** The angle alone. */
export function barLeverAngle(bar: BarLever, corner: CornerMotion, side: "left" | "right"): Jet | NoDeflection {
  const angle = leverAngle(bar.lever, corner.point(bar.body, bar.linkEnd));
  return "kind" in angle ? doesNotReach(side) : angle;
}

/** Where the lever's end is. */
export function leverEnd(bar: BarLever, corner: CornerMotion, side: "left" | "right"): PointMotion | NoDeflection {
  const motion = barLeverMotion(bar, corner, side);
  return "kind" in motion ? motion : motion.end;
}

/**
 * Moment arm of the drop link about the lever's axis at design, m: change of the link's length for
 * each radian of the lever.
 */
export function linkMomentArm(bar: BarLever): number {
  const { arm, end } = bar.lever;
  const along = unit(sub(bar.linkEnd, end));
  return Math.abs(dot(arm.axis, cross(arm.u, along)));
}
