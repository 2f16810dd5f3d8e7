/**
 * The positions of one axle that its analyses share: at rest, pure heave and pure roll across the
 * envelope, and one wheel alone. Each corner is solved once a travel; mirrored corners share it.
 *
 * At rest both wheels stand at `staticTravel`, which is design position unless a set-up puts the car higher or
 * lower. Heave is looked at over the whole envelope, from design. Pure roll moves the wheels by (−q, +q) from rest,
 * q up to where one of them reaches an end of the envelope.
 *
 * Invariant: what is remembered here follows from the geometry alone. A grid may be kept for other
 * laws on the same geometry; what an analysis looks at beyond them goes with that analysis.
 */
import type { Connection, Deflection, NoDeflection } from "../elements/element.js";
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
  /** Of the elements that somebody has asked about here: they go with their elements, since a grid may outlive many of those. */
  readonly deflections: WeakMap<Connection, Deflection | NoDeflection>;
}

/** @param motion that of the state, where no link binds */
export function deflectionIn({ deflections }: State, motion: AxleMotion, connection: Connection) {
  const known = deflections.get(connection);
  if (known !== undefined) return known;
  const d = connection.deflection(motion);
  deflections.set(connection, d);
  return d;
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

type Solve = (travel: number) => CornerMotion | Unreachable;
type Solved = ReadonlyMap<number, CornerMotion | Unreachable>;

/** A corner that remembers where it has been, and knows where others have been before. */
function remembering(corner: Corner, before: Solved): { readonly solve: Solve; readonly solved: Solved } {
  const solved = new Map<number, CornerMotion | Unreachable>();
  const solve: Solve = (travel) => {
    const known = before.get(travel) ?? solved.get(travel);
    if (known !== undefined) return known;
    const motion = corner.motion(travel);
    solved.set(travel, motion);
    return motion;
  };
  return { solve, solved };
}

/** Positions of one axle, each corner solved once a travel. */
export interface AxlePositions {
  readonly left: Solve;
  readonly right: Solve;
  at(left: number, right: number): State;
}

/** Positions that are looked at in every analysis of a geometry. */
export interface Grid extends Pick<AxleStates, "heave" | "roll" | "travels"> {
  readonly rest: State;
  readonly solved: { readonly left: Solved; readonly right: Solved };
}

const NONE: Grid["solved"] = { left: new Map(), right: new Map() };

function positionsBeside({ corners }: AxleMechanism, before: Grid["solved"]) {
  const left = remembering(corners.left, before.left);
  const right = corners.right === corners.left ? left : remembering(corners.right, before.right);
  const at = (zL: number, zR: number): State => {
    const deflections: State["deflections"] = new WeakMap();
    const l = left.solve(zL);
    if ("kind" in l) return { left: zL, right: zR, motion: { side: "left", why: l }, deflections };
    const r = right.solve(zR);
    if ("kind" in r) return { left: zL, right: zR, motion: { side: "right", why: r }, deflections };
    return { left: zL, right: zR, motion: { left: l, right: r }, deflections };
  };
  return { left: left.solve, right: right.solve, at, solved: { left: left.solved, right: right.solved } };
}

export const axlePositions = (mechanism: AxleMechanism): AxlePositions => positionsBeside(mechanism, NONE);

export function axleGrid(mechanism: AxleMechanism): Grid {
  const { at, solved } = positionsBeside(mechanism, NONE);
  const { travel, staticTravel: z0 } = mechanism;
  const travels = travelsOf(travel);
  const amplitude = Math.max(0, Math.min(z0 - travel.from, travel.to - z0));
  const rolls = amplitude === 0 ? [] : [...steps(-amplitude).reverse(), ...steps(amplitude)];
  return {
    rest: at(z0, z0),
    heave: travels.map((z) => at(z, z)),
    roll: rolls.map((q) => at(z0 - q, z0 + q)),
    travels,
    solved,
  };
}

/**
 * @param grid of this geometry, where it is at hand
 * @returns the states, or what binds at rest itself
 */
export function axleStates(mechanism: AxleMechanism, grid = axleGrid(mechanism)): AxleStates | Bound {
  const { rest, heave, roll, travels, solved } = grid;
  if (isBound(rest.motion)) return rest.motion;
  const { left, right, at } = positionsBeside(mechanism, solved);
  const known = [rest, ...heave, ...roll];
  return {
    rest: rest.motion,
    heave,
    roll,
    travels,
    left,
    right,
    at: (zL, zR) => known.find((state) => state.left === zL && state.right === zR) ?? at(zL, zR),
  };
}
