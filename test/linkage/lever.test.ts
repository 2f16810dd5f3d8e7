/** Levers on drop links: closed form, signs, derivatives, and what is said where the link does not reach. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Jet, PointMotion } from "../../server/linkage/corner.js";
import { isDegenerate } from "../../server/linkage/geometry.js";
import { type Lever, leverAngle, leverMotion, type LeverPoints, leverOf } from "../../server/linkage/lever.js";
import { fixedPoint } from "../../server/linkage/rigid-motion.js";
import { add, distance, scale, type Vec3 } from "../../server/maths/vec3.js";
import { slopeOf } from "../support/approx.js";
import { CLOSED_FORM, DIFFERENCED, DIFFERENCED_SECOND, LINK_LENGTH } from "../support/tolerances.js";

const built = (points: LeverPoints, linkEnd: PointMotion): Lever => {
  const lever = leverOf(points, linkEnd);
  if (isDegenerate(lever)) throw new Error(`${lever.part} ${lever.reason}`);
  return lever;
};

const reached = (lever: Lever, linkEnd: PointMotion): Jet => {
  const angle = leverAngle(lever, linkEnd);
  if ("kind" in angle) throw new Error(`short by ${angle.gap} m`);
  return angle;
};

/** A point that rises from `p` with travel z. */
const rising = (p: Vec3, z = 0): PointMotion => ({ p: add(p, [0, 0, z]), d: [0, 0, 1], dd: [0, 0, 0] });

describe("a lever on a drop link of the parallelogram", () => {
  // Lever and the line from link end to its guide form a parallelogram if the link end moves on the same circle.
  const RADIUS = 0.1;
  const points: LeverPoints = { pivot: [0, 0.3, 0.4], axis: [0, 1, 0], end: [RADIUS, 0.3, 0.4] };
  const onCircle = (angle: number): PointMotion => ({
    p: [RADIUS * Math.cos(angle), 0.3, 0.6 + RADIUS * Math.sin(angle)],
    d: [-RADIUS * Math.sin(angle), 0, RADIUS * Math.cos(angle)],
    dd: [-RADIUS * Math.cos(angle), 0, -RADIUS * Math.sin(angle)],
  });
  const lever = built(points, onCircle(0));

  it.each([-0.7, -0.2, 0, 0.3, 0.9])("turns as the link end does, %f rad", (angle) => {
    const jet = reached(lever, onCircle(angle));
    expect(Math.abs(jet.value - angle)).toBeLessThan(CLOSED_FORM);
    expect(Math.abs(jet.d - 1)).toBeLessThan(CLOSED_FORM);
    expect(Math.abs(jet.dd)).toBeLessThan(CLOSED_FORM);
  });

  it("turns positively with bump whatever the sense and length of its axis", () => {
    for (const axis of [
      [0, 1, 0],
      [0, -1, 0],
      [0, 0.02, 0],
    ] as const) {
      expect(reached(built({ ...points, axis }, onCircle(0)), onCircle(0.3)).value).toBeCloseTo(0.3, 12);
    }
  });
});

