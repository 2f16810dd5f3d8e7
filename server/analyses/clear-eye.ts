/**
 * The smallest move of an eye in the rocker's plane that takes the motion in an unclaimed mode to
 * nothing, among the moves that `allowed` takes (own motion kept, no leak over the travel).
 *
 *   minimise a² + b²  subject to  u(a, b) = 0  and  allowed(a, b)
 *
 * with u the unclaimed sensitivity. The point of the curve u = 0 that is nearest to the origin is
 * found by projecting the origin on the curve's tangent over and over; where it is not allowed, the
 * curve is followed both ways until a point is.
 *
 * In and out in m in the plane; undefined where no such move is found within `furthest`.
 */
export interface Move {
  readonly a: number;
  readonly b: number;
}

export interface EyePlane {
  /** Unclaimed sensitivity with the eye moved; undefined where the element has none there. */
  unclaimed(a: number, b: number): number | undefined;
  allowed(a: number, b: number): boolean;
  readonly furthest: number;
}

interface Slope extends Move {
  readonly value: number;
}

/** Step of the central differences, m: small beside any rocker, large beside rounding. */
const DIFFERENCE = 1e-5;
const ROUNDS = 40;
/** Sensitivities below this count as nothing. */
const NOTHING = 1e-10;
/** Steps along the curve, m, and what they are refined to. */
const STRIDE = 1e-3;
const FINE = 1e-5;

export function clearEye(plane: EyePlane): Move | undefined {
  const nearest = nearestZero(plane);
  if (nearest === undefined || plane.allowed(nearest.a, nearest.b)) return nearest;
  const found = [1, -1].map((sense) => followed(plane, nearest, sense)).filter((move) => move !== undefined);
  return found.sort((one, other) => lengthOf(one) - lengthOf(other))[0];
}

const lengthOf = ({ a, b }: Move): number => Math.hypot(a, b);

/** The point of u = 0 nearest to the origin. */
function nearestZero(plane: EyePlane): Move | undefined {
  let move: Move = { a: 0, b: 0 };
  for (let round = 0; round < ROUNDS; round += 1) {
    const slope = slopeAt(plane, move);
    if (slope === undefined) return undefined;
    const steep = slope.a * slope.a + slope.b * slope.b;
    if (steep === 0) return undefined;
    const along = (slope.a * move.a + slope.b * move.b - slope.value) / steep;
    const next = within({ a: slope.a * along, b: slope.b * along }, plane.furthest);
    const moved = Math.hypot(next.a - move.a, next.b - move.b);
    move = next;
    if (moved < 1e-9 && Math.abs(slope.value) < NOTHING) return move;
  }
  return undefined;
}

/** The first allowed point along the curve from `start`, one way, closed in on by halving the last stride. */
function followed(plane: EyePlane, start: Move, sense: number): Move | undefined {
  let before = start;
  for (let travelled = 0; travelled < 2 * plane.furthest; travelled += STRIDE) {
    const next = stepped(plane, before, sense * STRIDE);
    if (next === undefined || lengthOf(next) > plane.furthest) return undefined;
    if (plane.allowed(next.a, next.b)) return closedIn(plane, before, sense);
    before = next;
  }
  return undefined;
}

function closedIn(plane: EyePlane, before: Move, sense: number): Move | undefined {
  let [refused, allowed] = [0, STRIDE];
  while (allowed - refused > FINE) {
    const middle = (refused + allowed) / 2;
    const there = stepped(plane, before, sense * middle);
    if (there !== undefined && plane.allowed(there.a, there.b)) allowed = middle;
    else refused = middle;
  }
  return stepped(plane, before, sense * allowed);
}

/** Along the tangent, then back on the curve by Newton along the gradient. */
function stepped(plane: EyePlane, from: Move, length: number): Move | undefined {
  const start = slopeAt(plane, from);
  const steep = start === undefined ? 0 : Math.hypot(start.a, start.b);
  if (start === undefined || steep === 0) return undefined;
  let move: Move = { a: from.a - (start.b / steep) * length, b: from.b + (start.a / steep) * length };
  for (let round = 0; round < ROUNDS; round += 1) {
    const slope = slopeAt(plane, move);
    if (slope === undefined) return undefined;
    if (Math.abs(slope.value) < NOTHING) return move;
    const square = slope.a * slope.a + slope.b * slope.b;
    if (square === 0) return undefined;
    move = { a: move.a - (slope.a * slope.value) / square, b: move.b - (slope.b * slope.value) / square };
  }
  return undefined;
}

function within(move: Move, furthest: number): Move {
  const length = lengthOf(move);
  return length <= furthest ? move : { a: (move.a * furthest) / length, b: (move.b * furthest) / length };
}

function slopeAt(plane: EyePlane, { a, b }: Move): Slope | undefined {
  const value = plane.unclaimed(a, b);
  const a0 = plane.unclaimed(a - DIFFERENCE, b);
  const a1 = plane.unclaimed(a + DIFFERENCE, b);
  const b0 = plane.unclaimed(a, b - DIFFERENCE);
  const b1 = plane.unclaimed(a, b + DIFFERENCE);
  if (value === undefined || a0 === undefined || a1 === undefined || b0 === undefined || b1 === undefined)
    return undefined;
  return { value, a: (a1 - a0) / (2 * DIFFERENCE), b: (b1 - b0) / (2 * DIFFERENCE) };
}
