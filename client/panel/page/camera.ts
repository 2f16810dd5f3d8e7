/**
 * Where the drawing is looked at from: two angles, and what they make of a point. Without perspective, so that lengths
 * in one direction can be compared.
 *
 * In: points of the car's frame (x forward, y left, z up), m. Out: right and up on the screen and towards the viewer, m.
 */
import type { Point3 } from "./geometry.js";

/** Angles in rad: azimuth of the viewer about z from straight ahead of the car, elevation above the ground plane. */
export interface Camera {
  readonly azimuth: number;
  readonly elevation: number;
}

export type ViewName = "front" | "side" | "top" | "free";

const RIGHT_ANGLE = Math.PI / 2;

/** From the front, from the left (the car faces left), from above (the car faces up). */
export const cameras: Readonly<Record<ViewName, Camera>> = {
  front: { azimuth: 0, elevation: 0 },
  side: { azimuth: RIGHT_ANGLE, elevation: 0 },
  top: { azimuth: Math.PI, elevation: RIGHT_ANGLE },
  free: { azimuth: 0.62, elevation: 0.42 },
};

/** The viewer's axes, unit vectors in the car's frame. */
export interface Axes {
  readonly right: Point3;
  readonly up: Point3;
  readonly near: Point3;
}

export function axesOf({ azimuth, elevation }: Camera): Axes {
  const [ca, sa, ce, se] = [Math.cos(azimuth), Math.sin(azimuth), Math.cos(elevation), Math.sin(elevation)];
  return { right: [-sa, ca, 0], up: [-se * ca, -se * sa, ce], near: [ce * ca, ce * sa, se] };
}

/** Turned by so much; one cannot look from below the ground upside down. */
export function turned({ azimuth, elevation }: Camera, right: number, up: number): Camera {
  const limit = RIGHT_ANGLE;
  return {
    azimuth: wrapped(azimuth + right),
    elevation: Math.min(limit, Math.max(-limit, elevation + up)),
  };
}

/** On the way from one to the other, the shorter way round; `share` from 0 to 1. */
export function between(from: Camera, to: Camera, share: number): Camera {
  return {
    azimuth: wrapped(from.azimuth + wrapped(to.azimuth - from.azimuth) * share),
    elevation: from.elevation + (to.elevation - from.elevation) * share,
  };
}

/** Into (−π, π]. */
function wrapped(angle: number): number {
  const turn = 2 * Math.PI;
  const rest = ((angle % turn) + turn) % turn;
  return rest > Math.PI ? rest - turn : rest;
}
