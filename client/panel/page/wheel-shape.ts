/**
 * The outline of a wheel as it is seen: the hull of two circles about its spin axis. How wide it is drawn is looks alone;
 * the language knows no tyre width.
 */
import { polygonHull } from "d3-polygon";
import { cross, type Point3, sum, times, unit } from "./geometry.js";
import { polyline } from "./glyphs.js";
import type { Projection } from "./projection.js";

const STEPS = 40;
const WIDTH = 0.62;
const RIM = 0.62;
/** Its rounded shoulders: how far along the half width, and how far out. */
const ROUND = [1, 0.94, 0.82, 0.6].flatMap((along, i) => {
  const out = [0.88, 0.945, 0.98, 1][i] ?? 1;
  return [
    [along, out],
    [-along, out],
  ] as const;
});

export interface WheelShape {
  readonly tyre: string;
  readonly rim: string;
}

function circle(centre: Point3, spin: Point3, radius: number): readonly Point3[] {
  const u = unit(cross(spin, [0, 0, 1]), [1, 0, 0]);
  const v = cross(u, spin);
  return Array.from({ length: STEPS }, (_, i) => {
    const angle = (2 * Math.PI * i) / STEPS;
    return sum(centre, sum(times(radius * Math.cos(angle), u), times(radius * Math.sin(angle), v)));
  });
}

export function wheelShape(centre: Point3, spin: Point3, radius: number, { point, depth }: Projection): WheelShape {
  const half = (WIDTH * radius) / 2;
  const sides = [half, -half].map((along) => sum(centre, times(along, spin)));
  const rings = ROUND.flatMap(([along, out]) => circle(sum(centre, times(along * half, spin)), spin, out * radius));
  const hull = polygonHull(rings.map((p): [number, number] => [...point(p)]));
  const nearSide = [...sides].sort((a, b) => depth(b) - depth(a))[0] ?? centre;
  return {
    tyre: hull === null ? "" : polyline(hull, true),
    rim: polyline(circle(nearSide, spin, RIM * radius).map(point), true),
  };
}

/** Far enough out to fit it into the drawing, whatever the camera. */
export const wheelCorners = (centre: Point3, spin: Point3, radius: number): readonly Point3[] =>
  [1, -1].flatMap((k) => circle(sum(centre, times((k * WIDTH * radius) / 2, spin)), spin, radius));
