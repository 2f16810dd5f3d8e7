/**
 * Roll centres, in both ways that engineers use, and which is which:
 *
 * - exact, by virtual work: the lateral force at the contact point does no work along the line that is
 *   perpendicular to the point's own path (the n-line). Follows from the motion; caster and toe change are in it.
 * - classical, from the drawing board: the wishbone planes cut by a transverse plane, their intersection (the instant
 *   centre) joined to the contact point.
 *
 * The two differ by the steer and caster that the drawing leaves out (0.5 % in the check case). For display: load
 * transfer is worked out from virtual work, not from these heights. Frame: the car's, y = 0 the centre plane.
 */
import { cross, sub, type Vec3 } from "../maths/vec3.js";
import type { PointMotion } from "./corner.js";
import type { WishbonePoints } from "./geometry.js";

/** A point of a view plane, or the direction in which two parallel lines meet at infinity. `across` is y or x. */
export interface ViewPoint {
  readonly kind: "point" | "direction";
  readonly across: number;
  readonly z: number;
}

/** A line a·across + b·z = c of a view plane. */
type ViewLine = readonly [number, number, number];

/** Determinant over the product of the lines' normals below which they count as parallel. */
const PARALLEL = 1e-12;

/** The plane of a wishbone cut by the plane where coordinate `axis` (0: x, 1: y) is `at`. */
const cut = (w: WishbonePoints, axis: 0 | 1, at: number): ViewLine => {
  const normal = cross(sub(w.fore, w.outer), sub(w.aft, w.outer));
  const offset = normal[0] * w.outer[0] + normal[1] * w.outer[1] + normal[2] * w.outer[2];
  return [normal[axis === 0 ? 1 : 0], normal[2], offset - normal[axis] * at];
};

const intersect = (l: ViewLine, m: ViewLine): ViewPoint | undefined => {
  const det = l[0] * m[1] - l[1] * m[0];
  const scale = Math.hypot(l[0], l[1]) * Math.hypot(m[0], m[1]);
  if (!(scale > 0)) return undefined;
  if (Math.abs(det) > PARALLEL * scale)
    return { kind: "point", across: (l[2] * m[1] - l[1] * m[2]) / det, z: (l[0] * m[2] - l[2] * m[0]) / det };
  const length = Math.hypot(l[0], l[1]);
  return { kind: "direction", across: -l[1] / length, z: l[0] / length };
};

/** Front-view instant centre (y, z) of both wishbones in the plane x; undefined where a wishbone lies in that plane. */
export const frontViewCentre = (lower: WishbonePoints, upper: WishbonePoints, x: number): ViewPoint | undefined =>
  intersect(cut(lower, 0, x), cut(upper, 0, x));

/** Side-view instant centre (x, z) of both wishbones in the plane y; undefined where a wishbone lies in that plane. */
export const sideViewCentre = (lower: WishbonePoints, upper: WishbonePoints, y: number): ViewPoint | undefined =>
  intersect(cut(lower, 1, y), cut(upper, 1, y));

/**
 * Slope dz/d(across) of the line from a point of the view to an instant centre; undefined where it is vertical.
 * In the side view this is tan φ of the classical anti-dive construction, positive where the centre is above and ahead.
 */
export const slopeTo = (from: { readonly across: number; readonly z: number }, to: ViewPoint): number | undefined => {
  const run = to.kind === "point" ? to.across - from.across : to.across;
  const rise = to.kind === "point" ? to.z - from.z : to.z;
  const slope = rise / run;
  return Number.isFinite(slope) ? slope : undefined;
};

/** Classical height, m, in the frame of the points: the line from contact point to instant centre, at the centre plane. */
export function classicalRollCentre(contact: Vec3, centre: ViewPoint): number | undefined {
  const slope = slopeTo({ across: contact[1], z: contact[2] }, centre);
  return slope === undefined ? undefined : contact[2] - contact[1] * slope;
}

/**
 * Exact height, m, of a mirrored axle at equal travels: z + y · (dy/dz) of the contact point, the n-line at the centre
 * plane. Undefined where the contact point moves sideways only.
 */
export function rollCentreHeight(contact: PointMotion): number | undefined {
  const height = contact.p[2] + (contact.p[1] * contact.d[1]) / contact.d[2];
  return Number.isFinite(height) ? height : undefined;
}

/** Exact roll centre (y, z) at unequal travels: where both n-lines meet; both in the car's frame. Undefined if parallel. */
export function rollCentre(
  left: PointMotion,
  right: PointMotion,
): { readonly y: number; readonly z: number } | undefined {
  const nLine = ({ p, d }: PointMotion): ViewLine => [d[1], d[2], d[1] * p[1] + d[2] * p[2]];
  const found = intersect(nLine(left), nLine(right));
  return found?.kind === "point" ? { y: found.across, z: found.z } : undefined;
}
