/**
 * Rigid bodies on the move: where a body-fixed point is and how it goes on, against wheel travel.
 *
 * With origin o, turned vector r = R (design − o₀), spin ω and its derivative α:
 * p = o + r,  p' = o' + ω × r,  p'' = o'' + α × r + ω × (ω × r).
 *
 * Invariant: derivatives are those of the position that is returned, by formula, never by differencing.
 *
 * `carry` and `hinged` are written out in components: they make up most of an analysis, and what they leave
 * behind is a third of what a keystroke leaves to the collector.
 */
import { add, cross, dot, scale, sub, type Vec3 } from "../maths/vec3.js";
import type { Jet, PointMotion } from "./corner.js";

/** A rotation, row by row. */
export type Turn = readonly [number, number, number, number, number, number, number, number, number];

export interface RigidMotion {
  /** A point of the body at design position, and its motion. */
  readonly design: Vec3;
  readonly origin: PointMotion;
  /** From design. */
  readonly turn: Turn;
  readonly spin: Vec3;
  readonly spinRate: Vec3;
}

const ZERO: Vec3 = [0, 0, 0];

/** A point that does not move. */
export const fixedPoint = (p: Vec3): PointMotion => ({ p, d: ZERO, dd: ZERO });

export const turned = (t: Turn, [x, y, z]: Vec3): Vec3 => [
  t[0] * x + t[1] * y + t[2] * z,
  t[3] * x + t[4] * y + t[5] * z,
  t[6] * x + t[7] * y + t[8] * z,
];

/** The motion of a point of `body`, given at its design position. */
export function carry(body: RigidMotion, design: Vec3): PointMotion {
  const { origin, design: o, turn: t, spin, spinRate } = body;
  const { p, d, dd } = origin;
  const u = design[0] - o[0];
  const v = design[1] - o[1];
  const w = design[2] - o[2];
  const x = t[0] * u + t[1] * v + t[2] * w;
  const y = t[3] * u + t[4] * v + t[5] * w;
  const z = t[6] * u + t[7] * v + t[8] * w;
  const [wx, wy, wz] = spin;
  const [ax, ay, az] = spinRate;
  const vx = wy * z - wz * y;
  const vy = wz * x - wx * z;
  const vz = wx * y - wy * x;
  return {
    p: [p[0] + x, p[1] + y, p[2] + z],
    d: [d[0] + vx, d[1] + vy, d[2] + vz],
    dd: [
      dd[0] + (ay * z - az * y) + (wy * vz - wz * vy),
      dd[1] + (az * x - ax * z) + (wz * vx - wx * vz),
      dd[2] + (ax * y - ay * x) + (wx * vy - wy * vx),
    ],
  };
}

/** A direction fixed to `body`, given at design position, with its derivatives. */
export function carryDirection(body: RigidMotion, design: Vec3): PointMotion {
  const r = turned(body.turn, design);
  const v = cross(body.spin, r);
  return { p: r, d: v, dd: add(cross(body.spinRate, r), cross(body.spin, v)) };
}

/** A body that turns about a fixed axis (unit) through `foot`, by an angle with cosine, sine and derivatives. */
export function hinged(
  foot: Vec3,
  axis: Vec3,
  at: { readonly cos: number; readonly sin: number },
  angle: Pick<Jet, "d" | "dd">,
): RigidMotion {
  return {
    design: foot,
    origin: fixedPoint(foot),
    turn: aboutAxis(axis, at.cos, at.sin),
    spin: scale(axis, angle.d),
    spinRate: scale(axis, angle.dd),
  };
}

/** v cos + (axis × v) sin + axis (axis · v)(1 − cos) as a matrix. */
function aboutAxis([x, y, z]: Vec3, cos: number, sin: number): Turn {
  const rest = 1 - cos;
  const [xs, ys, zs] = [x * sin, y * sin, z * sin];
  const [xr, yr, zr] = [x * rest, y * rest, z * rest];
  return [
    cos + x * xr,
    x * yr - zs,
    x * zr + ys,
    x * yr + zs,
    cos + y * yr,
    y * zr - xs,
    x * zr - ys,
    y * zr + xs,
    cos + z * zr,
  ];
}

/** 1 + cos of a rod's turn that counts as half a turn. */
const TURNED_BACK = 1e-9;

/**
 * A point of a rod between two ball joints. Its turn about its own length is not determined by the joints;
 * the shortest turn from design is taken, R r = r + k × r + k × (k × r)/(1 + c) with k = a × b, c = a·b, a and b the
 * rod's direction at design and now. Singular where the rod has turned by half a turn.
 */
export function carryRod(inner: Vec3, outerDesign: Vec3, outer: PointMotion, design: Vec3): PointMotion {
  const whole = sub(outerDesign, inner);
  const over = 1 / Math.sqrt(dot(whole, whole));
  const a = scale(whole, over);
  const b = scale(sub(outer.p, inner), over);
  const db = scale(outer.d, over);
  const ddb = scale(outer.dd, over);
  const r = sub(design, inner);
  const [k, dk, ddk] = [cross(a, b), cross(a, db), cross(a, ddb)];
  const f = 1 / Math.max(TURNED_BACK, 1 + dot(a, b));
  const df = -dot(a, db) * f * f;
  const ddf = -dot(a, ddb) * f * f + 2 * df * df * (1 / f);
  const kr = cross(k, r);
  const dkr = cross(dk, r);
  const ddkr = cross(ddk, r);
  const w = cross(k, kr);
  const dw = add(cross(dk, kr), cross(k, dkr));
  const ddw = add(add(cross(ddk, kr), scale(cross(dk, dkr), 2)), cross(k, ddkr));
  return {
    p: add(inner, add(add(r, kr), scale(w, f))),
    d: add(dkr, add(scale(dw, f), scale(w, df))),
    dd: add(ddkr, add(scale(ddw, f), add(scale(dw, 2 * df), scale(w, ddf)))),
  };
}
