/** Planar corners with motions known in closed form. Points are (y, z) in m. */
import type { Corner, CornerMotion } from "../../server/linkage/corner.js";
import { type PlanarGeometry, type Vec2, isDegenerate } from "../../server/linkage/geometry.js";
import { planarCorner } from "../../server/linkage/planar.js";

export const planarOf = (geometry: PlanarGeometry): Corner => {
  const corner = planarCorner(geometry);
  if (isDegenerate(corner)) throw new Error(`${corner.part} ${corner.reason}`);
  return corner;
};

export const reachedAt = (corner: Corner, travel: number): CornerMotion => {
  const motion = corner.motion(travel);
  if ("kind" in motion) throw new Error(`${travel} m is out of reach: ${motion.link} at ${motion.limit}`);
  return motion;
};

/** Length of both arms, and the upright from lower to upper outer joint, of the parallelogram. */
export const ARM = 0.4;
export const UPRIGHT: Vec2 = [-0.05, 0.3];

/**
 * Equal, parallel, level arms: the upright moves without turning, the wheel centre on a circle of the arms' radius, so
 * that z = ARM sin θ.
 */
export const parallelogram = (more: Partial<PlanarGeometry> = {}): PlanarGeometry => ({
  lower: { inner: [0.3, 0.15], outer: [0.3 + ARM, 0.15] },
  upper: { inner: [0.3 + UPRIGHT[0], 0.15 + UPRIGHT[1]], outer: [0.3 + ARM + UPRIGHT[0], 0.15 + UPRIGHT[1]] },
  wheel: { centre: [0, 0.75, 0.3], camber: -0.03, toe: 0.002, loadedRadius: 0.3 },
  ...more,
});
