/** The steering rack: both track rods moved alike, their lengths kept; toe by the rack against geometry and differences. */
import { describe, expect, it } from "vitest";
import type { Corner, CornerMotion } from "../../server/linkage/corner.js";
import { isDegenerate } from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import { distance, type Vec3 } from "../../server/maths/vec3.js";
import { expectClose, slopeOf } from "../support/approx.js";
import { CLOSED_FORM, DIFFERENCED, LINK_LENGTH } from "../support/tolerances.js";
import { wishboneGeometry } from "../support/wishbone-case.js";

function moved(by: number): Corner {
  const { trackRod } = wishboneGeometry;
  const made = hardpointCorner({ ...wishboneGeometry, trackRod: { ...trackRod, moved: by } });
  if (isDegenerate(made)) throw new Error(made.reason);
  return made;
}

function at(corner: Corner, travel: number): CornerMotion {
  const motion = corner.motion(travel);
  if ("kind" in motion) throw new Error(motion.link);
  return motion;
}

const TRAVELS = [-0.025, 0, 0.02];
const { inner, outer } = wishboneGeometry.trackRod;

describe("a corner with the rack moved", () => {
  it("not at all is the corner as it is drawn", () => {
    const drawn = hardpointCorner(wishboneGeometry);
    if (isDegenerate(drawn)) throw new Error(drawn.reason);
    for (const z of TRAVELS) expect(at(moved(0), z).wheel?.toe).toEqual(at(drawn, z).wheel?.toe);
  });

  it.each([-0.012, 0.004, 0.015])("by %f m keeps the track rod's length and the wheel's travel", (by) => {
    for (const z of TRAVELS) {
      const motion = at(moved(by), z);
      const end: Vec3 = [inner[0], inner[1] + by, inner[2]];
      expectClose(distance(motion.point("upright", outer).p, end), distance(outer, inner), 0, LINK_LENGTH);
      expect(distance(motion.point("track-rod", inner).p, end)).toBeLessThan(LINK_LENGTH);
      expect(distance(motion.point("track-rod", outer).p, motion.point("upright", outer).p)).toBeLessThan(LINK_LENGTH);
      expectClose(motion.wheel?.centre.p[2] ?? 0, wishboneGeometry.wheel.centre[2] + z, CLOSED_FORM);
      const toe = (travel: number): number => at(moved(by), travel).wheel?.toe.value ?? 0;
      expectClose(motion.wheel?.toe.d ?? 0, slopeOf(toe, z, 1e-4), DIFFERENCED, 1e-7);
      const slope = (travel: number): number => at(moved(by), travel).wheel?.toe.d ?? 0;
      expectClose(motion.wheel?.toe.dd ?? 0, slopeOf(slope, z, 1e-4), DIFFERENCED, 1e-5);
    }
  });

  it("outboard steers the front of a wheel with its arm ahead outboard: toe-out by about the rack over the arm", () => {
    const toe = (by: number): number => at(moved(by), 0).wheel?.toe.value ?? 0;
    const arm = outer[0] - wishboneGeometry.lower.outer[0];
    expect(arm).toBeGreaterThan(0);
    const byRack = slopeOf(toe, 0, 1e-4);
    expect(byRack).toBeLessThan(0);
    expectClose(byRack * arm, -1, 0.1);
  });
});
