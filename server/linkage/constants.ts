/**
 * The fixed numbers of one corner, worked out once from its design positions so that the inner
 * loop of `position.ts` only multiplies and adds. In: geometry; out: `Constants`, or why there are none.
 *
 * Written as flat scalars because the inner loop reads them; names as in NOTATION.md:
 * l lower, u upper, t track rod, p rod's outer end, r rocker; f foot on the axis, u arm at design, v = axis × arm.
 *
 * Invariant: at design (θ = 0) every closed form gives the design positions.
 */
import { add, cross, dot, norm, scale, sub, unit, type Vec3 } from "../maths/vec3.js";
import {
  degenerate,
  type Degenerate,
  type DegeneratePart,
  type HardpointGeometry,
  type RodCarrier,
} from "./geometry.js";
import { footOn, type TurningArm, turningArm } from "./turning-arm.js";

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

/** The bodies of a corner at design, from which both the inner loop and the derivatives are built. */
export interface Skeleton {
  readonly geometry: HardpointGeometry;
  readonly steerHeld: boolean;
  /** Largest distance of any point from the lower outer joint: the yardstick of "the same point", m. */
  readonly size: number;
  readonly lowerAxis: Vec3;
  /** Upper wishbone joined by the upright to the lower outer joint. */
  readonly upper: TurningArm;
  /** n, ρ, n × ρ at design; ρ is of unit length where the steer is held. */
  readonly n: Vec3;
  readonly rho: Vec3;
  readonly trackAlong: number;
  readonly branchT: number;
  readonly rocker: TurningArm | undefined;
}

/** Coordinates beyond this, and corners smaller than its inverse, would leave the range of a double when multiplied. */
const LARGEST = 1e30;

/** Whether a coordinate can be computed with. */
export const isUsable = (x: number): boolean => Math.abs(x) <= LARGEST;

/** Points nearer than this share of the corner's size are one point. */
const SAME = 1e-9;
/** sin of the smallest transmission angle that a design position may have. */
export const IN_LINE = 1e-6;

const direction = (from: Vec3, to: Vec3): Vec3 => unit(sub(to, from));

const pointsOf = (g: HardpointGeometry): [DegeneratePart, Vec3][] => [
  ["lower-wishbone", g.lower.fore],
  ["lower-wishbone", g.lower.aft],
  ["lower-wishbone", g.lower.outer],
  ["upper-wishbone", g.upper.fore],
  ["upper-wishbone", g.upper.aft],
  ["upper-wishbone", g.upper.outer],
  ["track-rod", g.trackRod.inner],
  ["track-rod", g.trackRod.outer],
  ["wheel", g.wheel.centre],
  ["wheel", [g.wheel.camber, g.wheel.toe, g.wheel.loadedRadius]],
  [g.rod?.kind ?? "push-rod", [g.rod?.lengthen ?? 0, 0, 0]],
  ...(g.rod === undefined
    ? []
    : ([
        [g.rod.kind, g.rod.outer],
        [g.rod.kind, g.rod.inner],
      ] as [DegeneratePart, Vec3][])),
  ...(g.rocker === undefined
    ? []
    : ([
        ["rocker", g.rocker.pivot],
        ["rocker", g.rocker.axis],
      ] as [DegeneratePart, Vec3][])),
];

const notFinite = (g: HardpointGeometry): Degenerate | undefined => {
  const part = pointsOf(g).find(([, p]) => !p.every(isUsable))?.[0];
  return part === undefined ? undefined : degenerate(part, "not-finite");
};

const sizeOf = (g: HardpointGeometry): number => {
  const joints = [g.lower.fore, g.lower.aft, g.upper.fore, g.upper.aft, g.upper.outer, g.trackRod.inner];
  return Math.max(...joints.map((p) => norm(sub(p, g.lower.outer))));
};

/** What is wrong with a wishbone by itself. */
const wishboneFault = (part: DegeneratePart, w: HardpointGeometry["lower"], size: number): Degenerate | undefined => {
  if (!(norm(sub(w.fore, w.aft)) > SAME * size)) return degenerate(part, "no-axis");
  const foot = footOn(w.fore, direction(w.aft, w.fore), w.outer);
  return norm(sub(w.outer, foot)) > SAME * size ? undefined : degenerate(part, "on-axis");
};

