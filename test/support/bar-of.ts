/** An anti-roll bar on any corner with a rocker: levers across the car, drop links from the rockers. */
import { barTwist } from "../../server/elements/connections/bar.js";
import type { BarLever } from "../../server/elements/connections/bar-lever.js";
import type { Connection } from "../../server/elements/element.js";
import type { Corner } from "../../server/linkage/corner.js";
import { leverOf } from "../../server/linkage/lever.js";
import { mirror, type Vec3 } from "../../server/maths/vec3.js";

const eye: Vec3 = [0.01, 0.248, 0.42];
const end: Vec3 = [0.03, 0.23, 0.25];

export const mirrored = mirror;

/** @param end the lever's own end; its default leaves a long drop link */
export function lever(corner: Corner, sense: 1 | -1 = 1, length = 0.07): BarLever {
  const design = corner.motion(0);
  if ("kind" in design) throw new Error("unreachable at design");
  const points = { pivot: [end[0] - length, end[1], end[2]] as Vec3, axis: [0, sense, 0] as Vec3, end };
  const made = leverOf(points, design.point("rocker", eye));
  if ("kind" in made) throw new Error(`${made.part} ${made.reason}`);
  return { lever: made, body: "rocker", linkEnd: eye };
}

export const bar = (corner: Corner, sense: 1 | -1 = 1): Connection =>
  barTwist({ left: lever(corner, sense), right: lever(corner, sense) }, "hardpoints");
