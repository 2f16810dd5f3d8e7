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

export interface RigidMotion {
  /** A point of the body at design position, and its motion. */
  readonly design: Vec3;
  readonly origin: PointMotion;
  /** The turn from design. */
  turn(v: Vec3): Vec3;
  readonly spin: Vec3;
  readonly spinRate: Vec3;
}

const ZERO: Vec3 = [0, 0, 0];

/** A point that does not move. */
export const fixedPoint = (p: Vec3): PointMotion => ({ p, d: ZERO, dd: ZERO });

/** The motion of a point of `body`, given at its design position. */
export function carry(body: RigidMotion, design: Vec3): PointMotion {
  const {
    origin: { p, d, dd },
    design: o,
    spin: [wx, wy, wz],
    spinRate: [ax, ay, az],
  } = body;
  const r = body.turn([design[0] - o[0], design[1] - o[1], design[2] - o[2]]);
  const [x, y, z] = r;
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
  const r = body.turn(design);
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
  const [x, y, z] = axis;
  const { cos, sin } = at;
  return {
    design: foot,
    origin: fixedPoint(foot),
    // v cos + (axis × v) sin + axis (axis · v)(1 − cos)
    turn: ([a, b, c]) => {
      const along = (x * a + y * b + z * c) * (1 - cos);
      return [
        a * cos + (y * c - z * b) * sin + x * along,
        b * cos + (z * a - x * c) * sin + y * along,
        c * cos + (x * b - y * a) * sin + z * along,
      ];
    },
    spin: scale(axis, angle.d),
    spinRate: scale(axis, angle.dd),
  };
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
