/** Points and what is done with them: plain arrays, so that a table of the server's is used as it comes. */

export type Point3 = readonly [x: number, y: number, z: number];
/** On the screen: right and down, px. */
export type Point2 = readonly [x: number, y: number];

export const sum = (a: Point3, b: Point3): Point3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Point3, b: Point3): Point3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (k: number, a: Point3): Point3 => [k * a[0], k * a[1], k * a[2]];
export const distance = (a: Point3, b: Point3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
export const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Point3, b: Point3): Point3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Shorter, and it is rounding rather than a direction. */
const SHORTEST = 1e-12;

/** Of length 1; `otherwise` for a vector that has no direction. */
export function unit(a: Point3, otherwise: Point3): Point3 {
  const size = Math.hypot(...a);
  return size > SHORTEST ? times(1 / size, a) : otherwise;
}

/** Turned about an axis (unit vector) through the origin. */
export function rotated(a: Point3, axis: Point3, angle: number): Point3 {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return sum(sum(times(c, a), times(s, cross(axis, a))), times((1 - c) * dot(axis, a), axis));
}
