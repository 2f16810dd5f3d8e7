/**
 * Two points joined by a telescopic element, each on any corner of the car or on the chassis.
 *
 * With r = a − b, L = |r|, u = r/L and derivatives of r with respect to the wheel travels i, j:
 * s = L₀ − L, s_i = −u·r_i, s_ij = −(u·r_ij + (r_i·r_j − (u·r_i)(u·r_j)) / L). Each end follows one wheel at most.
 * Singular where the ends fall together.
 */
import type { PointMotion } from "../../linkage/corner.js";
import { distance, dot, mirror, scale, sub, type Vec3 } from "../../maths/vec3.js";
import { type CarConnection, type CarDeflection, type CarMotion, eachPair, eachWheel } from "../car-connection.js";
import type { NoDeflection } from "../deflection.js";
import { designPoint, endMotion } from "../ends.js";
import type { CarEnd } from "../mechanism.js";

/** Ends closer than this have no direction between them, m. */
const COINCIDENT = 1e-9;
const coincident: NoDeflection = { kind: "no-deflection", reason: "coincident-ends", side: undefined };
const NOWHERE: Vec3 = [0, 0, 0];

/** A point in the car frame, with the wheel that moves it. */
interface Placed extends PointMotion {
  readonly wheel: number | undefined;
}

/** Number of the wheel that an end follows, in the order FL, FR, RL, RR. */
export function wheelOf({ axle, end }: CarEnd): number | undefined {
  if (axle === undefined || end.kind === "chassis") return undefined;
  return (axle === "front" ? 0 : 2) + (end.side === "left" ? 0 : 1);
}

function placed(at: CarEnd, motion: CarMotion): Placed | NoDeflection {
  const moved = endMotion(at.end, motion[at.axle ?? "front"]);
  if ("kind" in moved) return moved;
  const wheel = wheelOf(at);
  if (at.end.kind === "chassis" || at.end.side === "left") return { ...moved, wheel };
  return { p: mirror(moved.p), d: mirror(moved.d), dd: mirror(moved.dd), wheel };
}

function deflectionOf(a: Placed, b: Placed, design: number): CarDeflection | NoDeflection {
  const r = sub(a.p, b.p);
  const length = Math.sqrt(dot(r, r));
  if (!(length > COINCIDENT)) return coincident;
  const u = scale(r, 1 / length);
  const share = (wheel: number, of: (end: Placed) => Vec3): Vec3 =>
    sub(a.wheel === wheel ? of(a) : NOWHERE, b.wheel === wheel ? of(b) : NOWHERE);
  const first = [0, 1, 2, 3].map((wheel) => share(wheel, ({ d }) => d));
  const second = [0, 1, 2, 3].map((wheel) => share(wheel, ({ dd }) => dd));
  const along = first.map((d) => dot(u, d));
  const bend = (i: number, j: number): number => {
    const across = dot(first[i] ?? NOWHERE, first[j] ?? NOWHERE) - (along[i] ?? 0) * (along[j] ?? 0);
    return (i === j ? dot(u, second[i] ?? NOWHERE) : 0) + across / length;
  };
  // Taken from 0, so that what does not move is 0 and never −0.
  return { s: design - length, d: eachWheel((i) => 0 - (along[i] ?? 0)), dd: eachPair((i, j) => 0 - bend(i, j)) };
}

/** Deflection in m, compression positive, zero at design. */
export function carBetween(
  first: CarEnd,
  second: CarEnd,
  basis: "hardpoints" | "planar",
): CarConnection | NoDeflection {
  const design = distance(designPoint(first.end), designPoint(second.end));
  if (!(design > COINCIDENT)) return coincident;
  return {
    kind: "between",
    basis,
    torsional: false,
    idle: undefined,
    statedFor: undefined,
    deflection(motion) {
      const a = placed(first, motion);
      if ("kind" in a) return a;
      const b = placed(second, motion);
      return "kind" in b ? b : deflectionOf(a, b, design);
    },
  };
}
