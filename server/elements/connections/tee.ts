/**
 * The twist of a T-shaped anti-roll bar: how far its cross arm is turned about the stem, against the stem's foot. The
 * stem swings about a hinge across the car at its foot, which wheels that move alike use up.
 *
 * With the swing β about y through the foot f and the twist γ about the stem, an end of the cross arm is at
 * e(β, γ) = f + R_y(β) R_stem(γ) (e₀ − f); both drop links keep their lengths, |e_i − p_i(z_i)| = L_i. All in the car's
 * frame, derivatives by differentiating both conditions once and twice.
 *
 * Invariant: γ is positive as the left wheel's bump makes it; 0 at design unless a link is set longer than drawn.
 * Singular where a link has no moment about the bar, or both have the same one about stem and hinge: `drop-link`.
 */
import type { AxleMotion, Body, PointMotion } from "../../linkage/corner.js";
import { add, cross, dot, mirror, norm, scale, sub, unit, type Vec3 } from "../../maths/vec3.js";
import type { Connection, Deflection, NoDeflection } from "../element.js";
import { STILL } from "./still.js";

/** A drop link of the cross arm; points in the frame of a left corner. */
export interface TeeLink {
  /** Where the link is joined to the cross arm. */
  readonly end: Vec3;
  /** What carries its far end, and where that is at design. */
  readonly body: Body;
  readonly far: Vec3;
  /** How much longer than drawn it is set, m. */
  readonly longer: number;
}

export interface TeePoints {
  readonly foot: Vec3;
  readonly head: Vec3;
  readonly left: TeeLink | undefined;
  readonly right: TeeLink | undefined;
}

const ACROSS: Vec3 = [0, 1, 0];
const STEPS = 40;
const CLOSE = 1e-13;
/** An end nearer to the stem than this share of its length is on it. */
const SAME = 1e-9;
/** Of the two moments of a link, as shares of its length times its arm: less than this does not hold the bar. */
const HOLD = 1e-4;

interface Side {
  readonly end: Vec3;
  readonly length: number;
}

interface Tee {
  readonly foot: Vec3;
  readonly stem: Vec3;
  readonly left: Side;
  readonly right: Side;
}

function turned(r: Vec3, axis: Vec3, angle: number): Vec3 {
  const along = scale(axis, dot(axis, r));
  const across = sub(r, along);
  return add(along, add(scale(across, Math.cos(angle)), scale(cross(axis, across), Math.sin(angle))));
}

/** One condition g = ½(|e − p|² − L²) with its derivatives with respect to β, γ and the link's own wheel travel z. */
function condition({ foot, stem }: Tee, side: Side, p: PointMotion, beta: number, gamma: number) {
  const r0 = turned(sub(side.end, foot), stem, gamma);
  const r = turned(r0, ACROSS, beta);
  const twist = turned(cross(stem, r0), ACROSS, beta);
  const swing = cross(ACROSS, r);
  const bend = turned(cross(stem, cross(stem, r0)), ACROSS, beta);
  const q = sub(add(foot, r), p.p);
  return {
    g: (dot(q, q) - side.length ** 2) / 2,
    b: dot(q, swing),
    c: dot(q, twist),
    z: -dot(q, p.d),
    bb: dot(swing, swing) + dot(q, cross(ACROSS, swing)),
    bc: dot(swing, twist) + dot(q, cross(ACROSS, twist)),
    cc: dot(twist, twist) + dot(q, bend),
    bz: -dot(swing, p.d),
    cz: -dot(twist, p.d),
    zz: dot(p.d, p.d) - dot(q, p.dd),
  };
}

type Condition = ReturnType<typeof condition>;

/** β and γ of J (β, γ) = −(l, r); undefined where the links do not hold both. */
function solved(left: Condition, right: Condition, l: number, r: number): readonly [number, number] | undefined {
  const determinant = left.b * right.c - left.c * right.b;
  const size = Math.hypot(left.b, left.c) * Math.hypot(right.b, right.c);
  if (!(Math.abs(determinant) > HOLD * size)) return undefined;
  return [(left.c * r - right.c * l) / determinant, (right.b * l - left.b * r) / determinant];
}

interface Closed {
  readonly left: Condition;
  readonly right: Condition;
  readonly beta: number;
  readonly gamma: number;
}

function closed(tee: Tee, left: PointMotion, right: PointMotion): Closed | undefined {
  let [beta, gamma] = [0, 0];
  for (let i = 0; i < STEPS; i++) {
    const l = condition(tee, tee.left, left, beta, gamma);
    const r = condition(tee, tee.right, right, beta, gamma);
    const step = solved(l, r, l.g, r.g);
    if (step === undefined) return undefined;
    beta += step[0];
    gamma += step[1];
    if (!(Math.abs(beta) < Math.PI / 2 && Math.abs(gamma) < Math.PI / 2)) return undefined;
    if (Math.abs(step[0]) + Math.abs(step[1]) < CLOSE) return { left: l, right: r, beta, gamma };
  }
  return undefined;
}

/**
 * Angle of the links from where they no longer hold the cross arm, rad: a right one where each is square to its arms.
 * Each link has a moment about the hinge and one about the stem, as shares of its length times its distance from either;
 * half the determinant of both links' shares is the sine.
 */
function transmissionOf({ foot, stem, left, right }: Tee, { left: l, right: r }: Closed): number {
  const shares = ({ end, length }: Side, { b, c }: Condition): Pair => {
    const out = sub(end, foot);
    return [b / (length * norm(cross(ACROSS, out))), c / (length * norm(cross(stem, out)))];
  };
  const [lb, lc] = shares(left, l);
  const [rb, rc] = shares(right, r);
  return Math.asin(Math.min(1, Math.abs(lb * rc - lc * rb) / 2));
}

