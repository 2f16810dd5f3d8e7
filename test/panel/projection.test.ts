import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { between, cameras, turned } from "../../client/panel/page/camera.js";
import { atDesign, planeAcross } from "../../client/panel/page/eye-plane.js";
import { dot, type Point3, rotated, sum } from "../../client/panel/page/geometry.js";
import { extentOf, projectionOf } from "../../client/panel/page/projection.js";
import { HELD } from "../../client/panel/page/scene.js";

const look = {
  body: HELD,
  extent: { left: -1, right: 1, bottom: 0, top: 1 },
  size: { width: 600, height: 400 },
  margin: { x: 20, y: 20 },
  zoom: 1,
  pan: [0, 0],
} as const;

const through = (camera: Parameters<typeof extentOf>[1]) => projectionOf({ ...look, camera });

describe("views", () => {
  it("shows the left wheel on the right from the front, since one looks the car in the face", () => {
    const { point } = through(cameras.front);
    expect(point([0, 0.7, 0.2])[0]).toBeGreaterThan(point([0, -0.7, 0.2])[0]);
    expect(point([0, 0, 1])[1]).toBeLessThan(point([0, 0, 0])[1]);
  });
  it("faces the car left from the side and up from above", () => {
    expect(through(cameras.side).point([1, 0, 0])[0]).toBeLessThan(through(cameras.side).point([0, 0, 0])[0]);
    const { point } = through(cameras.top);
    expect(point([1, 0, 0])[1]).toBeLessThan(point([0, 0, 0])[1]);
    expect(point([0, 1, 0])[0]).toBeLessThan(point([0, 0, 0])[0]);
  });
  it("fits what it is given between its margins", () => {
    const points: readonly Point3[] = [
      [0, -0.8, 0],
      [0, 0.8, 0.5],
      [-0.2, 0, 0.9],
    ];
    const projection = projectionOf({ ...look, camera: cameras.front, extent: extentOf(points, cameras.front) });
    for (const [x, y] of points.map(projection.point)) {
      expect(x).toBeGreaterThanOrEqual(20 - 1e-9);
      expect(x).toBeLessThanOrEqual(580 + 1e-9);
      expect(y).toBeGreaterThanOrEqual(20 - 1e-9);
      expect(y).toBeLessThanOrEqual(380 + 1e-9);
    }
  });
  it("glides the shorter way round and arrives", () => {
    expect(between(cameras.front, cameras.top, 1).azimuth).toBeCloseTo(Math.PI, 12);
    expect(turned(cameras.free, 0, 9).elevation).toBe(Math.PI / 2);
  });
});

const angle = fc.double({ min: -3, max: 3, noNaN: true });
const axis = fc
  .tuple(angle, angle, angle)
  .filter(([x, y, z]) => Math.hypot(x, y, z) > 0.1)
  .map(([x, y, z]): Point3 => {
    const size = Math.hypot(x, y, z);
    return [x / size, y / size, z / size];
  });

describe("an eye under the pointer", () => {
  it("moves in its rocker's plane, and by just what the pointer moved where the plane faces the viewer", () => {
    fc.assert(
      fc.property(axis, angle, angle, fc.integer({ min: -50, max: 50 }), (normal, azimuth, elevation, dx) => {
        const projection = through({ azimuth, elevation });
        const plane = planeAcross(normal);
        const shift = projection.within(plane, [dx, 17]);
        expect(dot(shift, normal)).toBeCloseTo(0, 9);
        const [from, to] = [projection.point([0, 0, 0]), projection.point(shift)];
        const facing = Math.abs(projection.depth(normal));
        if (facing > 0.25) {
          expect(to[0] - from[0]).toBeCloseTo(dx, 6);
          expect(to[1] - from[1]).toBeCloseTo(17, 6);
        } else expect(Math.hypot(...shift) * projection.scale).toBeLessThan(5 * Math.hypot(dx, 17));
      }),
    );
  });
  it("is turned back to design by the rocker's angle", () => {
    fc.assert(
      fc.property(axis, angle, (normal, turn) => {
        const { u, v } = planeAcross(normal);
        const posed = rotated(sum(u, v), normal, turn);
        const back = atDesign([0, 0, 0], posed, normal, turn);
        expect(back[0]).toBeCloseTo(u[0] + v[0], 9);
        expect(back[2]).toBeCloseTo(u[2] + v[2], 9);
      }),
    );
  });
});
