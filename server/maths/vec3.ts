/** Vectors in space as readonly triples; plain functions, no classes. */
export type Vec3 = readonly [number, number, number];

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const norm = (a: Vec3): number => Math.sqrt(dot(a, a));
export const distance = (a: Vec3, b: Vec3): number => norm(sub(a, b));
/** Unit vector; the zero vector stays zero. */
export const unit = (a: Vec3): Vec3 => {
  const length = norm(a);
  return length === 0 ? a : scale(a, 1 / length);
};
/** The mirror image in the plane y = 0: how a left corner becomes a right one. */
export const mirror = (a: Vec3): Vec3 => [a[0], -a[1], a[2]];
