/**
 * Where a wheel's contact point and centre are in the frame of the car, with derivatives against its travel; the right
 * side mirrored back from the left corner that it is computed as.
 *
 * A wheel without geometry rises straight up from where it is drawn.
 */
import type { CornerMotion, PointMotion } from "../../linkage/corner.js";
import { mirror, type Vec3 } from "../../maths/vec3.js";
import type { WheelPlace } from "../../elements/loaded-car.js";

export interface WheelPoints {
  readonly contact: PointMotion;
  readonly centre: PointMotion;
}

const UP: Vec3 = [0, 0, 1];
const STILL: Vec3 = [0, 0, 0];

const risen = ([x, y, z]: Vec3, travel: number): PointMotion => ({ p: [x, y, z + travel], d: UP, dd: STILL });

const mirrored = ({ p, d, dd }: PointMotion): PointMotion => ({ p: mirror(p), d: mirror(d), dd: mirror(dd) });

/** @param place of this wheel in the frame of the car; @returns undefined where neither geometry nor place is known */
export function wheelPoints(
  { travel, wheel }: CornerMotion,
  side: "left" | "right",
  place: WheelPlace | undefined,
): WheelPoints | undefined {
  if (wheel !== undefined) {
    const { contact, centre } = wheel;
    return side === "left" ? { contact, centre } : { contact: mirrored(contact), centre: mirrored(centre) };
  }
  return place && { contact: risen(place.contact, travel), centre: risen(place.centre, travel) };
}
