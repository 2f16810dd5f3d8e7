/**
 * The whole corner at one travel, with first and second derivatives: takes the pose that the inner
 * loop has placed and adds velocity and acceleration analysis, body by body.
 *
 * Invariant: positions and dz/dθ are those of `position.ts`; nothing is solved twice.
 */
import { add, cross, dot, scale, sub, type Vec3 } from "../maths/vec3.js";
import { trackRodInner } from "./geometry.js";
import type { Body, CornerMotion, Jet, PointMotion, WheelMotion } from "./corner.js";
import { inUpright, type Skeleton } from "./skeleton.js";
import type { Pose } from "./position.js";
import { carry, carryRod, fixedPoint, hinged, type RigidMotion } from "./rigid-motion.js";
import { armAngle, armVector, footOn } from "./turning-arm.js";
import { wheelMotion } from "./wheel.js";

/** First and second derivatives with respect to the lower wishbone's angle θ. */
interface InAngle {
  readonly lower: PointMotion;
  readonly upper: { readonly d: number; readonly dd: number };
  readonly spin: Vec3;
  readonly spinRate: Vec3;
}

/** Parts of `v × w` nested: ω × (ω × r). */
const centripetal = (spin: Vec3, r: Vec3): Vec3 => cross(spin, cross(spin, r));

/**
 * Accelerations against θ. The rigid upright gives the upper wishbone's φ'' from (U − L)·(U'' − L'') + |U' − L'|² = 0;
 * the steering axis n'' = (U'' − L'')/|U − L| gives the upright's α up to a turn μ about n; the rigid track rod gives μ from
 * (T − I)·T'' + |T'|² = 0.
 */
function accelerations(k: Skeleton, p: Pose): InAngle {
  const l: Vec3 = [p.lx, p.ly, p.lz];
  const foot = footOn(k.geometry.lower.fore, k.lowerAxis, l);
  const radius = sub(l, foot);
  const lower: PointMotion = { p: l, d: cross(k.lowerAxis, radius), dd: scale(radius, -1) };
  const [arm, tangent] = armVector(k.upper, { cos: p.cosU, sin: p.sinU });
  const n: Vec3 = [p.nx, p.ny, p.nz];
  const e = scale(n, k.upper.length);
  const de = sub(scale(tangent, p.rateU), lower.d);
  const towards = scale(arm, p.rateU * p.rateU);
  const dd = (dot(e, add(lower.dd, towards)) - dot(de, de)) / dot(e, tangent);
  const dde = sub(sub(scale(tangent, dd), towards), lower.dd);
  const over = 1 / k.upper.length;
  const spin: Vec3 = [p.spinX, p.spinY, p.spinZ];
  const across = cross(n, sub(scale(dde, over), cross(spin, scale(de, over))));
  return {
    lower,
    upper: { d: p.rateU, dd },
    spin,
    spinRate: add(across, scale(n, aboutAxis(k, p, lower, spin, across))),
  };
}

/** μ: the part of the upright's α about the steering axis, from the track rod. */
function aboutAxis(k: Skeleton, p: Pose, lower: PointMotion, spin: Vec3, across: Vec3): number {
  if (k.steerHeld) return 0;
  const arm = add(scale([p.nx, p.ny, p.nz], k.trackAlong), [p.rx, p.ry, p.rz]);
  const rod = sub(add(lower.p, arm), trackRodInner(k.geometry.trackRod));
  const velocity = add(lower.d, cross(spin, arm));
  const known = add(lower.dd, add(cross(across, arm), centripetal(spin, arm)));
  return -(dot(rod, known) + dot(velocity, velocity)) / p.rootT;
}

/** θ against travel, from the wheel centre's height: θ' = 1/z_θ, θ'' = −z_θθ/z_θ³. */
function angleInTravel(p: Pose, a: InAngle): { readonly d: number; readonly dd: number } {
  const r: Vec3 = [p.wx - p.lx, p.wy - p.ly, p.wz - p.lz];
  const bend = a.lower.dd[2] + cross(a.spinRate, r)[2] + centripetal(a.spin, r)[2];
  const d = 1 / p.slope;
  return { d, dd: -bend * d * d * d };
}

/** Chain rule for a scalar or a vector given against θ. */
const chain = (of: { readonly d: number; readonly dd: number }, by: { readonly d: number; readonly dd: number }) => ({
  d: of.d * by.d,
  dd: of.dd * by.d * by.d + of.d * by.dd,
});

