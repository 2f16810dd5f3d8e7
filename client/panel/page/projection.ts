/**
 * From the car's frame to px on the screen and back into a plane: the camera, the body's motion over the road, and what part of
 * the car fills the drawing.
 */
import { axesOf, type Axes, type Camera } from "./camera.js";
import { dot, type Point2, type Point3, sum, times } from "./geometry.js";
import { type BodyMotion, intoBody } from "./scene.js";

/** What is to be seen, in the camera's plane, m. */
export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Projection {
  /** px per m. */
  readonly scale: number;
  readonly point: (p: Point3) => Point2;
  /** Towards the viewer, m: what is nearer is drawn later. */
  readonly depth: (p: Point3) => number;
  /** The shift within a plane that moves a point by so many px. */
  readonly within: (plane: Plane, px: Point2) => Point3;
}

/** Through a point, spanned by two unit vectors at right angles. */
export interface Plane {
  readonly u: Point3;
  readonly v: Point3;
}

const NO_EXTENT: Extent = { left: -0.5, right: 0.5, bottom: -0.3, top: 0.3 };

export function extentOf(points: readonly Point3[], camera: Camera): Extent {
  const { right, up } = axesOf(camera);
  let [l, r, b, t] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const p of points) {
    const [x, y] = [dot(right, p), dot(up, p)];
    if (x < l) l = x;
    if (x > r) r = x;
    if (y < b) b = y;
    if (y > t) t = y;
  }
  return l <= r ? { left: l, right: r, bottom: b, top: t } : NO_EXTENT;
}

export interface Look {
  readonly camera: Camera;
  readonly body: BodyMotion;
  readonly extent: Extent;
  readonly size: Size;
  readonly margin: { readonly x: number; readonly y: number };
  /** Larger than what fits. */
  readonly zoom: number;
  /** px that the drawing was pushed aside. */
  readonly pan: Point2;
}

export function projectionOf({ camera, body, extent, size, margin, zoom, pan }: Look): Projection {
  const room = axesOf(camera);
  const [w, h] = [Math.max(1e-3, extent.right - extent.left), Math.max(1e-3, extent.top - extent.bottom)];
  const fits = Math.min((size.width - 2 * margin.x) / w, (size.height - 2 * margin.y) / h);
  const scale = Math.max(1, fits) * zoom;
  const [mx, my] = [(extent.left + extent.right) / 2, (extent.bottom + extent.top) / 2];
  const axes: Axes = {
    right: intoBody(body, room.right),
    up: intoBody(body, room.up),
    near: intoBody(body, room.near),
  };
  const [sx, sy] = [dot(room.right, body.shift) - mx, dot(room.up, body.shift) - my];
  const [ox, oy] = [size.width / 2 + pan[0], size.height / 2 + pan[1]];
  return {
    scale,
    point: (p) => [ox + scale * (dot(axes.right, p) + sx), oy - scale * (dot(axes.up, p) + sy)],
    depth: (p) => dot(axes.near, p),
    within: (plane, px) => within(plane, axes, [px[0] / scale, -px[1] / scale]),
  };
}

/** What counts as seen on edge: then only the direction that shows is moved along. */
const EDGE = 0.02;

/**
 * Least squares of  M (a, b) = (x, y),  M = [[right·u, right·v], [up·u, up·v]], damped where the plane is seen on edge, so that a
 * small movement of the pointer never becomes a leap into the depth.
 */
function within({ u, v }: Plane, { right, up }: Axes, [x, y]: Point2): Point3 {
  const [a, b, c, d] = [dot(right, u), dot(right, v), dot(up, u), dot(up, v)];
  const [p, q, r] = [a * a + c * c + EDGE, a * b + c * d, b * b + d * d + EDGE];
  const determinant = p * r - q * q;
  const [s, t] = [a * x + c * y, b * x + d * y];
  const near = Math.abs(a * d - b * c);
  if (near > 0.2) {
    const exact = a * d - b * c;
    return sum(times((d * x - b * y) / exact, u), times((a * y - c * x) / exact, v));
  }
  return sum(times((r * s - q * t) / determinant, u), times((p * t - q * s) / determinant, v));
}
