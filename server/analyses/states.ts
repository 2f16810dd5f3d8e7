/**
 * The positions of one axle that its analyses share: at rest, pure heave and pure roll across the
 * envelope, and one wheel alone. Each corner is solved once a travel; mirrored corners share it.
 *
 * At rest both wheels stand at `staticTravel`, which is design position unless a set-up puts the car higher or
 * lower. Heave is looked at over the whole envelope, from design. Pure roll moves the wheels by (−q, +q) from rest,
 * q up to where one of them reaches an end of the envelope.
 *
 * Invariant: fresh for every analysis; what is remembered here goes with it.
 */
import type { AxleMechanism } from "../elements/mechanism.js";
import type { AxleMotion, Corner, CornerMotion, Unreachable } from "../linkage/corner.js";

type Side = "left" | "right";

/** Why there is no position, with the side that binds. */
export interface Bound {
  readonly side: Side;
  readonly why: Unreachable;
}

export interface State {
  /** Travel of the left and of the right wheel, m. */
  readonly left: number;
  readonly right: number;
  readonly motion: AxleMotion | Bound;
}

export interface AxleStates extends AxlePositions {
  /** At rest. */
  readonly rest: AxleMotion;
  readonly heave: readonly State[];
  readonly roll: readonly State[];
  /** The travels of `heave`: what one wheel alone is looked at over. */
  readonly travels: readonly number[];
}

/** Steps on each side of design: nine positions a mode. */
const STEPS = 4;

export const isBound = (motion: object): motion is Bound => "why" in motion;

/** Equal steps from 0 to `end`, 0 left out; none where the envelope does not go that way. */
function steps(end: number): number[] {
  return end === 0 ? [] : Array.from({ length: STEPS }, (_, i) => (end * (i + 1)) / STEPS);
}

/** Travels across the envelope with design among them, ascending. */
function travelsOf({ from, to }: AxleMechanism["travel"]): number[] {
  const down = from < 0 ? steps(from).reverse() : [];
  const up = to > 0 ? steps(to) : [];
  return [...down, 0, ...up];
}

/** A corner that remembers where it has been. */
function remembering(corner: Corner): (travel: number) => CornerMotion | Unreachable {
  const known = new Map<number, CornerMotion | Unreachable>();
  return (travel) => {
    const before = known.get(travel);
    if (before !== undefined) return before;
    const motion = corner.motion(travel);
    known.set(travel, motion);
    return motion;
  };
}

/** Positions of one axle, each corner solved once a travel. */
export interface AxlePositions {
  readonly left: (travel: number) => CornerMotion | Unreachable;
  readonly right: (travel: number) => CornerMotion | Unreachable;
  at(left: number, right: number): State;
}

export function axlePositions({ corners }: AxleMechanism): AxlePositions {
  const left = remembering(corners.left);
  const right = corners.right === corners.left ? left : remembering(corners.right);
  const at = (zL: number, zR: number): State => {
    const l = left(zL);
    if ("kind" in l) return { left: zL, right: zR, motion: { side: "left", why: l } };
    const r = right(zR);
    if ("kind" in r) return { left: zL, right: zR, motion: { side: "right", why: r } };
    return { left: zL, right: zR, motion: { left: l, right: r } };
  };
  return { left, right, at };
}

/** @returns the states, or what binds at rest itself */
export function axleStates(mechanism: AxleMechanism): AxleStates | Bound {
  const positions = axlePositions(mechanism);
  const at = (left: number, right: number): State => positions.at(left, right);
  const { travel, staticTravel: z0 } = mechanism;
  const rest = at(z0, z0).motion;
  if (isBound(rest)) return rest;
  const travels = travelsOf(travel);
  const amplitude = Math.max(0, Math.min(z0 - travel.from, travel.to - z0));
  const rolls = amplitude === 0 ? [] : [...steps(-amplitude).reverse(), ...steps(amplitude)];
  return {
    rest,
    heave: travels.map((z) => at(z, z)),
    roll: rolls.map((q) => at(z0 - q, z0 + q)),
    travels,
    ...positions,
  };
}