/** sin μ between a link and its arm at design. */
const transmission = (arm: TurningArm, far: Vec3): number => {
  const q = unit(sub(far, add(arm.foot, arm.u)));
  return Math.abs(dot(q, unit(arm.v)));
};

const steering = (
  g: HardpointGeometry,
  n: Vec3,
  size: number,
): Degenerate | { rho: Vec3; along: number; branch: number } => {
  const from = sub(g.trackRod.outer, g.lower.outer);
  const along = dot(from, n);
  const rho = sub(from, scale(n, along));
  const rod = sub(g.trackRod.outer, g.trackRod.inner);
  if (!(norm(rod) > SAME * size)) return degenerate("track-rod", "coincident");
  if (!(norm(rho) > SAME * size)) return degenerate("track-rod", "on-axis");
  const moment = dot(rod, cross(n, rho));
  if (!(Math.abs(moment) > IN_LINE * norm(rod) * norm(rho))) return degenerate("track-rod", "in-line");
  return { rho, along, branch: moment < 0 ? -1 : 1 };
};

const rockerArm = (g: HardpointGeometry, size: number): Degenerate | TurningArm | undefined => {
  const { rod, rocker } = g;
  if (rod === undefined || rocker === undefined) return undefined;
  if (!(norm(rocker.axis) > 0)) return degenerate("rocker", "no-axis");
  if (!(norm(sub(rod.outer, rod.inner)) > SAME * size)) return degenerate(rod.kind, "coincident");
  const arm = turningArm(rocker.pivot, unit(rocker.axis), rod.inner, rod.outer, rod.lengthen ?? 0);
  if (!(arm.radius > SAME * size)) return degenerate("rocker", "on-axis");
  if (!(arm.length > SAME * size)) return degenerate(rod.kind, "coincident");
  return transmission(arm, rod.outer) > IN_LINE ? arm : degenerate(rod.kind, "in-line");
};

/** The bodies of a corner, or what is wrong with it. The sense of the lower axis and of the rocker's is still as drawn. */
export function skeletonOf(g: HardpointGeometry, steerHeld: boolean): Skeleton | Degenerate {
  const unclear = notFinite(g);
  if (unclear !== undefined) return unclear;
  const size = sizeOf(g);
  if (!(size > 1 / LARGEST)) return degenerate("upright", "coincident");
  const fault = wishboneFault("lower-wishbone", g.lower, size) ?? wishboneFault("upper-wishbone", g.upper, size);
  if (fault !== undefined) return fault;
  if (!(norm(sub(g.upper.outer, g.lower.outer)) > SAME * size)) return degenerate("upright", "coincident");
  const upper = turningArm(g.upper.fore, direction(g.upper.aft, g.upper.fore), g.upper.outer, g.lower.outer);
  if (!(transmission(upper, g.lower.outer) > IN_LINE)) return degenerate("upper-wishbone", "in-line");
  const n = direction(g.lower.outer, g.upper.outer);
  const steer = steerHeld ? { rho: [1, 0, 0] as Vec3, along: 0, branch: 1 } : steering(g, n, size);
  if ("kind" in steer) return steer;
  const rocker = rockerArm(g, size);
  if (rocker !== undefined && "kind" in rocker) return rocker;
  const lowerAxis = direction(g.lower.aft, g.lower.fore);
  return {
    geometry: g,
    steerHeld,
    size,
    lowerAxis,
    upper,
    n,
    rho: steer.rho,
    trackAlong: steer.along,
    branchT: steer.branch,
    rocker,
  };
}

/** Coordinates of an upright-fixed design point in (n, ρ, n × ρ), from the lower outer joint. */
export const inUpright = (k: Skeleton, point: Vec3): Vec3 => {
  const r = sub(point, k.geometry.lower.outer);
  const square = dot(k.rho, k.rho);
  return [dot(r, k.n), dot(r, k.rho) / square, dot(r, cross(k.n, k.rho)) / square];
};

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
  const inner = g.trackRod.inner;
  const trackLength = norm(sub(g.trackRod.outer, inner));
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
