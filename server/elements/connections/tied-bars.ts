/**
 * Two torsion bars, one in each rocker, whose free ends carry small levers that a rigid link
 * joins: the bars twist where the rockers move alike and turn with them where they do not.
 *
 * The free ends turn by δ + ε and −δ + ε (mirrored measure) with δ = (θ_L − θ_R)/2, and ε keeps
 * the link at its design length. Both bars then twist by s/2 with s = θ_L + θ_R − 2ε, equal bars
 * being taken to carry equal moments; levers that stand square to the link at design have ε = 0.
 * That share is exact to first order; ε is the second-order swing of the link.
 *
 * Singular where the link passes in line with both axes' levers; answered as `tie`.
 */
import type { AxleMotion, Jet } from "../../linkage/corner.js";
import { add, cross, dot, scale, sub, unit, type Vec3 } from "../../maths/vec3.js";
import type { Connection, Deflection, NoDeflection } from "../element.js";

/** The lever on the free end of one bar, in the frame of a left corner. */
export interface TieLever {
  readonly pivot: Vec3;
  /** Direction such that the rocker's bump turns positively about it. */
  readonly axis: Vec3;
  /** The link's end at design. */
  readonly arm: Vec3;
}

const NONE: Jet = { value: 0, d: 0, dd: 0 };
const STEPS = 30;
const noTie: NoDeflection = { kind: "no-deflection", reason: "tie", side: undefined };

interface Turner {
  readonly foot: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
}

function turner(lever: TieLever): Turner {
  const axis = unit(lever.axis);
  const foot = add(lever.pivot, scale(axis, dot(sub(lever.arm, lever.pivot), axis)));
  const u = sub(lever.arm, foot);
  return { foot, u, v: cross(axis, u) };
}

/** The arm's end at an angle with its first and second derivative with respect to the angle. */
function turned(t: Turner, angle: number): readonly [Vec3, Vec3, Vec3] {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const r = add(scale(t.u, c), scale(t.v, s));
  return [add(t.foot, r), sub(scale(t.v, c), scale(t.u, s)), scale(r, -1)];
}

/** Half the link's squared length and its derivatives with respect to the two free ends' angles α, β. */
function link(left: Turner, right: Turner, alpha: number, beta: number) {
  const [a, a1, a2] = turned(left, alpha);
  const [b, b1, b2] = turned(right, beta);
  // The right-hand end is mirrored into the car frame: its y changes sign.
  const q: Vec3 = [a[0] - b[0], a[1] + b[1], a[2] - b[2]];
  const flip = (w: Vec3): Vec3 => [-w[0], w[1], -w[2]];
  return {
    half: dot(q, q) / 2,
    gA: dot(q, a1),
    gB: dot(q, flip(b1)),
    gAA: dot(a1, a1) + dot(q, a2),
    gBB: dot(b1, b1) + dot(q, flip(b2)),
    gAB: dot(a1, flip(b1)),
  };
}

/**
 * @returns a torsional connection with s = the twist of both bars together, rad; `undefined` where the
 * levers give the link no hold at design
 */
export function tiedBars(left: TieLever, right: TieLever, basis: "hardpoints" | "planar"): Connection | undefined {
  const l = turner(left);
  const r = turner(right);
  const design = link(l, r, 0, 0);
  const hold = Math.abs(design.gA + design.gB);
  if (!(hold > 1e-9 * design.half)) return undefined;
  const deflection = (motion: AxleMotion): Deflection | NoDeflection => {
    const tl = motion.left.rocker ?? NONE;
    const tr = motion.right.rocker ?? NONE;
    const delta = (tl.value - tr.value) / 2;
    let epsilon = 0;
    for (let i = 0; ; i++) {
      const { half, gA, gB } = link(l, r, delta + epsilon, -delta + epsilon);
      const slope = gA + gB;
      if (i === STEPS || !(Math.abs(slope) > 1e-3 * hold)) return noTie;
      const step = (half - design.half) / slope;
      epsilon -= step;
      if (Math.abs(step) < 1e-13) break;
    }
    return derivatives(l, r, tl, tr, delta, epsilon);
  };
  return { kind: "twists", basis, torsional: true, idle: undefined, statedFor: undefined, deflection };
}

/** s = θ_L + θ_R − 2ε(δ) with ε', ε'' from differentiating g(δ + ε, −δ + ε) = const once and twice. */
function derivatives(l: Turner, r: Turner, tl: Jet, tr: Jet, delta: number, epsilon: number): Deflection {
  const g = link(l, r, delta + epsilon, -delta + epsilon);
  const slope = g.gA + g.gB;
  const e1 = -(g.gA - g.gB) / slope;
  const up = 1 + e1;
  const down = e1 - 1;
  const e2 = -(g.gAA * up * up + 2 * g.gAB * up * down + g.gBB * down * down) / slope;
  // ∂s/∂θ_L = 1 − e1 and ∂s/∂θ_R = 1 + e1, as δ = (θ_L − θ_R)/2; all second derivatives are ∓e2/2.
  return {
    s: tl.value + tr.value - 2 * epsilon,
    dL: (1 - e1) * tl.d,
    dR: (1 + e1) * tr.d,
    dLL: (1 - e1) * tl.dd - (e2 / 2) * tl.d * tl.d,
    dLR: (e2 / 2) * tl.d * tr.d,
    dRR: (1 + e1) * tr.dd - (e2 / 2) * tr.d * tr.d,
  };
}
