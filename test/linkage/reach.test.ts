/** How far a corner goes, against conditions in closed form, and what is said beyond. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Corner, Unreachable } from "../../server/linkage/corner.js";
import type { HardpointGeometry, Vec2 } from "../../server/linkage/geometry.js";
import { dot, norm, scale, sub, unit, type Vec3 } from "../../server/maths/vec3.js";
import { slopeOf } from "../support/approx.js";
import { ARM, parallelogram, planarOf, reachedAt } from "../support/planar-cases.js";
import { cornerOrSkip, randomGeometry } from "../support/random-corner.js";
import { LIMIT } from "../support/tolerances.js";

/** Gap of a link between `p` and a circle about an axis: zero where the link just reaches the near or far side. */
function gap(p: Vec3, pivot: Vec3, axis: Vec3, end: Vec3, length: number): number {
  const foot = (q: Vec3): [number, number] => {
    const along = dot(sub(q, pivot), axis);
    return [along, norm(sub(sub(q, pivot), scale(axis, along)))];
  };
  const [along, across] = foot(p);
  const [plane, radius] = foot(end);
  const far = Math.hypot(along - plane, across + radius) - length;
  const near = Math.hypot(along - plane, across - radius) - length;
  return Math.abs(far) < Math.abs(near) ? far : near;
}

/** The gap of the link that binds, as a function of travel. */
function bindingGap(g: HardpointGeometry, corner: Corner, link: string): ((z: number) => number) | undefined {
  const { rod, rocker, upper, lower } = g;
  if (link === rod?.kind && rocker !== undefined) {
    const length = norm(sub(rod.outer, rod.inner)) + (rod.lengthen ?? 0);
    return (z) =>
      gap(reachedAt(corner, z).point(rod.on, rod.outer).p, rocker.pivot, unit(rocker.axis), rod.inner, length);
  }
  if (link !== "upper-wishbone") return undefined;
  const length = norm(sub(upper.outer, lower.outer));
  const axis = unit(sub(upper.fore, upper.aft));
  return (z) => gap(reachedAt(corner, z).point("lower-wishbone", lower.outer).p, upper.fore, axis, upper.outer, length);
}

const unreachable = (result: ReturnType<Corner["motion"]>): Unreachable => {
  if (!("kind" in result)) throw new Error(`${result.travel} m is reachable`);
  return result;
};

describe("the furthest travel", () => {
  it("can be reached, and nothing beyond it", () => {
    fc.assert(
      fc.property(randomGeometry, fc.constantFrom(-1, 1), (g, sense) => {
        const corner = cornerOrSkip(g);
        const end = unreachable(corner.motion(sense * 10));
        expect(end.travel).toBe(sense * 10);
        expect(Math.sign(end.limit)).toBe(sense);
        expect("kind" in corner.motion(end.limit)).toBe(false);
        const beyond = unreachable(corner.motion(end.limit + sense * LIMIT));
        expect(beyond).toEqual({ ...end, travel: end.limit + sense * LIMIT });
        const { bound } = corner.reach(-10, 10);
        expect(sense < 0 ? bound.low : bound.high).toEqual(end);
      }),
      { numRuns: 150 },
    );
  });

  it("is where the binding rod just reaches", () => {
    let seen = 0;
    fc.assert(
      fc.property(randomGeometry, fc.constantFrom(-1, 1), (g, sense) => {
        const corner = cornerOrSkip(g);
        const end = unreachable(corner.motion(sense * 10));
        fc.pre(end.link === g.rod?.kind);
        const open = bindingGap(g, corner, end.link);
        if (open === undefined) throw new Error("no gap to look at");
        seen++;
        // The gap's own slope turns what is left of it into travel.
        const inside = end.limit - sense * 1e-4;
        const slope = slopeOf(open, inside, 2e-5);
        expect(Math.abs(open(end.limit) / slope)).toBeLessThan(LIMIT);
      }),
      { numRuns: 100 },
    );
    expect(seen).toBeGreaterThan(20);
  });

  it("is the crest of the wheel centre's path where no link is in line", () => {
    // Level lower arm, higher and longer upper arm: the lower one is nearer to upright at the crest.
    const corner = planarOf(
      parallelogram({ upper: { inner: [0.1, 0.5], outer: [0.66, 0.45] }, wheel: { ...parallelogram().wheel } }),
    );
    const end = unreachable(corner.motion(5));
    const near = (z: number): number => reachedAt(corner, z).point("lower-wishbone", [0, 0.7, 0.15]).d[1];
    // dL/dz grows without bound towards the crest: like 1/√(limit − z).
    expect(Math.abs(near(end.limit - 1e-8) / near(end.limit - 1e-6))).toBeGreaterThan(5);
  });

  it("lies where the links of an upper wishbone in line say", () => {
    // Short upper arm: it falls in line with the upright long before the lower one is upright.
    const g = parallelogram({ upper: { inner: [0.55, 0.4], outer: [0.68, 0.44] } });
    const corner = planarOf(g);
    for (const sense of [-1, 1]) {
      const end = unreachable(corner.motion(sense * 5));
      expect(end.link).toBe("upper-wishbone");
    }
  });

  it("does not depend on the demand", () => {
    const corner = planarOf(parallelogram());
    expect(unreachable(corner.motion(3)).limit).toBe(unreachable(corner.motion(1e300)).limit);
    expect(unreachable(corner.motion(Number.POSITIVE_INFINITY)).limit).toBe(unreachable(corner.motion(3)).limit);
    expect(unreachable(corner.motion(Number.NaN)).link).toMatch(/wishbone/);
  });
});