function uprightMotion(
  k: Skeleton,
  p: Pose,
  a: InAngle,
  angle: { readonly d: number; readonly dd: number },
): RigidMotion {
  const square = angle.d * angle.d;
  const n: Vec3 = [p.nx, p.ny, p.nz];
  const rho: Vec3 = [p.rx, p.ry, p.rz];
  const m: Vec3 = [p.mx, p.my, p.mz];
  const corner = k.geometry.lower.outer;
  return {
    design: corner,
    origin: {
      p: a.lower.p,
      d: scale(a.lower.d, angle.d),
      dd: add(scale(a.lower.dd, square), scale(a.lower.d, angle.dd)),
    },
    turn: (v) => {
      const [along, forward, side] = inUpright(k, add(corner, v));
      return add(scale(n, along), add(scale(rho, forward), scale(m, side)));
    },
    spin: scale(a.spin, angle.d),
    spinRate: add(scale(a.spinRate, square), scale(a.spin, angle.dd)),
  };
}

interface Bodies {
  readonly lower: RigidMotion;
  readonly upper: RigidMotion;
  readonly upright: RigidMotion;
}

function bodiesOf(k: Skeleton, p: Pose): Bodies {
  const a = accelerations(k, p);
  const angle = angleInTravel(p, a);
  return {
    lower: hinged(k.geometry.lower.fore, k.lowerAxis, { cos: p.cosL, sin: p.sinL }, angle),
    upper: hinged(k.upper.foot, k.upper.axis, { cos: p.cosU, sin: p.sinU }, chain(a.upper, angle)),
    upright: uprightMotion(k, p, a, angle),
  };
}

/** Rocker angle and body, from the motion of its rod's outer end. */
function rockerOf(k: Skeleton, p: Pose, bodies: Bodies): { angle: Jet; body: RigidMotion } | undefined {
  const { rod } = k.geometry;
  if (k.rocker === undefined || rod === undefined) return undefined;
  const carriers = { "lower-wishbone": bodies.lower, "upper-wishbone": bodies.upper, upright: bodies.upright };
  const at = { cos: p.cosR, sin: p.sinR };
  const angle = armAngle(k.rocker, at, carry(carriers[rod.on], rod.outer));
  return { angle, body: hinged(k.rocker.foot, k.rocker.axis, at, angle) };
}

/** A corner at one travel. The wheel, which most who ask for eyes do not look at, is worked out when it is asked for. */
class Moving implements CornerMotion {
  readonly travel: number;
  readonly rocker: Jet | undefined;
  readonly #k: Skeleton;
  readonly #bodies: Bodies;
  readonly #rocker: RigidMotion | undefined;
  readonly #axis: Vec3;
  #wheel: { readonly motion: WheelMotion | undefined } | undefined;

  constructor(k: Skeleton, p: Pose, travel: number) {
    this.travel = travel;
    this.#k = k;
    this.#bodies = bodiesOf(k, p);
    const rocker = rockerOf(k, p, this.#bodies);
    this.rocker = rocker?.angle;
    this.#rocker = rocker?.body;
    this.#axis = [p.nx, p.ny, p.nz];
  }

  get wheel(): WheelMotion | undefined {
    const { wheel } = this.#k.geometry;
    this.#wheel ??= { motion: wheelMotion(wheel, this.#bodies.upright, this.#axis, this.#k.steerHeld) };
    return this.#wheel.motion;
  }

  point(body: Body, design: Vec3): PointMotion {
    const bodies = this.#bodies;
    if (body === "lower-wishbone") return carry(bodies.lower, design);
    if (body === "upper-wishbone") return carry(bodies.upper, design);
    if (body === "upright") return carry(bodies.upright, design);
    if (body === "rocker" && this.#rocker !== undefined) return carry(this.#rocker, design);
    if (body !== "track-rod" || this.#k.steerHeld) return fixedPoint(design);
    const { trackRod } = this.#k.geometry;
    const moved: Vec3 = [0, trackRod.moved ?? 0, 0];
    // The rod as drawn, put where the rack holds its inner end, is what turns.
    const outer = carry(bodies.upright, trackRod.outer);
    return carryRod(trackRodInner(trackRod), add(trackRod.outer, moved), outer, add(design, moved));
  }
}

/** The motion of a corner that `p` has been placed for, rates (`slope`) included. */
export const cornerMotion = (k: Skeleton, p: Pose, travel: number): CornerMotion => new Moving(k, p, travel);
