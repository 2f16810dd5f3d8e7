/** Toe and camber by the track rod's length: against the plain constraint equations with a longer rod, and in the mirror. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import type { HardpointGeometry } from "../../server/linkage/geometry.js";
import { byTrackRod, type SteeredPoints } from "../../server/linkage/track-rod.js";
import { sub, unit } from "../../server/maths/vec3.js";
import { plainPosition } from "../support/plain-constraints.js";
import { cornerOrSkip, isClearOfToggles, motionOrSkip, randomGeometry, smallTravel } from "../support/random-corner.js";
import { wishboneGeometry } from "../support/wishbone-case.js";

const pointsOf = ({ lower, upper, trackRod, wheel }: HardpointGeometry): SteeredPoints => ({
  lower: lower.outer,
  upper: upper.outer,
  inner: trackRod.inner,
  outer: trackRod.outer,
  centre: wheel.centre,
  camber: wheel.camber,
  toe: wheel.toe,
});

/** Toe and camber with the rod made longer, by the plain equations. */
function plainAngles(g: HardpointGeometry, travel: number, longer: number): readonly [toe: number, camber: number] {
  const found = plainPosition(g, travel, longer);
  if (found === undefined) throw new Error("the plain method did not settle");
  const s = unit(sub(found.spindle, found.centre));
  return [Math.atan2(s[0], s[1]), -Math.asin(s[2])];
}

const STEP = 2e-5;

function differenced(g: HardpointGeometry, travel: number): readonly [number, number] {
  const [more, less] = [plainAngles(g, travel, STEP), plainAngles(g, travel, -STEP)];
  return [(more[0] - less[0]) / (2 * STEP), (more[1] - less[1]) / (2 * STEP)];
}

describe("a longer track rod", () => {
  it("turns the wheel of the check case as the plain equations say", () => {
    const corner = hardpointCorner(wishboneGeometry);
    if ("kind" in corner) throw new Error("degenerate");
    for (const travel of [-0.02, 0, 0.02]) {
      const motion = corner.motion(travel);
      if ("kind" in motion) throw new Error("out of reach");
      const by = byTrackRod(motion, pointsOf(wishboneGeometry));
      const [toe, camber] = differenced(wishboneGeometry, travel);
      expect(by?.toe).toBeCloseTo(toe, 4);
      expect(by?.camber).toBeCloseTo(camber, 4);
    }
  });

  it("turns a wheel in front of whose axis it sits out, by about its length over its arm", () => {
    // The rod sits 100 mm in front of the steering axis: 1 mm is about 0.57 degrees of toe-out.
    const corner = hardpointCorner(wishboneGeometry);
    if ("kind" in corner) throw new Error("degenerate");
    const motion = corner.motion(0);
    const by = "kind" in motion ? undefined : byTrackRod(motion, pointsOf(wishboneGeometry));
    expect((by?.toe ?? 0) * 0.1).toBeLessThan(-0.8);
    expect((by?.toe ?? 0) * 0.1).toBeGreaterThan(-1.2);
  });

  it("agrees with them on random corners", () => {
    fc.assert(
      fc.property(randomGeometry, smallTravel, (g, travel) => {
        const corner = cornerOrSkip(g);
        const motion = motionOrSkip(corner, travel);
        fc.pre(isClearOfToggles(corner, travel, 0.2));
        const by = byTrackRod(motion, pointsOf(g));
        if (by === undefined) throw new Error("no steering");
        const [toe, camber] = differenced(g, travel);
        expect(Math.abs(by.toe - toe)).toBeLessThan(1e-4 * (1 + Math.abs(toe)));
        expect(Math.abs(by.camber - camber)).toBeLessThan(1e-4 * (1 + Math.abs(toe)));
      }),
      { numRuns: 40 },
    );
  });

  it("has no answer where the rod points through the steering axis", () => {
    const { trackRod } = wishboneGeometry;
    const corner = hardpointCorner(wishboneGeometry);
    if ("kind" in corner) throw new Error("degenerate");
    const motion = corner.motion(0);
    if ("kind" in motion) throw new Error("out of reach");
    const points = { ...pointsOf(wishboneGeometry), outer: wishboneGeometry.lower.outer, inner: trackRod.inner };
    expect(byTrackRod(motion, points)).toBeUndefined();
  });
});
