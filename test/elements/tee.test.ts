/**
 * T-shaped anti-roll bars and drop links that are set longer than drawn: derivatives by differences, links that keep
 * their lengths as plain rotation matrices place them, closed forms, mirror images.
 */
import fc from "fast-check";
import { matrix, multiply, norm, subtract, add as sum } from "mathjs";
import { describe, expect, it } from "vitest";
import { barTwist } from "../../server/elements/connections/bar.js";
import { teeTwist, type TeePoints } from "../../server/elements/connections/tee.js";
import type { Connection, Deflection } from "../../server/elements/element.js";
import type { Corner } from "../../server/linkage/corner.js";
import { leverOf } from "../../server/linkage/lever.js";
import type { Vec3 } from "../../server/maths/vec3.js";
import { expectClose, slopeOf } from "../support/approx.js";
import { syntheticCorner } from "../support/synthetic-corner.js";
import { DIFFERENCED, IDENTITY, LINK_LENGTH } from "../support/tolerances.js";

const corner = syntheticCorner();
const eye: Vec3 = [0.01, 0.17, 0.52];
const points: TeePoints = {
  foot: [-0.2, 0, 0.3],
  head: [-0.19, 0, 0.5],
  left: { end: [-0.18, 0.12, 0.51], body: "rocker", far: eye, longer: 0 },
  right: { end: [-0.18, 0.12, 0.51], body: "rocker", far: eye, longer: 0 },
};

function motionOf(left: number, right: number, on: Corner = corner) {
  const [l, r] = [on.motion(left), on.motion(right)];
  if ("kind" in l || "kind" in r) throw new Error("unreachable");
  return { left: l, right: r };
}

function teeOf(change: Partial<TeePoints> = {}): Connection {
  const made = teeTwist({ ...points, ...change }, "hardpoints", motionOf(0, 0));
  if (typeof made === "string") throw new Error(made);
  return made;
}

function at(connection: Connection, left: number, right: number): Deflection {
  const d = connection.deflection(motionOf(left, right));
  if ("kind" in d) throw new Error(d.reason);
  return d;
}

const link = points.left;
if (link === undefined) throw new Error("no link");
const uneven = teeOf({ left: { ...link, longer: 0.003 } });
const travel = fc.double({ min: -0.02, max: 0.02, noNaN: true });

describe.each([
  ["a T", teeOf()],
  ["a T with one link longer", uneven],
])("%s", (_, tee) => {
  it("has the gradient and the Hessian of its twist", () => {
    fc.assert(
      fc.property(travel, travel, (l, r) => {
        const d = at(tee, l, r);
        const h = 2e-5;
        const close = (value: number, f: (x: number) => number, x: number, scale: number): void =>
          expectClose(slopeOf(f, x, h), value, DIFFERENCED, DIFFERENCED * scale);
        close(d.dL, (x) => at(tee, x, r).s, l, 10);
        close(d.dR, (x) => at(tee, l, x).s, r, 10);
        close(d.dLL, (x) => at(tee, x, r).dL, l, 200);
        close(d.dLR, (x) => at(tee, l, x).dL, r, 200);
        close(d.dRR, (x) => at(tee, l, x).dR, r, 200);
      }),
      { numRuns: 60 },
    );
  });
});

describe("a T-shaped bar", () => {
  it("is not twisted by wheels that move alike, and turns the other way when they change places", () => {
    const tee = teeOf();
    fc.assert(
      fc.property(travel, travel, (l, r) => {
        expectClose(at(tee, l, l).s, 0, 0, 1e-12);
        expectClose(at(tee, r, l).s, -at(tee, l, r).s, IDENTITY, 1e-12);
        expectClose(at(tee, r, l).dL, -at(tee, l, r).dR, IDENTITY, 1e-10);
      }),
    );
    expect(at(tee, 0, 0).dL).toBeGreaterThan(0);
  });

  it("keeps its links' lengths where plain rotation matrices put its ends", () => {
    const tee = teeOf();
    fc.assert(
      fc.property(travel, travel, (l, r) => {
        const gamma = at(tee, l, r).s * SENSE;
        const beta = swingFor(gamma, l, r);
        const far = motionOf(l, r);
        const drawn = lengthAt(0, 0, [...motionOf(0, 0).left.point("rocker", eye).p], 1);
        const [p, q] = [far.left.point("rocker", eye).p, far.right.point("rocker", eye).p];
        expectClose(lengthAt(beta, gamma, [...p], 1), drawn, 0, 100 * LINK_LENGTH);
        expectClose(lengthAt(beta, gamma, [q[0], -q[1], q[2]], -1), drawn, 0, 100 * LINK_LENGTH);
      }),
      { numRuns: 40 },
    );
  });

  it("turns by the difference of what its links are pulled over its width, for small motions", () => {
    // Links fore and aft at the height of the head; eyes that move forward by 0.9 of the travel.
    const flat = syntheticCorner({ pivot: [0.1, 0.12, 0.41], axis: [0, 1, 0], rocker: [9, 0, 0] });
    const square = {
      foot: [-0.2, 0, 0.31] as Vec3,
      head: [-0.2, 0, 0.51] as Vec3,
      left: { end: [-0.2, 0.12, 0.51] as Vec3, body: "rocker" as const, far: [0.1, 0.12, 0.51] as Vec3, longer: 0 },
    };
    const made = teeTwist({ ...square, right: square.left }, "hardpoints", motionOf(0, 0, flat));
    if (typeof made === "string") throw new Error(made);
    const d = made.deflection(motionOf(0, 0, flat));
    if ("kind" in d) throw new Error(d.reason);
    expectClose(d.dL, 0.9 / (2 * 0.12), IDENTITY);
    expectClose(d.dR, -0.9 / (2 * 0.12), IDENTITY);
    expectClose(made.tee?.arm ?? 0, 0.12, IDENTITY);
    expectClose(made.tee?.linkArm ?? 0, 0.12, IDENTITY);
  });

  it("swings freely with a link off, and says what it cannot be", () => {
    expect(teeOf({ right: undefined }).idle).toBe("its drop link is off on the right side");
    expect(at(teeOf({ right: undefined }), 0.01, -0.01).s).toBe(0);
    const wrong = (change: Partial<TeePoints>) => teeTwist({ ...points, ...change }, "hardpoints", motionOf(0, 0));
    expect(wrong({ head: points.foot })).toBe("no-stem");
    const onStem = { ...link, end: [-0.19, 0, 0.5] as Vec3 };
    expect(wrong({ left: onStem, right: onStem })).toBe("no-arm");
    expect(wrong({ left: { ...link, longer: -0.4 } })).toBe("no-hold");
  });
});

