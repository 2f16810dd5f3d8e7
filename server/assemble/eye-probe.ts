/**
 * How an element would be moved if it were joined otherwise: what a fix looks at to find a better
 * place, without building the whole axle again. The corners are solved once.
 */
import type { Connection, Deflection } from "../elements/element.js";
import type { AxleMotion, CornerMotion } from "../linkage/corner.js";
import { mirror, type Vec3 } from "../maths/vec3.js";
import type { Attachment, AxleModel, ConnectionModel, ElementModel } from "../model/car.js";
import type { Side } from "../model/origin.js";
import { builtCorners } from "./assemble.js";
import { connectionOf, isUnconnected } from "./connections.js";

export interface MovedEye {
  readonly eye: string;
  /** The sides whose eye moves; both where the right one is the mirror image. */
  readonly sides: readonly Side[];
}

export interface ProbedElement {
  /** At design position. */
  readonly design: Deflection;
  overTravel(): ProbedTravel;
}

export interface ProbedTravel {
  /** Largest |s| of a pure heave and of a pure roll over the envelope. */
  readonly heave: number;
  readonly roll: number;
  /** At how many of the positions the links reach; a drop link may reach less far from another eye. */
  readonly reached: number;
}

/** @returns the element's motion if it were joined so, where it has one */
export type ConnectionProbe = (connection: ConnectionModel) => ProbedElement | undefined;

/** Positions looked at on each side of design, as the coupling analysis does. */
const STEPS = 4;

export function connectionProbe(axle: AxleModel, element: ElementModel): ConnectionProbe {
  const corners = builtCorners(axle);
  const at = (left: number, right: number): AxleMotion | undefined => {
    const motions = { left: corners.left.corner.motion(left), right: corners.right.corner.motion(right) };
    return isReached(motions.left) && isReached(motions.right)
      ? { left: motions.left, right: motions.right }
      : undefined;
  };
  const design = at(0, 0);
  const { from, to } = axle.travel;
  const heaves = steps(Math.min(0, from), Math.max(0, to)).map((travel) => at(travel, travel));
  const amplitude = Math.max(0, Math.min(-from, to));
  const rolls = steps(-amplitude, amplitude).map((travel) => at(-travel, travel));
  return (connection) => {
    if (design === undefined) return undefined;
    const made = connectionOf({ ...element, connection }, { axle, corners });
    if (isUnconnected(made)) return undefined;
    const deflection = made.deflection(design);
    if ("kind" in deflection) return undefined;
    return {
      design: deflection,
      overTravel() {
        const heave = largest(made, heaves);
        const roll = largest(made, rolls);
        return { heave: heave.most, roll: roll.most, reached: heave.reached + roll.reached };
      },
    };
  };
}

const isReached = (motion: object): motion is CornerMotion => !("kind" in motion);

function steps(from: number, to: number): readonly number[] {
  return Array.from({ length: STEPS }, (_, index) => (index + 1) / STEPS).flatMap((share) => [
    from * share,
    to * share,
  ]);
}

/** Beyond what the links reach there is nothing to look at; `unreachable-travel` tells that. */
function largest(connection: Connection, motions: readonly (AxleMotion | undefined)[]) {
  let most = 0;
  let reached = 0;
  for (const motion of motions) {
    const deflection = motion && connection.deflection(motion);
    if (deflection === undefined || "kind" in deflection) continue;
    most = Math.max(most, Math.abs(deflection.s));
    reached += 1;
  }
  return { most, reached };
}

/** The connection with one of its eyes at another place (in the frame of a left corner). */
export function withEyeMoved(connection: ConnectionModel, moved: MovedEye, point: Vec3): ConnectionModel {
  const at = (end: Attachment): Attachment => movedEnd(end, moved, point);
  if (connection.kind === "between") return { ...connection, ends: [at(connection.ends[0]), at(connection.ends[1])] };
  if (connection.kind !== "bar" && connection.kind !== "tee") return connection;
  const { left, right } = connection.links;
  return { ...connection, links: { left: left && at(left), right: right && at(right) } };
}

function movedEnd(end: Attachment, { eye, sides }: MovedEye, point: Vec3): Attachment {
  if (end.kind !== "eye" || end.eye !== eye || !sides.includes(end.side)) return end;
  return { ...end, point: { ...end.point, value: end.side === "left" ? point : mirror(point) } };
}
