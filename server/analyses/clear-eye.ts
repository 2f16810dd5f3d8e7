/**
 * The smallest move of an eye in the rocker's plane that takes the motion in an unclaimed mode to
 * nothing, among the moves that `allowed` takes (own motion kept, no leak over the travel).
 *
 *   minimise a² + b²  subject to  u(a, b) = 0  and  allowed(a, b)
 *
 * with u the unclaimed sensitivity. From the origin Newton's method goes to the curve u = 0, and along the
 * curve to where it comes nearest: where the way back to the origin has no part along the tangent. Where that
 * place is not allowed, the curve is followed both ways until one is.
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
/** Nearer than this along the curve is near enough, m: the distance differs by less than a nanometre. */
const NEAR = 1e-6;
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

/** The point of u = 0 nearest to the origin, as far as the curve leads there downhill. */
function nearestZero(plane: EyePlane): Move | undefined {
  let move = ontoCurve(plane, { a: 0, b: 0 });
  let damping = 1;
  for (let round = 0; round < ROUNDS && move !== undefined; round += 1) {
    const along = damping * alongTangent(plane, move);
    if (Math.abs(along) < NEAR) break;
    const next: Move | undefined = stepped(plane, move, along);
    // The more the curve bends towards the origin, the further a whole step overshoots.
    if (next !== undefined && lengthOf(next) < lengthOf(move)) move = next;
    else damping /= 2;
  }
  return move === undefined || lengthOf(move) > plane.furthest ? undefined : move;
}

/** How far along the curve's tangent the foot of the perpendicular from the origin is. */
function alongTangent(plane: EyePlane, move: Move): number {
  const slope = slopeAt(plane, move);
  const steep = slope === undefined ? 0 : Math.hypot(slope.a, slope.b);
  return slope === undefined || steep === 0 ? 0 : (move.a * slope.b - move.b * slope.a) / steep;
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

/** Along the tangent, then back on the curve. */
function stepped(plane: EyePlane, from: Move, length: number): Move | undefined {
  const start = slopeAt(plane, from);
  const steep = start === undefined ? 0 : Math.hypot(start.a, start.b);
  if (start === undefined || steep === 0) return undefined;
  return ontoCurve(plane, { a: from.a - (start.b / steep) * length, b: from.b + (start.a / steep) * length });
}

/** To the curve by Newton's method along the gradient; never further than a rocker is large in one go. */
function ontoCurve(plane: EyePlane, from: Move): Move | undefined {
  let move = from;
  for (let round = 0; round < ROUNDS; round += 1) {
    const slope = slopeAt(plane, move);
    if (slope === undefined) return undefined;
    if (Math.abs(slope.value) < NOTHING) return move;
    const square = slope.a * slope.a + slope.b * slope.b;
    const back = slope.value / square;
    const far = Math.abs(back) * Math.sqrt(square);
    if (!(square > 0) || !(far <= plane.furthest)) return undefined;
    move = { a: move.a - slope.a * back, b: move.b - slope.b * back };
  }
  return undefined;
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
