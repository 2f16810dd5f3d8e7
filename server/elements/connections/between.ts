/**
 * Two points joined by a telescopic element: its deflection is how much shorter it is than at design.
 *
 * With r = a − b, L = |r|, u = r/L and derivatives of r with respect to the wheel travels i, j:
 * s = L₀ − L, s_i = −u·r_i, s_ij = −(u·r_ij + (r_i·r_j − (u·r_i)(u·r_j)) / L).
 * Each end follows one wheel at most, so that r_LR = 0. Singular where the ends fall together.
 */
import type { AxleMotion, PointMotion } from "../../linkage/corner.js";
import { distance } from "../../maths/vec3.js";
import { fromDesign } from "../deflection.js";
import type { Connection, Deflection, NoDeflection } from "../element.js";
import { designPoint, type End, endMotion } from "../ends.js";

/** Ends closer than this have no direction between them, m. */
const COINCIDENT = 1e-9;

const coincident: NoDeflection = { kind: "no-deflection", reason: "coincident-ends", side: undefined };

/** How the separation r = a − b moves with one wheel. */
interface Share {
  /** r_i·r_i, u·r_i and u·r_ii */
  readonly square: number;
  readonly along: number;
  readonly bend: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

const NONE: Share = { square: 0, along: 0, bend: 0, x: 0, y: 0, z: 0 };

/** What an end adds to r as its wheel moves; `sign` is −1 for the second end, `flip` −1 on the right. */
function shareOf(end: PointMotion, sign: number, flip: number, ux: number, uy: number, uz: number): Share {
  const x = sign * end.d[0];
  const y = sign * flip * end.d[1];
  const z = sign * end.d[2];
  return {
    square: x * x + y * y + z * z,
    along: ux * x + uy * y + uz * z,
    bend: sign * (ux * end.dd[0] + flip * uy * end.dd[1] + uz * end.dd[2]),
    x,
    y,
    z,
  };
}

/** Both ends on one wheel: their shares taken together. */
function together(p: Share, q: Share): Share {
  if (p === NONE) return q;
  if (q === NONE) return p;
  const x = p.x + q.x;
  const y = p.y + q.y;
  const z = p.z + q.z;
  return { square: x * x + y * y + z * z, along: p.along + q.along, bend: p.bend + q.bend, x, y, z };
}

const flipOf = (end: End): number => (end.kind !== "chassis" && end.side === "right" ? -1 : 1);

function deflectionOf(ends: readonly [End, End], design: number, motion: AxleMotion): Deflection | NoDeflection {
  const a = endMotion(ends[0], motion);
  const b = endMotion(ends[1], motion);
  if ("kind" in a) return a;
  if ("kind" in b) return b;
  const fa = flipOf(ends[0]);
  const fb = flipOf(ends[1]);
  const x = a.p[0] - b.p[0];
  const y = fa * a.p[1] - fb * b.p[1];
  const z = a.p[2] - b.p[2];
  const length = Math.sqrt(x * x + y * y + z * z);
  if (!(length > COINCIDENT)) return coincident;
  const ux = x / length;
  const uy = y / length;
  const uz = z / length;
  const ofA = ends[0].kind === "chassis" ? NONE : shareOf(a, 1, fa, ux, uy, uz);
  const ofB = ends[1].kind === "chassis" ? NONE : shareOf(b, -1, fb, ux, uy, uz);
  const left = together(fa > 0 ? ofA : NONE, fb > 0 ? ofB : NONE);
  const right = together(fa < 0 ? ofA : NONE, fb < 0 ? ofB : NONE);
  const cross = left.x * right.x + left.y * right.y + left.z * right.z;
  // Taken from 0, so that what does not move is 0 and never −0.
  return {
    s: fromDesign(design - length),
    dL: 0 - left.along,
    dR: 0 - right.along,
    dLL: 0 - left.bend - (left.square - left.along * left.along) / length,
    dLR: 0 - (cross - left.along * right.along) / length,
    dRR: 0 - right.bend - (right.square - right.along * right.along) / length,
  };
}

/** A two-point element; deflection in m, compression positive, zero at design. */
export function between(first: End, second: End, basis: "hardpoints" | "planar"): Connection | NoDeflection {
  const ends = [first, second] as const;
  const design = distance(designPoint(first), designPoint(second));
  if (!(design > COINCIDENT)) return coincident;
  return {
    kind: "between",
    basis,
    torsional: false,
    idle: undefined,
    statedFor: undefined,
    designLength: design,
    deflection: (motion) => deflectionOf(ends, design, motion),
  };
}
