/**
 * The lever of an anti-roll bar, joined by a rigid drop link to a point that the linkage moves.
 * In: pivot, axis and end at design, and the motion of the link's other end; out: the lever's angle
 * with its derivatives, its end's motion, or that the link does not reach.
 *
 * Angle 0 at design, rad; positive as bump of its own wheel turns it at design, whatever the axis's sense.
 */
import { norm, sub, unit, type Vec3 } from "../maths/vec3.js";
import { IN_LINE, isUsable } from "./skeleton.js";
import type { Jet, PointMotion } from "./corner.js";
import { degenerate, type Degenerate } from "./geometry.js";
import { carry, hinged } from "./rigid-motion.js";
import { armAngle, closeArm, reversed, type TurningArm, turningArm } from "./turning-arm.js";

export interface LeverPoints {
  readonly pivot: Vec3;
  /** A direction of any length and either sense. */
  readonly axis: Vec3;
  readonly end: Vec3;
}

/** A lever with its drop link, ready to be turned. */
export interface Lever {
  readonly end: Vec3;
  readonly arm: TurningArm;
}

/** The drop link does not reach: by how much it would have to change its length at least, m. */
export interface LinkBinds {
  readonly kind: "link-binds";
  readonly link: "drop-link";
  readonly gap: number;
}

export interface LeverMotion {
  readonly angle: Jet;
  readonly end: PointMotion;
  /** Angle of the drop link from its toggle with the lever, rad. */
  readonly transmission: number;
}

/** Ends nearer than this share of the lever's size are one. */
const SAME = 1e-9;

/**
 * A lever from its design position; `linkEnd` is the far end of the drop link at design, moving with bump.
 *
 * @param longer how much longer than drawn the drop link is set, m: the lever's angle is then not 0 at design
 */
export function leverOf(points: LeverPoints, linkEnd: PointMotion, longer = 0): Lever | Degenerate {
  const all = [...points.pivot, ...points.axis, ...points.end, ...linkEnd.p];
  if (!all.every(isUsable)) return degenerate("lever", "not-finite");
  if (!(norm(points.axis) > 0)) return degenerate("lever", "no-axis");
  const size = Math.max(norm(sub(points.end, points.pivot)), norm(sub(linkEnd.p, points.pivot)));
  const arm = turningArm(points.pivot, unit(points.axis), points.end, linkEnd.p, longer);
  if (!(arm.radius > SAME * size)) return degenerate("lever", "on-axis");
  if (!(arm.length > SAME * size)) return degenerate("drop-link", "coincident");
  const at = closeArm(arm, linkEnd.p);
  if (at === undefined || !(at.transmission > IN_LINE)) return degenerate("drop-link", "in-line");
  const { d } = armAngle(arm, at, linkEnd);
  return { end: points.end, arm: d < 0 ? reversed(arm) : arm };
}

/** The angle and end of the lever where its drop link's far end is at `linkEnd`. */
export function leverMotion(lever: Lever, linkEnd: PointMotion): LeverMotion | LinkBinds {
  const at = closeArm(lever.arm, linkEnd.p);
  if (at === undefined) return binds(lever, linkEnd);
  const angle = armAngle(lever.arm, at, linkEnd);
  const body = hinged(lever.arm.foot, lever.arm.axis, at, angle);
  return { angle, end: carry(body, lever.end), transmission: Math.asin(Math.min(1, at.transmission)) };
}

/** The lever's angle alone, with first and second derivative. */
export const leverAngle = (lever: Lever, linkEnd: PointMotion): Jet | LinkBinds => {
  const at = closeArm(lever.arm, linkEnd.p);
  return at === undefined ? binds(lever, linkEnd) : armAngle(lever.arm, at, linkEnd);
};

const binds = ({ arm }: Lever, { p }: PointMotion): LinkBinds => ({
  kind: "link-binds",
  link: "drop-link",
  gap: gapOf(arm, p),
});

/** How far the circle of the lever's end stays from the sphere about `p`. */
function gapOf(arm: TurningArm, p: Vec3): number {
  const d = sub(p, arm.foot);
  const along = d[0] * arm.axis[0] + d[1] * arm.axis[1] + d[2] * arm.axis[2];
  const across = Math.sqrt(Math.max(0, d[0] * d[0] + d[1] * d[1] + d[2] * d[2] - along * along));
  const nearest = Math.hypot(along, across - arm.radius);
  const farthest = Math.hypot(along, across + arm.radius);
  return Math.max(nearest - arm.length, arm.length - farthest, 0);
}
