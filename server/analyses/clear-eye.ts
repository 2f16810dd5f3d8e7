/**
 * The smallest move of an eye in the rocker's plane that takes the motion in an unclaimed mode to
 * nothing while the motion in the claimed mode stays within a share of what it is.
 *
 *   minimise a² + b²  subject to  u(a, b) = 0  and  |c(a, b) / c(0, 0) − 1| ≤ keep
 *
 * with u and c the unclaimed and the claimed sensitivity. On the curve u = 0 the nearest point is
 * found by projecting the origin on the curve's tangent over and over; where the claimed motion
 * changes too much there, the point of the curve at which it has changed by just the share.
 *
 * In and out in m in the plane; undefined where no such move is found within `furthest`.
 */
export interface Motions {
  readonly unclaimed: number;
  readonly claimed: number;
}

export type MotionsAt = (a: number, b: number) => Motions | undefined;

export interface Move {
  readonly a: number;
  readonly b: number;
}

interface Slopes {
  readonly at: Motions;
  readonly unclaimed: Move;
  readonly claimed: Move;
}

/** Step of the central differences, m: small beside any rocker, large beside rounding. */
const STEP = 1e-5;
const ROUNDS = 40;
/** Sensitivities below this count as nothing. */
const NOTHING = 1e-10;
/** A little inside the bound, so that rounding the coordinates does not cross it. */
const INSIDE = 0.98;

export function clearEye(motionsAt: MotionsAt, keep: number, furthest: number): Move | undefined {
  const start = motionsAt(0, 0);
  if (start === undefined || start.claimed === 0) return undefined;
  const nearest = nearestZero(motionsAt, furthest);
  if (nearest === undefined) return undefined;
  const change = changeOf(motionsAt, nearest, start.claimed);
  if (change === undefined) return undefined;
  if (Math.abs(change) <= keep) return nearest;
  const bound = start.claimed * (1 + Math.sign(change) * keep * INSIDE);
  return zeroWith(motionsAt, nearest, bound, furthest);
}

function changeOf(motionsAt: MotionsAt, { a, b }: Move, claimed: number): number | undefined {
  const there = motionsAt(a, b);
  return there === undefined ? undefined : there.claimed / claimed - 1;
}

/** The point of u = 0 nearest to the origin. */
function nearestZero(motionsAt: MotionsAt, furthest: number): Move | undefined {
  let move: Move = { a: 0, b: 0 };
  for (let round = 0; round < ROUNDS; round += 1) {
    const slopes = slopesAt(motionsAt, move);
    if (slopes === undefined) return undefined;
    const { a: ga, b: gb } = slopes.unclaimed;
    const steep = ga * ga + gb * gb;
    if (steep === 0) return undefined;
    const along = (ga * move.a + gb * move.b - slopes.at.unclaimed) / steep;
    const next = { a: ga * along, b: gb * along };
    const moved = Math.hypot(next.a - move.a, next.b - move.b);
    move = within(next, furthest);
    if (moved < 1e-9 && Math.abs(slopes.at.unclaimed) < NOTHING) return move;
  }
  return undefined;
}

/** The point of u = 0 near `start` at which the claimed motion is `claimed`: two equations, Newton. */
function zeroWith(motionsAt: MotionsAt, start: Move, claimed: number, furthest: number): Move | undefined {
  let move = start;
  for (let round = 0; round < ROUNDS; round += 1) {
    const slopes = slopesAt(motionsAt, move);
    if (slopes === undefined) return undefined;
    const { unclaimed: u, claimed: c } = slopes;
    const missU = slopes.at.unclaimed;
    const missC = slopes.at.claimed - claimed;
    if (Math.abs(missU) < NOTHING && Math.abs(missC) < 1e-7) return move;
    const determinant = u.a * c.b - u.b * c.a;
    if (determinant === 0) return undefined;
    move = within(
      { a: move.a - (missU * c.b - u.b * missC) / determinant, b: move.b - (u.a * missC - c.a * missU) / determinant },
      furthest,
    );
  }
  return undefined;
}

function within(move: Move, furthest: number): Move {
  const length = Math.hypot(move.a, move.b);
  return length <= furthest ? move : { a: (move.a * furthest) / length, b: (move.b * furthest) / length };
}

function slopesAt(motionsAt: MotionsAt, { a, b }: Move): Slopes | undefined {
  const at = motionsAt(a, b);
  const a0 = motionsAt(a - STEP, b);
  const a1 = motionsAt(a + STEP, b);
  const b0 = motionsAt(a, b - STEP);
  const b1 = motionsAt(a, b + STEP);
  if (at === undefined || a0 === undefined || a1 === undefined || b0 === undefined || b1 === undefined)
    return undefined;
  const slope = (low: number, high: number): number => (high - low) / (2 * STEP);
  return {
    at,
    unclaimed: { a: slope(a0.unclaimed, a1.unclaimed), b: slope(b0.unclaimed, b1.unclaimed) },
    claimed: { a: slope(a0.claimed, a1.claimed), b: slope(b0.claimed, b1.claimed) },
  };
}
