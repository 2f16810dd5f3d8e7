/** The planar corner: closed form of a parallelogram, steer held exactly, and the hardpoint corner that it stands for. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type HardpointGeometry,
  isDegenerate,
  type PlanarGeometry,
  type RodCarrier,
} from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import { asHardpoints, planarCorner } from "../../server/linkage/planar.js";
import { ARM, parallelogram, planarOf, reachedAt, UPRIGHT } from "../support/planar-cases.js";
import { isClearOfToggles } from "../support/random-corner.js";
import { INVARIANCE, LINK_LENGTH } from "../support/tolerances.js";

describe("a parallelogram", () => {
  const corner = planarOf(parallelogram());

  it.each([-0.1, -0.03, 0, 0.02, 0.15])("carries the wheel on a circle without turning it, travel %f m", (z) => {
    const wheel = reachedAt(corner, z).wheel;
    const cos = Math.sqrt(1 - (z / ARM) ** 2);
    // y = y₀ − ARM (1 − cos θ), z = ARM sin θ: dy/dz = −tan θ, d²y/dz² = −1/(ARM cos³ θ).
    expect(wheel?.centre.p[1]).toBeCloseTo(0.75 - ARM * (1 - cos), 13);
    expect(wheel?.centre.d[1]).toBeCloseTo(-z / ARM / cos, 12);
    expect(wheel?.centre.dd[1]).toBeCloseTo(-1 / (ARM * cos ** 3), 10);
    expect(wheel?.camber.value).toBeCloseTo(-0.03, 14);
    expect(wheel?.camber.d).toBeCloseTo(0, 12);
    expect(wheel?.camber.dd).toBeCloseTo(0, 10);
  });

  it("ends where the arms stand upright, and where they fall in line with the upright", () => {
    const { bound } = corner.reach(-1, 1);
    expect(bound.high?.link).toMatch(/wishbone/);
    expect(bound.high?.limit).toBeCloseTo(ARM, 9);
    expect(bound.low?.link).toBe("upper-wishbone");
    // A parallelogram touches its toggle instead of crossing it: the double root costs half the digits.
    expect(bound.low?.limit).toBeCloseTo((-ARM * UPRIGHT[1]) / Math.hypot(...UPRIGHT), 7);
  });
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point = (y: number, z: number, most = 0.03) => fc.tuple(number(y - most, y + most), number(z - most, z + most));

const randomPlanar: fc.Arbitrary<PlanarGeometry> = fc
  .record({
    lowerInner: point(0.25, 0.15),
    lowerOuter: point(0.7, 0.15),
    upperInner: point(0.3, 0.38),
    upperOuter: point(0.68, 0.42),
    on: fc.constantFrom<RodCarrier>("lower-wishbone", "upper-wishbone", "upright"),
    rodOuter: point(0.6, 0.2),
    rodInner: point(0.33, 0.52),
    pivot: point(0.28, 0.47, 0.01),
    centre: fc.tuple(number(-1, 1), number(0.72, 0.8), number(0.25, 0.32)),
  })
  .map((r) => ({
    lower: { inner: r.lowerInner, outer: r.lowerOuter },
    upper: { inner: r.upperInner, outer: r.upperOuter },
    rod: { kind: "push-rod", on: r.on, outer: r.rodOuter, inner: r.rodInner },
    rocker: { pivot: r.pivot },
    wheel: { centre: r.centre, camber: -0.02, toe: 0.003, loadedRadius: 0.3 },
  }));

describe("any planar corner", () => {
  it("holds its toe to the last bit and moves nothing along x", () => {
    fc.assert(
      fc.property(randomPlanar, number(-0.05, 0.05), (g, travel) => {
        const corner = planarCorner(g);
        fc.pre(!isDegenerate(corner));
        const motion = isDegenerate(corner) ? undefined : corner.motion(travel);
        fc.pre(motion !== undefined && !("kind" in motion));
        if (motion === undefined || "kind" in motion) return;
        expect(motion.wheel?.toe).toEqual({ value: 0.003, d: 0, dd: 0 });
        expect(motion.wheel?.caster).toBeUndefined();
        for (const body of ["lower-wishbone", "upper-wishbone", "upright", "rocker"] as const) {
          const p = motion.point(body, [0.17, 0.6, 0.3]);
          expect(p.p[0]).toBeCloseTo(0.17, 14);
          expect(Math.abs(p.d[0]) + Math.abs(p.dd[0])).toBeLessThan(LINK_LENGTH);
        }
      }),
      { numRuns: 200 },
    );
  });

  it("moves as the hardpoint corner whose track rod runs beside the lower wishbone", () => {
    fc.assert(
      fc.property(randomPlanar, number(-0.03, 0.03), (g, travel) => {
        const flat = planarCorner(g);
        const full = hardpointCorner(asHardpoints(g) satisfies HardpointGeometry);
        fc.pre(!isDegenerate(flat) && !isDegenerate(full));
        if (isDegenerate(flat) || isDegenerate(full)) return;
        fc.pre(isClearOfToggles(full, travel, 0.2));
        const [a, b] = [reachedAt(flat, travel), reachedAt(full, travel)];
        const close = (x = Number.NaN, y = Number.NaN): void => {
          expect(Math.abs(x - y)).toBeLessThan(INVARIANCE * Math.max(1, Math.abs(x)));
        };
        close(a.rocker?.value, b.rocker?.value);
        close(a.rocker?.dd, b.rocker?.dd);
        close(a.wheel?.camber.value, b.wheel?.camber.value);
        close(a.wheel?.camber.dd, b.wheel?.camber.dd);
        close(a.wheel?.contact.dd[1], b.wheel?.contact.dd[1]);
      }),
      { numRuns: 150 },
    );
  });
});
