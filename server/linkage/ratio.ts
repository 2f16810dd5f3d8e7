/**
 * A corner without geometry: every element brings its own motion ratio. All that is known is the
 * wheel's travel: the upright rises with it, everything else stays where it is drawn.
 *
 * Invariant: every finite travel can be reached; wheel and rocker are absent.
 */
import { add, type Vec3 } from "../maths/vec3.js";
import type { Body, Corner, CornerMotion, PointMotion } from "./corner.js";
import { fixedPoint } from "./rigid-motion.js";

const UP: Vec3 = [0, 0, 1];

const ratioMotion = (travel: number): CornerMotion => ({
  travel,
  point: (body: Body, design: Vec3): PointMotion =>
    body === "upright" ? { p: add(design, [0, 0, travel]), d: UP, dd: [0, 0, 0] } : fixedPoint(design),
  rocker: undefined,
  wheel: undefined,
});

/** The corner of an axle that is given by motion ratios. */
export const ratioCorner = (): Corner => ({
  basis: "ratio",
  motion: ratioMotion,
  reach: (from, to) => ({ from, to, bound: { low: undefined, high: undefined }, toggles: [] }),
});
