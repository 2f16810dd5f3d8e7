/**
 * The bodies of a corner at design position, checked: what the inner loop's numbers and the derivatives are
 * both built from. In: geometry; out: `Skeleton`, or the part that stands in the way of any motion.
 *
 * Invariant: in a skeleton every axis has a direction, every link a length, and no link stands in a toggle.
 */
import { add, cross, dot, norm, scale, sub, unit, type Vec3 } from "../maths/vec3.js";
import { degenerate, type Degenerate, type DegeneratePart, type HardpointGeometry } from "./geometry.js";
import { footOn, type TurningArm, turningArm } from "./turning-arm.js";
import { type WheelAtDesign, wheelAtDesign } from "./wheel.js";

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
  readonly wheel: WheelAtDesign;
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
    wheel: wheelAtDesign(g.wheel),
  };
}

/** Coordinates of an upright-fixed design point in (n, ρ, n × ρ), from the lower outer joint. */
export const inUpright = (k: Skeleton, point: Vec3): Vec3 => {
  const r = sub(point, k.geometry.lower.outer);
  const square = dot(k.rho, k.rho);
  return [dot(r, k.n), dot(r, k.rho) / square, dot(r, cross(k.n, k.rho)) / square];
};
