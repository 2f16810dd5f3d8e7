/** What a mechanism of rigid bodies owes, whatever its hardpoints: fixed lengths, true derivatives, one branch. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Body, CornerMotion, Jet, PointMotion } from "../../server/linkage/corner.js";
import type { HardpointGeometry } from "../../server/linkage/geometry.js";
import { distance, type Vec3 } from "../../server/maths/vec3.js";
import { slopeOf } from "../support/approx.js";
import { cornerOrSkip, isClearOfToggles, motionOrSkip, randomGeometry, smallTravel } from "../support/random-corner.js";
import { CLEAR_OF_LIMITS, DIFFERENCED, DIFFERENCED_SECOND, LINK_LENGTH, NEXT_TO_LIMIT } from "../support/tolerances.js";

const BODIES: readonly Body[] = ["lower-wishbone", "upper-wishbone", "upright", "track-rod", "rocker"];

/** A point well off every joint. */
const PROBE: Vec3 = [0.07, 0.51, 0.29];

const expectRelative = (actual: number, expected: number, tolerance: number): void => {
  expect(Math.abs(actual - expected)).toBeLessThan(tolerance * Math.max(1, Math.abs(actual), Math.abs(expected)));
};

const reached = (motion: ReturnType<ReturnType<typeof cornerOrSkip>["motion"]>): CornerMotion => {
  if ("kind" in motion) throw new Error(`out of reach at ${motion.travel}`);
  return motion;
};

describe("links keep their lengths", () => {
  it("at every reachable travel", () => {
    fc.assert(
      fc.property(randomGeometry, fc.double({ min: -0.2, max: 0.2, noNaN: true }), (g, travel) => {
        const corner = cornerOrSkip(g);
        const m = motionOrSkip(corner, travel);
        const lower = m.point("lower-wishbone", g.lower.outer).p;
        const upper = m.point("upper-wishbone", g.upper.outer).p;
        const track = m.point("upright", g.trackRod.outer).p;
        const rod = g.rod;
        const pairs: [Vec3, Vec3, number][] = [
          [lower, g.lower.fore, distance(g.lower.outer, g.lower.fore)],
          [lower, g.lower.aft, distance(g.lower.outer, g.lower.aft)],
          [upper, g.upper.fore, distance(g.upper.outer, g.upper.fore)],
          [upper, g.upper.aft, distance(g.upper.outer, g.upper.aft)],
          [lower, upper, distance(g.lower.outer, g.upper.outer)],
          [track, g.trackRod.inner, distance(g.trackRod.outer, g.trackRod.inner)],
          [track, lower, distance(g.trackRod.outer, g.lower.outer)],
          [track, upper, distance(g.trackRod.outer, g.upper.outer)],
          [m.point("upright", g.lower.outer).p, lower, 0],
          [m.point("upright", g.upper.outer).p, upper, 0],
          [m.point("track-rod", g.trackRod.outer).p, track, 0],
        ];
        if (rod !== undefined) {
          const [outer, inner] = [m.point(rod.on, rod.outer).p, m.point("rocker", rod.inner).p];
          pairs.push([outer, inner, distance(rod.outer, rod.inner) + (rod.lengthen ?? 0)]);
        }
        for (const [a, b, length] of pairs) {
          // In a toggle the last digits of a position weigh more; the length is still held to a picometre.
          expect(Math.abs(distance(a, b) - length)).toBeLessThan(10 * LINK_LENGTH);
        }
        const miss = Math.abs(m.point("upright", g.wheel.centre).p[2] - g.wheel.centre[2] - travel);
        const { bound } = corner.reach(-10, 10);
        const toLimit = Math.min(travel - (bound.low?.limit ?? -10), (bound.high?.limit ?? 10) - travel);
        expect(miss).toBeLessThan(toLimit > CLEAR_OF_LIMITS ? LINK_LENGTH : NEXT_TO_LIMIT);
      }),
      { numRuns: 300 },
    );
  });
});

const clear = (g: HardpointGeometry, travel: number) => {
  const corner = cornerOrSkip(g);
  fc.pre(isClearOfToggles(corner, travel, 0.2));
  return corner;
};

describe("derivatives are those of the positions", () => {
  const STEP = 2e-4;

  it("for a point of every body", () => {
    fc.assert(
      fc.property(randomGeometry, smallTravel, fc.constantFrom(...BODIES), (g, travel, body) => {
        const corner = clear(g, travel);
        const point = (z: number): PointMotion => reached(corner.motion(z)).point(body, PROBE);
        const { d, dd } = point(travel);
        for (const i of [0, 1, 2] as const) {
          expectRelative(
            d[i],
            slopeOf((z) => point(z).p[i], travel, STEP),
            DIFFERENCED,
          );
          expectRelative(
            dd[i],
            slopeOf((z) => point(z).d[i], travel, STEP),
            DIFFERENCED_SECOND,
          );
        }
      }),
      { numRuns: 150 },
    );
  });

  it("for rocker, camber and toe", () => {
    const pick: ((m: CornerMotion) => Jet | undefined)[] = [
      (m) => m.rocker,
      (m) => m.wheel?.camber,
      (m) => m.wheel?.toe,
    ];
    fc.assert(
      fc.property(randomGeometry, smallTravel, fc.constantFrom(...pick), (g, travel, of) => {
        const corner = clear(g, travel);
        const jet = (z: number): Jet => of(reached(corner.motion(z))) ?? { value: Number.NaN, d: 0, dd: 0 };
        const { d, dd } = jet(travel);
        expectRelative(
          d,
          slopeOf((z) => jet(z).value, travel, STEP),
          DIFFERENCED,
        );
        expectRelative(
          dd,
          slopeOf((z) => jet(z).d, travel, STEP),
          DIFFERENCED_SECOND,
        );
      }),
      { numRuns: 150 },
    );
  });
});

describe("one branch", () => {
  it("starts at design, rises with bump and does not jump", () => {
    fc.assert(
      fc.property(randomGeometry, (g) => {
        const corner = cornerOrSkip({ ...g, rod: g.rod && { ...g.rod, lengthen: 0 } });
        const { bound } = corner.reach(-1, 1);
        const [low, high] = [bound.low?.limit ?? -1, bound.high?.limit ?? 1];
        const start = reached(corner.motion(0));
        expect(start.rocker?.value).toBeCloseTo(0, 12);
        expect(start.rocker?.d).toBeGreaterThanOrEqual(0);
        expect(start.wheel?.centre.d[2]).toBeCloseTo(1, 12);
        // 95 % of the range: at its very ends the speed of a point has no bound.
        const steps = 200;
        let last: CornerMotion | undefined;
        for (let i = 0; i <= steps; i++) {
          const travel = 0.95 * (low + ((high - low) * i) / steps);
          const m = reached(corner.motion(travel));
          for (const body of ["upright", "rocker"] as const) {
            const now = m.point(body, PROBE);
            const before = last?.point(body, PROBE);
            if (before === undefined) continue;
            const speed = Math.max(...now.d.map(Math.abs), ...before.d.map(Math.abs));
            // Between two steps a point may not go further than twice its greater speed would take it.
            const step = (0.95 * (high - low)) / steps;
            expect(distance(now.p, before.p)).toBeLessThan(2 * Math.sqrt(3) * speed * step + 1e-9);
          }
          last = m;
        }
      }),
      { numRuns: 60 },
    );
  });
});
