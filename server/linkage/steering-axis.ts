/**
 * Figures of the steering axis against the ground, for a left wheel: scrub radius, mechanical trail, offset at
 * the wheel centre. In: both outer joints, contact point and wheel centre at one travel, all in one frame.
 */
import { sub, type Vec3 } from "../maths/vec3.js";

export interface SteeringFigures {
  /** Contact point less the axis at the contact point's height, outboard positive, m. */
  readonly scrubRadius: number;
  /** The axis less the contact point at that height, m: positive where the contact point trails behind. */
  readonly trail: number;
  /** Wheel centre less the axis at the wheel centre's height, outboard positive, m. */
  readonly kingpinOffset: number;
}

/** Undefined where the axis lies level and so meets no height. */
export function steeringFigures(lower: Vec3, upper: Vec3, contact: Vec3, centre: Vec3): SteeringFigures | undefined {
  const axis = sub(upper, lower);
  const at = (z: number): readonly [number, number] => {
    const share = (z - lower[2]) / axis[2];
    return [lower[0] + share * axis[0], lower[1] + share * axis[1]];
  };
  const ground = at(contact[2]);
  const figures = {
    scrubRadius: contact[1] - ground[1],
    trail: ground[0] - contact[0],
    kingpinOffset: centre[1] - at(centre[2])[1],
  };
  return Object.values(figures).every(Number.isFinite) ? figures : undefined;
}
