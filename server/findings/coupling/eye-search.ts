/**
 * Where an eye would have to stand for the element only to swing in the unclaimed mode: one eye moved
 * by itself, or both of them, each taking away half of the leak. Positions only; `move-eye` makes text of them.
 *
 * Moving one eye changes the element's own motion by about its leak, so that a leak beyond a tenth takes both.
 */
import { clearEye, type EyePlane, type Move } from "../../analyses/clear-eye.js";
import {
  type ConnectionProbe,
  connectionProbe,
  type MovedEye,
  type ProbedElement,
  withEyeMoved,
} from "../../assemble/eye-probe.js";
import { add, cross, distance, mirror, norm, scale, sub, unit, type Vec3 } from "../../maths/vec3.js";
import type { AxleModel, ConnectionModel } from "../../model/car.js";
import type { CheckedElement } from "../axle-parts.js";
import { type EyeEnd, eyeEndsOf } from "./eye-ends.js";
import { type AxleMode, claimedMotion, leakOverTravel, leaksInto, unclaimedMotion } from "./motion.js";
import { PIN, placedRocker, type PlacedEye, sameText, SHORTEST_LEVER } from "./placed-rocker.js";

/** The own motion may change by a tenth: more would be another set-up. */
export const KEEP = 0.1;
/** A little below the limits, so that rounding the coordinates does not cross them. */
const BELOW = 0.95;
const WITHIN = 0.99;
/** Of a pin's thickness and a bearing's room: a little more, for the same reason. */
const ROOM = 1.02;

export interface EyeMove {
  readonly end: EyeEnd;
  readonly eye: PlacedEye;
  /** The sides that it moves on. */
  readonly sides: MovedEye["sides"];
  /** The new place, as it is written for the side whose text gives it. */
  readonly written: Vec3;
  readonly distance: number;
}

interface Search {
  readonly axle: AxleModel;
  readonly connection: ConnectionModel;
  readonly probe: ConnectionProbe;
  readonly into: AxleMode;
  /** The leak that is none, as a fraction. */
  readonly limit: number;
}

/** An eye with the plane that it can move in. */
interface Movable {
  readonly end: EyeEnd;
  readonly eye: PlacedEye;
  readonly moved: MovedEye;
  readonly furthest: number;
  /** Whether a pin and its bearing can be there, beside the axis and the other eyes; in the frame of a left corner. */
  readonly hasRoom: (point: Vec3) => boolean;
  /** In the frame of a left corner. */
  readonly place: (move: Move) => Vec3;
}

/**
 * One eye moved by itself, nearest first.
 *
 * @param stays whether the eye stays for what else uses it, so that the new one needs room for a pin beside it
 */
export function singleMoves(
  element: CheckedElement,
  limit: number,
  stays: (eye: PlacedEye) => boolean,
): readonly EyeMove[] {
  const search = searchFor(element, limit);
  if (search === undefined) return [];
  const found = movables(search, stays).flatMap((movable) => {
    const move = clearEye(planeFor(search, movable, 0));
    return move === undefined ? [] : [eyeMove(movable, move)];
  });
  return found.sort((a, b) => a.distance - b.distance);
}

/** Both eyes moved, each by half of the leak. */
export function pairedMove(element: CheckedElement, limit: number): readonly [EyeMove, EyeMove] | undefined {
  const search = searchFor(element, limit);
  const [first, second] = search === undefined ? [] : movables(search, () => false);
  if (search === undefined || first === undefined || second === undefined) return undefined;
  // Half way the leak over the travel is still there: only the end has to be free of it.
  const halfWay = clearEye(planeFor({ ...search, limit: Number.POSITIVE_INFINITY }, first, 0.5));
  if (halfWay === undefined) return undefined;
  const connection = withEyeMoved(search.connection, first.moved, first.place(halfWay));
  const rest = clearEye(planeFor({ ...search, connection }, second, 0));
  return rest === undefined ? undefined : [eyeMove(first, halfWay), eyeMove(second, rest)];
}

