/**
 * The whole corner at one travel, with first and second derivatives: takes the pose that the inner
 * loop has placed and how it moves on (`pose-rates.ts`), body by body.
 *
 * Invariant: positions and dz/dθ are those of `position.ts`; nothing is solved twice. What comes out keeps nothing of the
 * pose and of the rates that go in, which their owner uses again.
 */
import { add, cross, dot, scale, type Vec3 } from "../maths/vec3.js";
import type { Constants } from "./constants.js";
import { type RodCarrier, trackRodInner } from "./geometry.js";
import type { Body, CornerMotion, Jet, PointMotion, WheelMotion } from "./corner.js";
import type { Skeleton } from "./skeleton.js";
import type { Pose } from "./position.js";
import { type PoseRates, ratesOf } from "./pose-rates.js";
import { carry, carryRod, fixedPoint, hinged, type RigidMotion, type Turn } from "./rigid-motion.js";
import { armAngle } from "./turning-arm.js";
import { wheelMotion } from "./wheel.js";

/** From (n, ρ, n × ρ) at design to where they are now. */
function uprightTurn({ n, rho }: Skeleton, p: Pose): Turn {
  const over = 1 / dot(rho, rho);
  const [a, b, c] = n;
  const [d, e, f] = scale(rho, over);
  const [g, h, i] = scale(cross(n, rho), over);
  const { nx, ny, nz, rx, ry, rz, mx, my, mz } = p;
  return [
    nx * a + rx * d + mx * g,
    nx * b + rx * e + mx * h,
    nx * c + rx * f + mx * i,
    ny * a + ry * d + my * g,
    ny * b + ry * e + my * h,
    ny * c + ry * f + my * i,
    nz * a + rz * d + mz * g,
    nz * b + rz * e + mz * h,
    nz * c + rz * f + mz * i,
  ];
}

const uprightMotion = (k: Skeleton, p: Pose, r: PoseRates): RigidMotion => ({
  design: k.geometry.lower.outer,
  origin: { p: [p.lx, p.ly, p.lz], d: [r.dx, r.dy, r.dz], dd: [r.ddx, r.ddy, r.ddz] },
  turn: uprightTurn(k, p),
  spin: [r.spinX, r.spinY, r.spinZ],
  spinRate: [r.turnX, r.turnY, r.turnZ],
});

/** A wishbone's angle with its derivatives. */
interface Swing extends Pick<Jet, "d" | "dd"> {
  readonly cos: number;
  readonly sin: number;
}

/** A corner at one travel. Wishbones and wheel, which many who ask for eyes do not look at, are made when they are asked for. */
class Moving implements CornerMotion {
  readonly travel: number;
  readonly rocker: Jet | undefined;
  readonly #k: Skeleton;
  readonly #lower: Swing;
  readonly #upper: Swing;
  readonly #upright: RigidMotion;
  readonly #rocker: RigidMotion | undefined;
  readonly #axis: Vec3;
  #wheel: { readonly motion: WheelMotion | undefined } | undefined;

  constructor(k: Skeleton, p: Pose, rates: PoseRates, travel: number) {
    this.travel = travel;
    this.#k = k;
    this.#lower = { cos: p.cosL, sin: p.sinL, d: rates.lowerD, dd: rates.lowerDd };
    this.#upper = { cos: p.cosU, sin: p.sinU, d: rates.upperD, dd: rates.upperDd };
    this.#upright = uprightMotion(k, p, rates);
    this.#axis = [p.nx, p.ny, p.nz];
    const { rod } = k.geometry;
    if (k.rocker === undefined || rod === undefined) return;
    // Its angle, from the motion of its rod's outer end.
    const at = { cos: p.cosR, sin: p.sinR };
    this.rocker = armAngle(k.rocker, at, carry(this.#body(rod.on), rod.outer));
    this.#rocker = hinged(k.rocker.foot, k.rocker.axis, at, this.rocker);
  }

  #body(which: RodCarrier): RigidMotion {
    const { geometry, lowerAxis, upper } = this.#k;
    if (which === "upright") return this.#upright;
    return which === "lower-wishbone"
      ? hinged(geometry.lower.fore, lowerAxis, this.#lower, this.#lower)
      : hinged(upper.foot, upper.axis, this.#upper, this.#upper);
  }

  get wheel(): WheelMotion | undefined {
    this.#wheel ??= { motion: wheelMotion(this.#k.wheel, this.#upright, this.#axis, this.#k.steerHeld) };
    return this.#wheel.motion;
  }

  point(body: Body, design: Vec3): PointMotion {
    if (body === "rocker" && this.#rocker !== undefined) return carry(this.#rocker, design);
    if (body === "lower-wishbone" || body === "upper-wishbone" || body === "upright")
      return carry(this.#body(body), design);
    if (body !== "track-rod" || this.#k.steerHeld) return fixedPoint(design);
    const { trackRod } = this.#k.geometry;
    const moved: Vec3 = [0, trackRod.moved ?? 0, 0];
    // The rod as drawn, put where the rack holds its inner end, is what turns.
    const outer = carry(this.#upright, trackRod.outer);
    return carryRod(trackRodInner(trackRod), add(trackRod.outer, moved), outer, add(design, moved));
  }
}

/** The motion of a corner that `p` has been placed for, rates (`slope`) included; `rates` is written over. */
export function cornerMotion(
  k: Skeleton,
  constants: Constants,
  p: Pose,
  rates: PoseRates,
  travel: number,
): CornerMotion {
  ratesOf(constants, p, rates);
  return new Moving(k, p, rates, travel);
}
