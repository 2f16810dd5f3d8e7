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
  const [half, shoulder] = [(WIDTH * radius) / 2, 0.95 * radius];
  const sides = [half, -half].map((along) => sum(centre, times(along, spin)));
  const rings = [
    ...sides.flatMap((at) => circle(at, spin, shoulder)),
    ...[0.62 * half, -0.62 * half].flatMap((along) => circle(sum(centre, times(along, spin)), spin, radius)),
  ];
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