describe("nearness to a toggle", () => {
  // Rod and rocker arm in the plane: μ is the angle between them, from the law of cosines.
  const g = parallelogram({
    rod: { kind: "push-rod", on: "lower-wishbone", outer: [0.62, 0.17], inner: [0.38, 0.46] },
    rocker: { pivot: [0.33, 0.4] },
  });
  const corner = planarOf(g);

  it("is the smallest angle between rod and rocker arm over the way", () => {
    const between = (z: number): number => {
      const m = reachedAt(corner, z);
      const inner = m.point("rocker", [0, 0.38, 0.46]).p;
      const rod = unit(sub(m.point("lower-wishbone", [0, 0.62, 0.17]).p, inner));
      const arm = unit(sub([0, 0.33, 0.4], inner));
      const angle = Math.acos(dot(rod, arm));
      return Math.min(angle, Math.PI - angle);
    };
    const reach = corner.reach(-0.06, 0.06);
    const found = reach.toggles.find(({ link }) => link === "push-rod");
    if (found === undefined) throw new Error("no push rod among the toggles");
    expect(found.angle).toBeCloseTo(between(found.travel), 9);
    for (let z = -0.06; z <= 0.06; z += 0.001) expect(between(z)).toBeGreaterThanOrEqual(found.angle - 1e-9);
    expect(reach.toggles.map(({ link }) => link)).toEqual(["lower-wishbone", "upper-wishbone", "push-rod"]);
  });

  it("is found between the ends where a link passes near its toggle and away again", () => {
    // Almost a parallelogram, its upright leaning far in and a little too long to fall in line with the upper arm.
    const longer = 1.02;
    const inner: Vec2 = [0.3 - 0.3, 0.15 + 0.2];
    const outer: Vec2 = [0.3 + ARM - 0.3 * longer, 0.15 + 0.2 * longer];
    const passing = planarOf(parallelogram({ upper: { inner, outer } }));
    const [from, to] = [-0.4, 0.3];
    const { bound, toggles } = passing.reach(from, to);
    expect(bound).toEqual({ low: undefined, high: undefined });
    const found = toggles.find(({ link }) => link === "upper-wishbone");
    if (found === undefined) throw new Error("no upper wishbone among the toggles");
    const between = (z: number): number => {
      const m = reachedAt(passing, z);
      const joint = m.point("upper-wishbone", [0, ...outer]).p;
      const upright = unit(sub(m.point("lower-wishbone", [0, 0.7, 0.15]).p, joint));
      const angle = Math.acos(Math.abs(dot(upright, unit(sub([0, ...inner], joint)))));
      return angle;
    };
    expect(found.travel).toBeGreaterThan(from + 1e-4);
    expect(found.travel).toBeLessThan(to - 1e-4);
    expect(found.angle).toBeCloseTo(between(found.travel), 7);
    for (let z = from; z <= to; z += 1e-4) expect(between(z)).toBeGreaterThan(found.angle - 1e-7);
  });

  it("falls to zero at the end of the reach", () => {
    const { bound, toggles } = corner.reach(-1, 1);
    const ends = [bound.low, bound.high].flatMap((end) => (end?.link === "push-rod" ? [end.limit] : []));
    const rod = toggles.find(({ link }) => link === "push-rod");
    expect(rod?.angle).toBeLessThan(1e-3);
    expect(ends.some((limit) => Math.abs(limit - (rod?.travel ?? 0)) < 1e-6)).toBe(true);
  });
});
