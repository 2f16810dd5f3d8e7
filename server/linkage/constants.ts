/**
 * The fixed numbers of one corner, worked out once from its design positions so that the inner
 * loop of `position.ts` only multiplies and adds. In: a skeleton; out: `Constants`.
 *
 * Written as flat scalars because the inner loop reads them; names as in NOTATION.md:
 * l lower, u upper, t track rod, p rod's outer end, r rocker; f foot on the axis, u arm at design, v = axis × arm.
 *
 * Invariant: at design (θ = 0) every closed form gives the design positions.
 */
import { cross, dot, norm, sub, type Vec3 } from "../maths/vec3.js";
import { type RodCarrier, trackRodInner } from "./geometry.js";
import { inUpright, type Skeleton } from "./skeleton.js";
import { footOn } from "./turning-arm.js";

/** 0: no rocker is driven; else the body that carries the rod. */
export type Carrier = 0 | 1 | 2 | 3;

export interface Constants {
  readonly lfx: number;
  readonly lfy: number;
  readonly lfz: number;
  readonly lux: number;
  readonly luy: number;
  readonly luz: number;
  readonly lvx: number;
  readonly lvy: number;
  readonly lvz: number;
  readonly ufx: number;
  readonly ufy: number;
  readonly ufz: number;
  readonly uux: number;
  readonly uuy: number;
  readonly uuz: number;
  readonly uvx: number;
  readonly uvy: number;
  readonly uvz: number;
  /** A, B and K of the upper wishbone's closure, each as x0 + x1 cos θ + x2 sin θ. */
  readonly a0: number;
  readonly a1: number;
  readonly a2: number;
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly k0: number;
  readonly k1: number;
  readonly k2: number;
  readonly branchU: number;
  /** 1 / |upper outer − lower outer|. */
  readonly overUpright: number;
  /** Planar corner: the steering arm keeps its direction. */
  readonly steerHeld: boolean;
  readonly tix: number;
  readonly tiy: number;
  readonly tiz: number;
  /** Track-rod outer: distance along the steering axis from the lower outer joint, and arm from the axis squared. */
  readonly trackAlong: number;
  readonly trackArm2: number;
  readonly trackK: number;
  readonly branchT: number;
  /** Link length times arm, for sin μ = |root| / scale. */
  readonly trackScale: number;
  readonly rodScale: number;
  /** Wheel centre − lower outer in (n, ρ, n × ρ). */
  readonly wheelN: number;
  readonly wheelR: number;
  readonly wheelM: number;
  readonly wheelZ: number;
  readonly carrier: Carrier;
  /** Rod's outer end less the rocker's foot: on a wishbone foot and arm, on the upright only the rocker's foot. */
  readonly pfx: number;
  readonly pfy: number;
  readonly pfz: number;
  readonly pux: number;
  readonly puy: number;
  readonly puz: number;
  readonly pvx: number;
  readonly pvy: number;
  readonly pvz: number;
  readonly rodN: number;
  readonly rodR: number;
  readonly rodM: number;
  readonly rux: number;
  readonly ruy: number;
  readonly ruz: number;
  readonly rvx: number;
  readonly rvy: number;
  readonly rvz: number;
  readonly rodK: number;
  readonly branchR: number;
}

const CARRIERS: { readonly [C in RodCarrier]: Carrier } = { "lower-wishbone": 1, "upper-wishbone": 2, upright: 3 };
const NOWHERE: Vec3 = [0, 0, 0];

/** Foot and arm of the rod's outer end on its carrier, from the rocker's foot. */
const rodCarrier = (k: Skeleton): { carrier: Carrier; foot: Vec3; u: Vec3; v: Vec3; upright: Vec3 } => {
  const { rod, lower } = k.geometry;
  if (rod === undefined || k.rocker === undefined)
    return { carrier: 0, foot: NOWHERE, u: NOWHERE, v: NOWHERE, upright: NOWHERE };
  const carrier = CARRIERS[rod.on];
  if (carrier === 3) return { carrier, foot: k.rocker.foot, u: NOWHERE, v: NOWHERE, upright: inUpright(k, rod.outer) };
  const [pivot, axis] = carrier === 1 ? [lower.fore, k.lowerAxis] : [k.upper.foot, k.upper.axis];
  const foot = footOn(pivot, axis, rod.outer);
  const u = sub(rod.outer, foot);
  return { carrier, foot: sub(foot, k.rocker.foot), u, v: cross(axis, u), upright: NOWHERE };
};

/** The flat numbers of a skeleton. */
export function constantsOf(k: Skeleton): Constants {
  const { geometry: g, upper, rocker } = k;
  const lf = footOn(g.lower.fore, k.lowerAxis, g.lower.outer);
  const lu = sub(g.lower.outer, lf);
  const lv = cross(k.lowerAxis, lu);
  const between = sub(lf, upper.foot);
  const wheel = inUpright(k, g.wheel.centre);
  const rod = rodCarrier(k);
  const inner = trackRodInner(g.trackRod);
  const trackLength = norm(sub(g.trackRod.outer, g.trackRod.inner));
  const arm2 = dot(k.rho, k.rho);
  const ru = rocker?.u ?? NOWHERE;
  const rv = rocker?.v ?? NOWHERE;
  return {
    lfx: lf[0],
    lfy: lf[1],
    lfz: lf[2],
    lux: lu[0],
    luy: lu[1],
    luz: lu[2],
    lvx: lv[0],
    lvy: lv[1],
    lvz: lv[2],
    ufx: upper.foot[0],
    ufy: upper.foot[1],
    ufz: upper.foot[2],
    uux: upper.u[0],
    uuy: upper.u[1],
    uuz: upper.u[2],
    uvx: upper.v[0],
    uvy: upper.v[1],
    uvz: upper.v[2],
    a0: dot(upper.u, between),
    a1: dot(upper.u, lu),
    a2: dot(upper.u, lv),
    b0: dot(upper.v, between),
    b1: dot(upper.v, lu),
    b2: dot(upper.v, lv),
    k0: 0.5 * (dot(upper.u, upper.u) + dot(between, between) + dot(lu, lu) - upper.length * upper.length),
    k1: dot(between, lu),
    k2: dot(between, lv),
    branchU: upper.branch,
    overUpright: 1 / upper.length,
    steerHeld: k.steerHeld,
    tix: inner[0],
    tiy: inner[1],
    tiz: inner[2],
    trackAlong: k.trackAlong,
    trackArm2: arm2,
    trackK: 0.5 * (k.trackAlong * k.trackAlong + arm2 - trackLength * trackLength),
    branchT: k.branchT,
    trackScale: trackLength * Math.sqrt(arm2),
    rodScale: rocker === undefined ? 1 : rocker.length * rocker.radius,
    wheelN: wheel[0],
    wheelR: wheel[1],
    wheelM: wheel[2],
    wheelZ: g.wheel.centre[2],
    carrier: rod.carrier,
    pfx: rod.foot[0],
    pfy: rod.foot[1],
    pfz: rod.foot[2],
    pux: rod.u[0],
    puy: rod.u[1],
    puz: rod.u[2],
    pvx: rod.v[0],
    pvy: rod.v[1],
    pvz: rod.v[2],
    rodN: rod.upright[0],
    rodR: rod.upright[1],
    rodM: rod.upright[2],
    rux: ru[0],
    ruy: ru[1],
    ruz: ru[2],
    rvx: rv[0],
    rvy: rv[1],
    rvz: rv[2],
    rodK: rocker === undefined ? 0 : 0.5 * (rocker.radius * rocker.radius - rocker.length * rocker.length),
    branchR: rocker?.branch ?? 1,
  };
}
