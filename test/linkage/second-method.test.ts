/** The closed form against a general numerical solution of the plain constraint equations. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { distance, type Vec3 } from "../../server/maths/vec3.js";
import { plainPosition } from "../support/plain-constraints.js";
import { cornerOrSkip, isClearOfToggles, motionOrSkip, randomGeometry, smallTravel } from "../support/random-corner.js";
import { SECOND_METHOD } from "../support/tolerances.js";
import { metres, wishbone, wishboneGeometry } from "../support/wishbone-case.js";

const expectNear = (a: Vec3, b: Vec3): void => {
  expect(distance(a, b)).toBeLessThan(SECOND_METHOD);
};

describe("a plain numerical solution", () => {
  it.each(wishbone.corner_table)("is itself right on the check case at $travel_mm mm", (row) => {
    const plain = plainPosition(wishboneGeometry, row.travel_mm / 1000);
    if (plain === undefined) throw new Error("did not settle");
    expectNear(plain.centre, metres(row.WC));
    expectNear(plain.inner, metres(row.PRI));
  });

  it("agrees on random corners, rocker included", () => {
    fc.assert(
      fc.property(randomGeometry, smallTravel, (g, travel) => {
        const corner = cornerOrSkip(g);
        const motion = motionOrSkip(corner, travel);
        fc.pre(isClearOfToggles(corner, travel, 0.1));
        const plain = plainPosition(g, travel);
        if (plain === undefined) throw new Error("the plain method did not settle clear of any toggle");
        expectNear(motion.point("lower-wishbone", g.lower.outer).p, plain.lower);
        expectNear(motion.point("upper-wishbone", g.upper.outer).p, plain.upper);
        expectNear(motion.point("upright", g.trackRod.outer).p, plain.track);
        expectNear(motion.point("upright", g.wheel.centre).p, plain.centre);
        expectNear(motion.point("rocker", g.rod?.inner ?? [0, 0, 0]).p, plain.inner);
      }),
      { numRuns: 60 },
    );
  });
});
