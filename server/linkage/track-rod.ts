/**
 * What a longer track rod does to the wheel at one position, travel held: toe and camber for each metre.
 *
 * The upright turns by δ about the steering axis n through the lower outer joint L: a point p of it moves by n × (p − L) δ,
 * the rod from I to T lengthens by e · (n × (T − L)) δ with e along it, and the wheel centre rises by b δ. The corner then
 * goes back by b δ along its own motion, in which the rod keeps its length. With ' against travel
 *
 *   dtoe/dℓ = (toe_δ − b toe') / (e · (n × (T − L))),   dcamber/dℓ alike.
 *
 * Singular where the rod points through the steering axis: then there is none.
 */
import { add, cross, dot, norm, scale, sub, unit, type Vec3 } from "../maths/vec3.js";
import type { CornerMotion } from "./corner.js";
import { spinAxis } from "./wheel.js";

/** Design positions, in the frame of a left corner. */
export interface SteeredPoints {
  readonly lower: Vec3;
  readonly upper: Vec3;
  readonly inner: Vec3;
  readonly outer: Vec3;
  readonly centre: Vec3;
  readonly camber: number;
  readonly toe: number;
}

/** rad/m. */
export interface ByTrackRod {
  readonly toe: number;
  readonly camber: number;
}

/** Share of its arm about the steering axis below which a rod does not steer. */
const NO_ARM = 1e-6;

export function byTrackRod(motion: CornerMotion, points: SteeredPoints): ByTrackRod | undefined {
  const { wheel } = motion;
  if (wheel === undefined) return undefined;
  const at = (design: Vec3): Vec3 => motion.point("upright", design).p;
  const [lower, upper, outer, centre] = [at(points.lower), at(points.upper), at(points.outer), wheel.centre.p];
  const spin = sub(at(add(points.centre, spinAxis(points.camber, points.toe))), at(points.centre));
  const n = unit(sub(upper, lower));
  const turned = (v: Vec3): Vec3 => cross(n, v);
  const arm = dot(unit(sub(outer, points.inner)), turned(sub(outer, lower)));
  if (!(Math.abs(arm) > NO_ARM * norm(sub(outer, lower)))) return undefined;
  const b = turned(sub(centre, lower))[2];
  const s = scale(spin, 1 / norm(spin));
  const ds = turned(s);
  const flat = s[0] * s[0] + s[1] * s[1];
  const toe = (ds[0] * s[1] - s[0] * ds[1]) / flat;
  const camber = -ds[2] / Math.sqrt(flat);
  return { toe: (toe - b * wheel.toe.d) / arm, camber: (camber - b * wheel.camber.d) / arm };
}
