import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  allowed,
  AT_REST,
  type CornerRange,
  drawnBack,
  gain,
  moved,
  only,
  type Pose,
  travelOf,
} from "../../client/panel/page/pose.js";

const arms = { track: 1.5, wheelbase: 2.5, singleAxle: "front" } as const;
const corners: readonly CornerRange[] = (["front", "rear"] as const).flatMap((axle) =>
  (["left", "right"] as const).map((side) => ({ axle, side, arms, from: -0.03, to: 0.025 })),
);
const [frontLeft, frontRight, rearLeft] = corners as readonly [CornerRange, CornerRange, CornerRange];
const ends = { from: -1, to: 1 };

describe("wheel travels of a pose", () => {
  it("lifts the left side with positive roll, lowers the nose with positive pitch (ISO 8855)", () => {
    expect(travelOf({ ...AT_REST, roll: 0.01 }, frontLeft, arms)).toBeCloseTo(-0.0075, 12);
    expect(travelOf({ ...AT_REST, roll: 0.01 }, frontRight, arms)).toBeCloseTo(0.0075, 12);
    expect(travelOf({ ...AT_REST, pitch: 0.01 }, frontLeft, arms)).toBeCloseTo(0.0125, 12);
    expect(travelOf({ ...AT_REST, pitch: 0.01 }, rearLeft, arms)).toBeCloseTo(-0.0125, 12);
  });
  it("moves one wheel alone", () => {
    const pose = { ...AT_REST, single: 0.01 };
    expect(corners.map((corner) => travelOf(pose, corner, arms))).toEqual([0.01, 0, 0, 0]);
  });
  it("is linear in every motion", () => {
    const value = fc.double({ min: -0.1, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(fc.record({ heave: value, roll: value, pitch: value, single: value, steer: value }), (pose) => {
        for (const corner of corners) {
          const parts = (["heave", "roll", "pitch", "single"] as const).map((motion) =>
            travelOf(only(pose, motion), corner, arms),
          );
          expect(travelOf(pose, corner, arms)).toBeCloseTo(
            parts.reduce((all, one) => all + one, 0),
            12,
          );
        }
        expect(gain("steer", frontLeft, arms)).toBe(0);
      }),
    );
  });
});

describe("limits of a motion", () => {
  it("ends where the first wheel does, and says which", () => {
    const { low, high } = allowed("heave", { ...AT_REST, roll: 0.01 }, corners, ends);
    expect(high.at).toBeCloseTo(0.025 - 0.0075, 12);
    expect([high.corner?.side, high.end]).toEqual(["right", "bump"]);
    expect(low.at).toBeCloseTo(-0.03 + 0.0075, 12);
    expect([low.corner?.side, low.end]).toEqual(["left", "droop"]);
  });
  it("never lets a wheel beyond its travel, whatever is asked for", () => {
    const value = fc.double({ min: -2, max: 2, noNaN: true });
    const motion = fc.constantFrom("heave" as const, "roll" as const, "pitch" as const, "single" as const);
    fc.assert(
      fc.property(fc.array(fc.tuple(motion, value), { maxLength: 8 }), (asked) => {
        const pose = asked.reduce<Pose>((now, [which, to]) => moved(now, which, to, corners, ends).pose, AT_REST);
        for (const corner of corners) {
          const travel = travelOf(pose, corner, arms);
          expect(travel).toBeGreaterThanOrEqual(corner.from - 1e-12);
          expect(travel).toBeLessThanOrEqual(corner.to + 1e-12);
        }
      }),
    );
  });
  it("tells what stopped it only where something did", () => {
    expect(moved(AT_REST, "heave", 0.01, corners, ends).stopped).toBeUndefined();
    expect(moved(AT_REST, "heave", 0.5, corners, ends).stopped?.end).toBe("bump");
  });
  it("draws a pose back when the car can do less", () => {
    const shorter = corners.map((corner) => ({ ...corner, to: 0.01 }));
    const pose = drawnBack({ ...AT_REST, heave: 0.02, steer: 0.01 }, shorter);
    expect(pose.heave).toBeCloseTo(0.01, 12);
    expect(pose.steer).toBe(0.01);
  });
});
