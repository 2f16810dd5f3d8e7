/**
 * The ends of a two-point element: fixed to the chassis, to a body of one corner, or to the end
 * of a lever. Right-hand ends are kept as their mirror images, in the frame of a left corner.
 *
 * Invariant: an end knows its design position and nothing of what it is joined to.
 */
import type { AxleMotion, Body, PointMotion } from "../linkage/corner.js";
import type { Vec3 } from "../maths/vec3.js";
import { mirror } from "../maths/vec3.js";
import type { BarLever } from "./connections/bar-lever.js";
import { leverEnd } from "./connections/bar-lever.js";
import type { NoDeflection } from "./deflection.js";

type Side = "left" | "right";

export type End =
  /** A point of the car frame, as written. */
  | { readonly kind: "chassis"; readonly point: Vec3 }
  /** A point carried by a body of one corner: its design position in the frame of a left corner. */
  | { readonly kind: "body"; readonly side: Side; readonly body: Body; readonly point: Vec3 }
  | { readonly kind: "lever"; readonly side: Side; readonly lever: BarLever };

/** Where the end is at design, in the car frame, m. */
export function designPoint(end: End): Vec3 {
  if (end.kind === "chassis") return end.point;
  const left = end.kind === "body" ? end.point : end.lever.lever.end;
  return end.side === "left" ? left : mirror(left);
}

const STILL: Vec3 = [0, 0, 0];

/**
 * Position and derivatives with respect to the end's own wheel travel, in the frame of a left
 * corner (for a chassis point: the car frame, at rest).
 */
export function endMotion(end: End, motion: AxleMotion): PointMotion | NoDeflection {
  if (end.kind === "chassis") return { p: end.point, d: STILL, dd: STILL };
  const corner = end.side === "left" ? motion.left : motion.right;
  return end.kind === "body" ? corner.point(end.body, end.point) : leverEnd(end.lever, corner, end.side);
}