describe("any lever", () => {
  const number = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
  const near = (p: Vec3, most: number): fc.Arbitrary<Vec3> =>
    fc.tuple(number(most), number(most), number(most)).map((by) => add(p, by));
  const lever = fc.record({
    pivot: near([0, 0.3, 0.4], 0.05),
    axis: near([0, 1, 0], 0.4),
    end: near([0.15, 0.3, 0.4], 0.05),
    link: near([0.15, 0.33, 0.65], 0.05),
    along: near([0, 0.2, 1], 0.4),
    bend: near([0, 0, 0], 2),
  });

  it("keeps its link's length and has true derivatives", () => {
    fc.assert(
      fc.property(lever, number(0.05), (l, travel) => {
        const linkEnd = (z: number): PointMotion => ({
          p: add(l.link, add(scale(l.along, z), scale(l.bend, z * z))),
          d: add(l.along, scale(l.bend, 2 * z)),
          dd: scale(l.bend, 2),
        });
        const made = leverOf(l, linkEnd(0));
        fc.pre(!isDegenerate(made));
        if (isDegenerate(made)) return;
        const here = leverMotion(made, linkEnd(travel));
        fc.pre(!("kind" in here) && here.transmission > 0.4);
        if ("kind" in here) return;
        expect(Math.abs(distance(here.end.p, linkEnd(travel).p) - distance(l.end, l.link))).toBeLessThan(LINK_LENGTH);
        const step = 1e-4;
        const jet = (z: number): Jet => reached(made, linkEnd(z));
        const scaleOf = (x: number): number => Math.max(1, Math.abs(x));
        const { d, dd } = here.angle;
        expect(Math.abs(d - slopeOf((z) => jet(z).value, travel, step))).toBeLessThan(DIFFERENCED * scaleOf(d));
        expect(Math.abs(dd - slopeOf((z) => jet(z).d, travel, step))).toBeLessThan(DIFFERENCED_SECOND * scaleOf(dd));
        expect(jet(0).value).toBeCloseTo(0, 12);
        expect(jet(0).d).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 200 },
    );
  });
});

describe("a drop link that does not reach", () => {
  const points: LeverPoints = { pivot: [0, 0.3, 0.4], axis: [0, 1, 0], end: [0.1, 0.3, 0.4] };
  const lever = built(points, rising([0.1, 0.3, 0.6]));

  it("is said, with the length that it lacks", () => {
    // Straight above the pivot the link is 0.2 long and reaches from 0.1 to 0.3.
    expect(leverAngle(lever, fixedPoint([0, 0.3, 0.4 + 0.3 + 0.017]))).toEqual({
      kind: "link-binds",
      link: "drop-link",
      gap: expect.closeTo(0.017, 12),
    });
    expect(leverAngle(lever, fixedPoint([0, 0.3, 0.4 + 0.1 - 0.02]))).toEqual({
      kind: "link-binds",
      link: "drop-link",
      gap: expect.closeTo(0.02, 12),
    });
    expect("kind" in leverAngle(lever, fixedPoint([0, 0.3, 0.4 + 0.3 - 1e-6]))).toBe(false);
  });

  it("comes near to its toggle before", () => {
    const motion = leverMotion(lever, rising([0, 0.3, 0.4 + 0.2999]));
    expect("kind" in motion ? Number.NaN : motion.transmission).toBeLessThan(0.06);
    const clear = leverMotion(lever, rising([0.1, 0.3, 0.6]));
    expect("kind" in clear ? Number.NaN : clear.transmission).toBeCloseTo(Math.PI / 2, 9);
  });
});

describe("a degenerate lever", () => {
  const points: LeverPoints = { pivot: [0, 0.3, 0.4], axis: [0, 1, 0], end: [0.1, 0.3, 0.4] };
  const link = rising([0.1, 0.3, 0.6]);

  it.each([
    ["axis of no length", { ...points, axis: [0, 0, 0] as Vec3 }, link, "lever", "no-axis"],
    ["end on the axis", { ...points, end: [0, 0.5, 0.4] as Vec3 }, link, "lever", "on-axis"],
    ["link of no length", points, rising([0.1, 0.3, 0.4]), "drop-link", "coincident"],
    ["link in line with the lever", points, rising([0.3, 0.3, 0.4]), "drop-link", "in-line"],
    ["link parallel to the axis", points, rising([0.1, 0.5, 0.4]), "drop-link", "in-line"],
    ["point that is no number", { ...points, end: [Number.NaN, 0, 0] as Vec3 }, link, "lever", "not-finite"],
    ["endless point", points, rising([Number.POSITIVE_INFINITY, 0, 0]), "lever", "not-finite"],
  ] as const)("%s", (_, geometry, linkEnd, part, reason) => {
    expect(leverOf(geometry, linkEnd)).toEqual({ kind: "degenerate", part, reason });
  });
});
