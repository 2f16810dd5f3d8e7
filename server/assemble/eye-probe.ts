/**
 * How an element would be moved at design position if one of its rocker eyes stood elsewhere: what
 * a fix looks at to find a better place, without building the whole axle again.
 */
import type { Deflection } from "../elements/element.js";
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

/** @returns the deflection at design with the eye at `point` (in the frame of a left corner), where it has one */
export type EyeProbe = (point: Vec3) => Deflection | undefined;

export function eyeProbe(axle: AxleModel, element: ElementModel, moved: MovedEye): EyeProbe {
  const corners = builtCorners(axle);
  const left = corners.left.corner.motion(0);
  const right = corners.right.corner.motion(0);
  return (point) => {
    if ("kind" in left || "kind" in right || element.connection === undefined) return undefined;
    const made = connectionOf({ ...element, connection: withEye(element.connection, moved, point) }, { axle, corners });
    if (isUnconnected(made)) return undefined;
    const deflection = made.deflection({ left, right });
    return "kind" in deflection ? undefined : deflection;
  };
}

function withEye(connection: ConnectionModel, moved: MovedEye, point: Vec3): ConnectionModel {
  const at = (end: Attachment): Attachment => movedEnd(end, moved, point);
  if (connection.kind === "between") return { ...connection, ends: [at(connection.ends[0]), at(connection.ends[1])] };
  if (connection.kind !== "bar") return connection;
  const { left, right } = connection.links;
  return { ...connection, links: { left: left && at(left), right: right && at(right) } };
}

function movedEnd(end: Attachment, { eye, sides }: MovedEye, point: Vec3): Attachment {
  if (end.kind !== "eye" || end.eye !== eye || !sides.includes(end.side)) return end;
  return { ...end, point: { ...end.point, value: end.side === "left" ? point : mirror(point) } };
}