/** e(β, γ). */
function armEnd({ foot, stem }: Tee, { end }: Side, { beta, gamma }: Closed): Vec3 {
  return add(foot, turned(turned(sub(end, foot), stem, gamma), ACROSS, beta));
}

type Pair = readonly [number, number];

/** Second-order part of one condition for derivatives by the wheels i and j; `own` marks the condition's own wheel. */
function bent(g: Condition, i: Pair, j: Pair, ownI: number, ownJ: number): number {
  const along = g.bb * i[0] * j[0] + g.bc * (i[0] * j[1] + i[1] * j[0]) + g.cc * i[1] * j[1];
  const mixed = g.bz * (i[0] * ownJ + j[0] * ownI) + g.cz * (i[1] * ownJ + j[1] * ownI);
  return along + mixed + g.zz * ownI * ownJ;
}

function deflectionOf({ left, right, gamma }: Closed): Deflection | undefined {
  const byL = solved(left, right, left.z, 0);
  const byR = solved(left, right, 0, right.z);
  if (byL === undefined || byR === undefined) return undefined;
  const second = (i: Pair, j: Pair, iIsLeft: boolean, jIsLeft: boolean): number => {
    const l = bent(left, i, j, iIsLeft ? 1 : 0, jIsLeft ? 1 : 0);
    const r = bent(right, i, j, iIsLeft ? 0 : 1, jIsLeft ? 0 : 1);
    return solved(left, right, l, r)?.[1] ?? 0;
  };
  return {
    s: gamma,
    dL: byL[1],
    dR: byR[1],
    dLL: second(byL, byL, true, true),
    dLR: second(byL, byR, true, false),
    dRR: second(byR, byR, false, false),
  };
}

const turnedRound = (d: Deflection): Deflection => ({
  s: -d.s,
  dL: -d.dL,
  dR: -d.dR,
  dLL: -d.dLL,
  dLR: -d.dLR,
  dRR: -d.dRR,
});

const inCar = ({ p, d, dd }: PointMotion): PointMotion => ({ p: mirror(p), d: mirror(d), dd: mirror(dd) });

const offReason = ({ left, right }: TeePoints): string | undefined => {
  if (left !== undefined && right !== undefined) return undefined;
  if (left === undefined && right === undefined) return "its drop links are off";
  return `its drop link is off on the ${left === undefined ? "left" : "right"} side`;
};

const noLink: NoDeflection = { kind: "no-deflection", reason: "drop-link", side: undefined };

/** Why a T-shaped bar cannot be built. */
export type NoTee = "no-stem" | "no-arm" | "no-hold";

const still = (basis: Connection["basis"], idle: string | undefined): Connection => ({
  kind: "tee",
  basis,
  torsional: true,
  idle,
  statedFor: undefined,
  deflection: () => STILL,
});

function linked(points: TeePoints, left: TeeLink, right: TeeLink, basis: Connection["basis"], design: AxleMotion) {
  const { foot, head } = points;
  const ends = { left: left.end, right: mirror(right.end) };
  const at = (motion: AxleMotion) => ({
    left: motion.left.point(left.body, left.far),
    right: inCar(motion.right.point(right.body, right.far)),
  });
  const far = at(design);
  const drawn = { left: norm(sub(ends.left, far.left.p)), right: norm(sub(ends.right, far.right.p)) };
  const tee: Tee = {
    foot,
    stem: unit(sub(head, foot)),
    left: { end: ends.left, length: drawn.left + left.longer },
    right: { end: ends.right, length: drawn.right + right.longer },
  };
  const arm = (end: Vec3): number => norm(cross(tee.stem, sub(end, foot)));
  const arms = [arm(ends.left), arm(ends.right)] as const;
  if (!(Math.min(...arms) > SAME * norm(sub(head, foot)))) return "no-arm";
  if (!(Math.min(tee.left.length, tee.right.length) > 0)) return "no-hold";
  const start = closed(tee, far.left, far.right);
  const first = start && deflectionOf(start);
  if (start === undefined || first === undefined) return "no-hold";
  const turn = first.dL < 0 ? turnedRound : (d: Deflection): Deflection => d;
  const connection: Connection = {
    ...still(basis, undefined),
    deflection(motion) {
      const ways = at(motion);
      const found = closed(tee, ways.left, ways.right);
      const d = found && deflectionOf(found);
      return d === undefined ? noLink : turn(d);
    },
    tee: {
      arm: (arms[0] + arms[1]) / 2,
      transmission(motion) {
        const ways = at(motion);
        const found = closed(tee, ways.left, ways.right);
        return found && transmissionOf(tee, found);
      },
      ends(motion) {
        const ways = at(motion);
        const found = closed(tee, ways.left, ways.right);
        return found && { left: armEnd(tee, tee.left, found), right: armEnd(tee, tee.right, found) };
      },
      linkArm: (Math.abs(start.left.c) / tee.left.length + Math.abs(start.right.c) / tee.right.length) / 2,
    },
  };
  return connection;
}

/**
 * @param design both corners at design position
 * @returns the connection; it is never twisted where a link is off
 */
export function teeTwist(points: TeePoints, basis: Connection["basis"], design: AxleMotion): Connection | NoTee {
  if (!(norm(sub(points.head, points.foot)) > 0)) return "no-stem";
  const { left, right } = points;
  if (left === undefined || right === undefined) return still(basis, offReason(points));
  return linked(points, left, right, basis, design);
}
