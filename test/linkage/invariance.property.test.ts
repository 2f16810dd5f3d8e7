/** The same mechanism described otherwise gives the same motion: origin, units, mirror image, sense and place of axes. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type HardpointGeometry, isDegenerate } from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import { add, mirror, scale, sub, type Vec3 } from "../../server/maths/vec3.js";
import { cornerOrSkip, isClearOfToggles, motionOrSkip, randomGeometry, smallTravel } from "../support/random-corner.js";
import { INVARIANCE } from "../support/tolerances.js";

/** A geometry with every point mapped, directions by their own map. */
function mapped(g: HardpointGeometry, point: (p: Vec3) => Vec3, direction: (v: Vec3) => Vec3, size = 1) {
  const wishbone = (w: HardpointGeometry["lower"]) => ({
    fore: point(w.fore),
    aft: point(w.aft),
    outer: point(w.outer),
  });
  return {
    lower: wishbone(g.lower),
    upper: wishbone(g.upper),
    trackRod: { inner: point(g.trackRod.inner), outer: point(g.trackRod.outer) },
    rod: g.rod && {
      ...g.rod,
      outer: point(g.rod.outer),
      inner: point(g.rod.inner),
      lengthen: size * (g.rod.lengthen ?? 0),
    },
    rocker: g.rocker && { pivot: point(g.rocker.pivot), axis: direction(g.rocker.axis) },
    wheel: { ...g.wheel, centre: point(g.wheel.centre), loadedRadius: size * g.wheel.loadedRadius },
  };
}

const close = (a: number, b: number): void => {
  expect(Math.abs(a - b)).toBeLessThan(INVARIANCE * Math.max(1, Math.abs(a), Math.abs(b)));
};

const closeVec = (a: Vec3, b: Vec3): void => {
  for (const i of [0, 1, 2] as const) close(a[i], b[i]);
};

/** Runs both and hands out their motions at a travel clear of toggles. */
function both(g: HardpointGeometry, other: HardpointGeometry, travel: number, size = 1) {
  const corner = cornerOrSkip(g);
  fc.pre(isClearOfToggles(corner, travel, 0.2));
  return [motionOrSkip(corner, travel), motionOrSkip(cornerOrSkip(other), travel * size)] as const;
}

const same = (v: Vec3): Vec3 => v;
const PROBE: Vec3 = [0.05, 0.55, 0.3];

describe("the same corner", () => {
  it("with the origin elsewhere", () => {
    const shift = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -5, max: 5, noNaN: true })));
    fc.assert(
      fc.property(randomGeometry, smallTravel, shift, (g, travel, by) => {
        const move: Vec3 = [by[0] ?? 0, by[1] ?? 0, by[2] ?? 0];
        const [a, b] = both(
          g,
          mapped(g, (p) => add(p, move), same),
          travel,
        );
        close(a.rocker?.value ?? 0, b.rocker?.value ?? 1);
        close(a.rocker?.d ?? 0, b.rocker?.d ?? 1);
        close(a.rocker?.dd ?? 0, b.rocker?.dd ?? 1);
        const [p, q] = [a.point("rocker", PROBE), b.point("rocker", add(PROBE, move))];
        closeVec(p.p, sub(q.p, move));
        closeVec(p.dd, q.dd);
        close(a.wheel?.toe.dd ?? 0, b.wheel?.toe.dd ?? 1);
      }),
      { numRuns: 100 },
    );
  });

  it("in other units", () => {
    fc.assert(
      fc.property(randomGeometry, smallTravel, fc.constantFrom(1000, 1 / 0.0254, 1e-3), (g, travel, size) => {
        const [a, b] = both(
          g,
          mapped(g, (p) => scale(p, size), same, size),
          travel,
          size,
        );
        close(a.rocker?.value ?? 0, b.rocker?.value ?? 1);
        close(a.rocker?.d ?? 0, (b.rocker?.d ?? 1) * size);
        close(a.rocker?.dd ?? 0, (b.rocker?.dd ?? 1) * size * size);
        closeVec(a.wheel?.contact.d ?? PROBE, b.wheel?.contact.d ?? [0, 0, 0]);
        closeVec(a.wheel?.contact.dd ?? PROBE, scale(b.wheel?.contact.dd ?? [0, 0, 0], size));
      }),
      { numRuns: 100 },
    );
  });

  it("with every axis drawn the other way round and the rocker's pivot elsewhere on it", () => {
    fc.assert(
      fc.property(randomGeometry, smallTravel, (g, travel) => {
        const swap = (w: HardpointGeometry["lower"]) => ({ fore: w.aft, aft: w.fore, outer: w.outer });
        const rocker = g.rocker && {
          pivot: add(g.rocker.pivot, scale(g.rocker.axis, 1.7)),
          axis: scale(g.rocker.axis, -3),
        };
        const [a, b] = both(g, { ...g, lower: swap(g.lower), upper: swap(g.upper), rocker }, travel);
        close(a.rocker?.value ?? 0, b.rocker?.value ?? 1);
        close(a.rocker?.dd ?? 0, b.rocker?.dd ?? 1);
        closeVec(a.point("rocker", PROBE).dd, b.point("rocker", PROBE).dd);
        closeVec(a.point("lower-wishbone", PROBE).d, b.point("lower-wishbone", PROBE).d);
      }),
      { numRuns: 100 },
    );
  });

  it("seen in a mirror moves as the mirror image, angles by bump unchanged", () => {
    fc.assert(
      fc.property(randomGeometry, smallTravel, (g, travel) => {
        // As if a right-hand corner were solved unmirrored: points and rocker follow, camber and toe would change sign.
        const [a, b] = both(g, mapped(g, mirror, mirror), travel);
        close(a.rocker?.value ?? 0, b.rocker?.value ?? 1);
        close(a.rocker?.dd ?? 0, b.rocker?.dd ?? 1);
        const [p, q] = [a.point("upright", PROBE), b.point("upright", mirror(PROBE))];
        closeVec(p.p, mirror(q.p));
        closeVec(p.d, mirror(q.d));
        closeVec(p.dd, mirror(q.dd));
      }),
      { numRuns: 100 },
    );
  });
});

describe("degenerate corners", () => {
  it("stay degenerate under a shift and a change of units", () => {
    fc.assert(
      fc.property(randomGeometry, fc.constantFrom(1, 1000), (g, size) => {
        const bad = { ...g, upper: { ...g.upper, aft: g.upper.fore } };
        const moved = mapped(bad, (p) => scale(add(p, [0.3, -0.2, 0.1]), size), same, size);
        for (const geometry of [bad, moved]) {
          const result = hardpointCorner(geometry);
          expect(isDegenerate(result) && result.part).toBe("upper-wishbone");
        }
      }),
      { numRuns: 20 },
    );
  });
});
