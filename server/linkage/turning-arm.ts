/**
 * An arm that turns about a fixed axis, its end joined by a rigid link to a point: a rocker on
 * its rod, an anti-roll bar's lever on its drop link, a wishbone on its upright.
 *
 * End of the arm: e(φ) = foot + cos φ · u + sin φ · v, with foot on the axis, u the arm at design,
 * v = axis × u. The link asks |p − e|² = length², which is A cos φ + B sin φ = K with
 * A = u·D, B = v·D, K = (|u|² + |D|² − length²)/2, D = p − foot.
 *
 * Invariant: φ = 0 at design; the branch is the one that holds at design and is left only through a toggle.
 */
import { add, cross, dot, norm, scale, sub, type Vec3 } from "../maths/vec3.js";
import type { Jet, PointMotion } from "./corner.js";

export interface TurningArm {
  readonly foot: Vec3;
  /** Unit vector; φ turns about it by the right-hand rule. */
  readonly axis: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly radius: number;
  /** Length of the link. */
  readonly length: number;
  /** +1 or −1: the sign of B at design. */
  readonly branch: number;
}

/** Cosine and sine of an arm's angle, with sin μ of its link: 0 where the link has no moment about the axis. */
export interface ArmPosition {
  readonly cos: number;
  readonly sin: number;
  readonly transmission: number;
}

/**
 * Below this share of A² + B² the two branches cannot be told apart in double precision:
 * the link is in line with its arm.
 */
const TOGGLE = 1e-15;

/** The foot of `point` on the line through `pivot` along the unit vector `axis`. */
export const footOn = (pivot: Vec3, axis: Vec3, point: Vec3): Vec3 =>
  add(pivot, scale(axis, dot(sub(point, pivot), axis)));

/** The same arm with the sense of its axis turned round. */
export const reversed = (arm: TurningArm): TurningArm => ({
  ...arm,
  axis: scale(arm.axis, -1),
  v: scale(arm.v, -1),
  branch: -arm.branch,
});

/**
 * An arm from its design position: `end` is joined to `far` by a link that is `lengthen` longer than their distance.
 * `axis` has to be a unit vector; the caller has ruled out an end on the axis and a toggle (`isInLine`).
 */
export const turningArm = (pivot: Vec3, axis: Vec3, end: Vec3, far: Vec3, lengthen = 0): TurningArm => {
  const foot = footOn(pivot, axis, end);
  const u = sub(end, foot);
  const v = cross(axis, u);
  const b = dot(v, sub(far, foot));
  return { foot, axis, u, v, radius: norm(u), length: norm(sub(far, end)) + lengthen, branch: b < 0 ? -1 : 1 };
};

/** The angle at which the arm's link reaches `p`; undefined where no angle does. */
export const closeArm = (arm: TurningArm, p: Vec3): ArmPosition | undefined => {
  const d = sub(p, arm.foot);
  const a = dot(arm.u, d);
  const b = dot(arm.v, d);
  const k = 0.5 * (arm.radius * arm.radius + dot(d, d) - arm.length * arm.length);
  const square = a * a + b * b;
  const rest = square - k * k;
  if (!(rest > TOGGLE * square)) return undefined;
  const root = Math.sqrt(rest);
  const h = arm.branch * root;
  return {
    cos: (a * k + b * h) / square,
    sin: (b * k - a * h) / square,
    transmission: root / (arm.radius * arm.length),
  };
};

/**
 * φ with its derivatives with respect to whatever `p` is differentiated by. With q = p − e and e_φ = de/dφ,
 * differentiating |q|² = const once and twice gives
 * φ' = q·p' / q·e_φ,  φ'' = (q·(p'' + φ'² (e − foot)) + |p' − φ' e_φ|²) / q·e_φ.
 * Singular only in a toggle, which `closeArm` has ruled out.
 */
export const armAngle = (arm: TurningArm, at: { readonly cos: number; readonly sin: number }, p: PointMotion): Jet => {
  const { foot, u, v } = arm;
  const { cos, sin } = at;
  // e − foot, e_φ and q.
  const rx = u[0] * cos + v[0] * sin;
  const ry = u[1] * cos + v[1] * sin;
  const rz = u[2] * cos + v[2] * sin;
  const tx = v[0] * cos - u[0] * sin;
  const ty = v[1] * cos - u[1] * sin;
  const tz = v[2] * cos - u[2] * sin;
  const qx = p.p[0] - foot[0] - rx;
  const qy = p.p[1] - foot[1] - ry;
  const qz = p.p[2] - foot[2] - rz;
  const moment = qx * tx + qy * ty + qz * tz;
  const d = (qx * p.d[0] + qy * p.d[1] + qz * p.d[2]) / moment;
  const square = d * d;
  const bend = qx * (p.dd[0] + rx * square) + qy * (p.dd[1] + ry * square) + qz * (p.dd[2] + rz * square);
  const sx = p.d[0] - tx * d;
  const sy = p.d[1] - ty * d;
  const sz = p.d[2] - tz * d;
  return { value: Math.atan2(sin, cos), d, dd: (bend + sx * sx + sy * sy + sz * sz) / moment };
};
