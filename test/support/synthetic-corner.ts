/**
 * A corner whose motion is written down instead of solved: every body turns about a fixed axis
 * by a polynomial of travel, the upright is carried along a curve. For testing what stands on
 * `CornerMotion` with derivatives that are known in closed form.
 */
import type { Body, Corner, CornerMotion, Jet, PointMotion } from "../../server/linkage/corner.js";
import { add, cross, dot, scale, sub, unit, type Vec3 } from "../../server/maths/vec3.js";

export interface SyntheticOptions {
  readonly pivot?: Vec3;
  readonly axis?: Vec3;
  /** Rocker angle a z + b z² + c z³, rad with z in m. */
  readonly rocker?: readonly [number, number, number];
}

const polynomial = (c: readonly [number, number, number], z: number): Jet => ({
  value: z * (c[0] + z * (c[1] + z * c[2])),
  d: c[0] + z * (2 * c[1] + 3 * z * c[2]),
  dd: 2 * c[1] + 6 * z * c[2],
});

function rotated(pivot: Vec3, axis: Vec3, angle: Jet, point: Vec3): PointMotion {
  const foot = add(pivot, scale(axis, dot(sub(point, pivot), axis)));
  const u = sub(point, foot);
  const v = cross(axis, u);
  const cos = Math.cos(angle.value);
  const sin = Math.sin(angle.value);
  const r = add(scale(u, cos), scale(v, sin));
  const t = sub(scale(v, cos), scale(u, sin));
  return {
    p: add(foot, r),
    d: scale(t, angle.d),
    dd: add(scale(t, angle.dd), scale(r, -angle.d * angle.d)),
  };
}

const carried = (z: number, point: Vec3): PointMotion => ({
  p: add(point, [0.1 * z * z, -0.05 * z + 0.4 * z * z, z]),
  d: [0.2 * z, -0.05 + 0.8 * z, 1],
  dd: [0.2, 0.8, 0],
});

export function syntheticCorner(options: SyntheticOptions = {}): Corner {
  const pivot = options.pivot ?? [0.01, 0.21, 0.43];
  const axis = unit(options.axis ?? [1, 0.1, -0.05]);
  const coefficients = options.rocker ?? [9, 12, -30];
  const motion = (travel: number): CornerMotion => {
    const rocker = polynomial(coefficients, travel);
    const arm = polynomial([2.1, 0.7, 1.5], travel);
    const point = (body: Body, design: Vec3): PointMotion => {
      if (body === "chassis") return { p: design, d: [0, 0, 0], dd: [0, 0, 0] };
      if (body === "rocker") return rotated(pivot, axis, rocker, design);
      if (body === "upright") return carried(travel, design);
      return rotated([0, 0.25, 0.12], [1, 0, 0], arm, design);
    };
    return { travel, point, rocker, wheel: undefined };
  };
  return {
    basis: "hardpoints",
    motion,
    reach: (from, to) => ({ from, to, bound: { low: undefined, high: undefined }, toggles: [] }),
  };
}