/** The sense about the stem, upwards, in which the left wheel's bump turns this T. */
const SENSE = 1;

function placed(beta: number, gamma: number, side: 1 | -1): number[] {
  const [fx, , fz] = points.foot;
  const axis = [0.01, 0, 0.2].map((x) => x / Math.hypot(0.01, 0.2));
  const [ax = 0, ay = 0, az = 0] = axis;
  const [c, s] = [Math.cos(gamma), Math.sin(gamma)];
  const stem = matrix([
    [c + ax * ax * (1 - c), ax * ay * (1 - c) - az * s, ax * az * (1 - c) + ay * s],
    [ay * ax * (1 - c) + az * s, c + ay * ay * (1 - c), ay * az * (1 - c) - ax * s],
    [az * ax * (1 - c) - ay * s, az * ay * (1 - c) + ax * s, c + az * az * (1 - c)],
  ]);
  const swing = matrix([
    [Math.cos(beta), 0, Math.sin(beta)],
    [0, 1, 0],
    [-Math.sin(beta), 0, Math.cos(beta)],
  ]);
  const from = matrix([-0.18 - fx, side * 0.12, 0.51 - fz]);
  return sum(multiply(swing, multiply(stem, from)), matrix([...points.foot])).toArray() as number[];
}

const lengthAt = (beta: number, gamma: number, far: number[], side: 1 | -1): number =>
  Number(norm(subtract(placed(beta, gamma, side), far)));

/** The swing that keeps the left link's length at a twist, by halving. */
function swingFor(gamma: number, left: number, right: number): number {
  const p = [...motionOf(left, right).left.point("rocker", eye).p];
  const drawn = lengthAt(0, 0, [...eye], 1);
  let [low, high] = [-0.6, 0.6];
  const off = (beta: number): number => lengthAt(beta, gamma, p, 1) - drawn;
  const rising = off(high) > off(low);
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (off(middle) > 0 === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

describe("a bar whose drop links are not as long as drawn", () => {
  const lever = (longer: number) => {
    const made = leverOf(
      { pivot: [-0.04, 0.23, 0.25], axis: [0, 1, 0], end: [0.03, 0.23, 0.25] },
      motionOf(0, 0).left.point("rocker", [0.01, 0.248, 0.42]),
      longer,
    );
    if ("kind" in made) throw new Error(made.reason);
    return { lever: made, body: "rocker" as const, linkEnd: [0.01, 0.248, 0.42] as Vec3 };
  };
  const barOf = (left: number, right: number) => barTwist({ left: lever(left), right: lever(right) }, "hardpoints");

  it("is twisted at design by the difference over the moment arm, the same on both sides cancelling", () => {
    const { arm } = lever(0).lever;
    const along = Math.hypot(0.02, 0.018, 0.17);
    // A link that runs up from the lever's end: its moment arm about the axis is the lever's share square to it.
    const square = (0.07 * 0.17) / along;
    expectClose(Math.abs(at(barOf(1e-5, 0), 0, 0).s), 1e-5 / square, 1e-3);
    expectClose(at(barOf(2e-3, 2e-3), 0, 0).s, 0, 0, 1e-14);
    expectClose(at(barOf(0, 2e-3), 0, 0).s, -at(barOf(2e-3, 0), 0, 0).s, IDENTITY);
    expect(arm.radius).toBeCloseTo(0.07, 12);
  });

  it("has the slope of its twist wherever it stands", () => {
    const bar = barOf(0.004, -0.002);
    fc.assert(
      fc.property(travel, travel, (l, r) => {
        expectClose(
          slopeOf((x) => at(bar, x, r).s, l, 2e-5),
          at(bar, l, r).dL,
          DIFFERENCED,
          1e-5,
        );
      }),
    );
  });

  it("does not reach where the link is set too short", () => {
    expect(() => lever(-0.08)).toThrow("in-line");
  });
});