function searchFor(element: CheckedElement, limit: number): Search | undefined {
  const into = leaksInto(element);
  const { axle, model } = element;
  if (axle === undefined || into === undefined || model.connection === undefined) return undefined;
  return { axle, connection: model.connection, probe: connectionProbe(axle, model), into, limit };
}

function eyeMove({ end, eye, moved: { sides }, place }: Movable, move: Move): EyeMove {
  const point = place(move);
  // A mirrored eye is written for the left side; one that stands for the right alone in its own place.
  const written = sides.includes("left") ? point : mirror(point);
  return { end, eye, sides, written, distance: Math.hypot(move.a, move.b) };
}

function movables({ axle, connection }: Search, stays: (eye: PlacedEye) => boolean): readonly Movable[] {
  const found: Movable[] = [];
  for (const end of eyeEndsOf(connection)) {
    const movable = movableAt(axle, end, stays);
    if (movable !== undefined && !found.some(({ eye }) => sameText(eye, movable.eye))) found.push(movable);
  }
  return found;
}

function movableAt(axle: AxleModel, end: EyeEnd, stays: (eye: PlacedEye) => boolean): Movable | undefined {
  const rocker = placedRocker(axle, end.side);
  const eye = rocker?.eyes.get(end.eye);
  if (rocker === undefined || eye === undefined) return undefined;
  const toLeft = (point: Vec3): Vec3 => (end.side === "left" ? point : mirror(point));
  const from = toLeft(eye.point);
  const [e1, e2] = planeOf(toLeft(rocker.axis));
  const sides = (["left", "right"] as const).filter((side) =>
    sameText(placedRocker(axle, side)?.eyes.get(end.eye), eye),
  );
  const pivot = toLeft(rocker.pivot);
  const along = unit(toLeft(rocker.axis));
  const beside = [...rocker.eyes.values()]
    .filter((other) => (other === eye ? stays(eye) : distance(other.point, eye.point) >= PIN))
    .map(({ point }) => toLeft(point));
  const isPlanar = axle.corner[end.side].kind === "planar";
  return {
    end,
    eye,
    hasRoom: (point) =>
      norm(cross(along, sub(point, pivot))) > ROOM * SHORTEST_LEVER &&
      // Eyes that are drawn in one plane may be apart across it.
      (isPlanar || beside.every((other) => distance(point, other) > ROOM * PIN)),
    moved: { eye: end.eye, sides },
    furthest: norm(sub(from, toLeft(rocker.pivot))),
    place: ({ a, b }) => add(from, add(scale(e1, a), scale(e2, b))),
  };
}

/**
 * What has to come to nothing, and what has to be kept: the own motion within a tenth, no leak over the
 * travel, and the travel itself.
 *
 * @param remaining share of the leak that is left for another eye to take away
 */
function planeFor(
  { connection, probe, into, limit }: Search,
  { moved, place, furthest, hasRoom }: Movable,
  remaining: number,
): EyePlane {
  const at = (a: number, b: number): ProbedElement | undefined =>
    probe(withEyeMoved(connection, moved, place({ a, b })));
  const start = at(0, 0);
  const kept = start === undefined ? 0 : claimedMotion(start, into);
  const left = start === undefined ? 0 : remaining * unclaimedMotion(start, into);
  const reached = start?.overTravel().reached ?? 0;
  return {
    furthest,
    unclaimed(a, b) {
      const probed = at(a, b);
      return probed && unclaimedMotion(probed, into) - left;
    },
    allowed(a, b) {
      const probed = hasRoom(place({ a, b })) ? at(a, b) : undefined;
      if (probed === undefined || !(Math.abs(claimedMotion(probed, into) / kept - 1) <= WITHIN * KEEP)) return false;
      return leakOverTravel(probed, into) <= BELOW * limit && probed.overTravel().reached >= reached;
    },
  };
}

/** Two unit vectors that span the plane across the axis. */
function planeOf(axis: Vec3): readonly [Vec3, Vec3] {
  const along = unit(axis);
  const helper: Vec3 = Math.abs(along[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const first = unit(cross(along, helper));
  return [first, cross(along, first)];
}
