/**
 * The plane that an eye of a rocker moves in while it is dragged: through the eye, across the rocker's axis.
 *
 * An eye is written at design, and is seen where the pose has turned it: a shift on the screen is turned back by the rocker's angle.
 */
import { cross, type Point3, rotated, sum, unit } from "./geometry.js";
import type { Plane } from "./projection.js";

const FORWARD: Point3 = [1, 0, 0];
const UP: Point3 = [0, 0, 1];

/** `u` lies as level as it can, so that the arrow keys move sideways and up as far as the plane allows. */
export function planeAcross(axis: Point3): Plane {
  const level = unit(cross(UP, axis), FORWARD);
  return { u: level, v: unit(cross(axis, level), UP) };
}

/** @param angle of the rocker from design about `axis`, rad */
export const atDesign = (design: Point3, shift: Point3, axis: Point3, angle: number): Point3 =>
  sum(design, rotated(shift, axis, -angle));

/** In tenths of a millimetre, as the text keeps it. */
export const rounded = (p: Point3): Point3 => [tenth(p[0]), tenth(p[1]), tenth(p[2])];

const tenth = (metres: number): number => Math.round(metres * 1e4) / 1e4;
