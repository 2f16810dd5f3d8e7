/**
 * Everything about a corner that is worked out once: its bodies, the numbers of the inner loop,
 * the senses of its axes and how far it goes. In: geometry; out: `Mechanism`, or what is degenerate.
 *
 * Invariant: immutable; θ and the rocker's angle both rise with bump at design.
 */
import { scale } from "../maths/vec3.js";
import { type Constants, constantsOf } from "./constants.js";
import { cornerMotion } from "./corner-motion.js";
import { degenerate, type Degenerate, type HardpointGeometry } from "./geometry.js";
import { PLACED, placeRocker, placeUpright, Pose, slope } from "./position.js";
import { PoseRates } from "./pose-rates.js";
import { IN_LINE, type Skeleton, skeletonOf } from "./skeleton.js";
import { type Branch, branchOf } from "./solve-travel.js";
import { travelLimits } from "./travel-limits.js";
import { reversed } from "./turning-arm.js";

export interface Mechanism {
  readonly skeleton: Skeleton;
  readonly branch: Branch;
}

/** dz/dθ over the corner's size below which the wheel centre does not move vertically. */
const NO_RISE = 1e-9;

const placedAtDesign = (k: Constants): Pose | undefined => {
  const p = new Pose();
  if (placeUpright(k, p) !== PLACED || placeRocker(k, p) !== PLACED) return undefined;
  return k.carrier === 0 || Math.abs(p.rootR) > IN_LINE * k.rodScale ? p : undefined;
};

/** The skeleton with the lower axis turned so that θ rises with the wheel, or why it cannot. */
function riseWithBump(k: Skeleton): Skeleton | Degenerate {
  const constants = constantsOf(k);
  const p = placedAtDesign(constants);
  if (p === undefined) return degenerate(k.geometry.rod?.kind ?? "upper-wishbone", "in-line");
  const rise = slope(constants, p);
  if (!(Math.abs(rise) > NO_RISE * k.size)) return degenerate("wheel", "no-travel");
  return rise > 0 ? k : { ...k, lowerAxis: scale(k.lowerAxis, -1) };
}

/** The skeleton with the rocker's axis turned so that bump turns it positively at design. */
function rockerWithBump(k: Skeleton): Skeleton {
  const constants = constantsOf(k);
  const p = placedAtDesign(constants);
  if (p === undefined || k.rocker === undefined) return k;
  slope(constants, p);
  const rate = cornerMotion(k, constants, p, new PoseRates(), 0).rocker?.d ?? 0;
  return rate < 0 ? { ...k, rocker: reversed(k.rocker) } : k;
}

/** `steerHeld`: the planar corner, whose upright keeps its steer whatever the track rod. */
export function mechanismOf(geometry: HardpointGeometry, steerHeld: boolean): Mechanism | Degenerate {
  const drawn = skeletonOf(geometry, steerHeld);
  if ("kind" in drawn) return drawn;
  const rising = riseWithBump(drawn);
  if ("kind" in rising) return rising;
  const skeleton = rockerWithBump(rising);
  const constants = constantsOf(skeleton);
  const limits = travelLimits(constants, geometry.rod?.kind ?? "push-rod");
  return { skeleton, branch: branchOf(constants, limits, skeleton.size, new Pose()) };
}
