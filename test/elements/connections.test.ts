/** Deflections: gradient and Hessian against differences, signs, and mirror images. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bar, lever, mirrored } from "../support/bar-of.js";
import { barTwist } from "../../server/elements/connections/bar.js";
import { between } from "../../server/elements/connections/between.js";
import { byRatios, constantRatio, tabledRatio } from "../../server/elements/connections/ratio.js";
import { tiedBars } from "../../server/elements/connections/tied-bars.js";
import { rockerToChassis, rockerToRocker } from "../../server/elements/connections/twists.js";
import type { Connection, Deflection, NoDeflection } from "../../server/elements/element.js";
import type { End } from "../../server/elements/ends.js";
import type { Corner } from "../../server/linkage/corner.js";
import type { Vec3 } from "../../server/maths/vec3.js";
import { expectClose } from "../support/approx.js";
import { syntheticCorner } from "../support/synthetic-corner.js";
import { DIFFERENCED, IDENTITY } from "../support/tolerances.js";

const corner = syntheticCorner();

function at(connection: Connection, left: number, right: number, on: Corner = corner): Deflection {
  const l = on.motion(left);
  const r = on.motion(right);
  if ("kind" in l || "kind" in r) throw new Error("unreachable");
  const d = connection.deflection({ left: l, right: r });
  if ("kind" in d) throw new Error(d.reason);
  return d;
}

function connected(made: Connection | NoDeflection | undefined): Connection {
  if (made === undefined || made.kind === "no-deflection") throw new Error("not connected");
  return made;
}

const rockerEye = (side: "left" | "right", point: Vec3): End => ({ kind: "body", side, body: "rocker", point });
const high: Vec3 = [0.01, 0.18, 0.49];
const low: Vec3 = [0.015, 0.24, 0.36];

const cases: Record<string, Connection> = {
  "eye to eye": connected(between(rockerEye("left", high), rockerEye("right", low), "hardpoints")),
  "eye to chassis, left": connected(
    between(rockerEye("left", high), { kind: "chassis", point: [0.02, 0.05, 0.3] }, "hardpoints"),
  ),
  "chassis to eye, right": connected(
    between({ kind: "chassis", point: [0.02, -0.05, 0.3] }, rockerEye("right", high), "hardpoints"),
  ),
  "both ends on one side": connected(
    between(
      rockerEye("left", high),
      { kind: "body", side: "left", body: "lower-wishbone", point: [0, 0.5, 0.14] },
      "hardpoints",
    ),
  ),
  "lever end to chassis": connected(
    between(
      { kind: "lever", side: "right", lever: lever(corner) },
      { kind: "chassis", point: [0.03, -0.1, 0.6] },
      "hardpoints",
    ),
  ),
  "rocker to chassis, left": rockerToChassis("left", "hardpoints"),
  "rocker to chassis, right": rockerToChassis("right", "hardpoints"),
  "rocker to rocker, axes across": rockerToRocker(1, "hardpoints"),
  "rocker to rocker, axes along": rockerToRocker(-1, "hardpoints"),
  "tied bars": connected(
    tiedBars(
      { pivot: [0, 0.21, 0.43], axis: [1, 0.1, -0.05], arm: [0.01, 0.19, 0.52] },
      { pivot: [0, 0.21, 0.43], axis: [1, 0.1, -0.05], arm: [0.01, 0.19, 0.52] },
      "hardpoints",
    ),
  ),
  "anti-roll bar": bar(corner),
  "ratios, telescopic": byRatios(
    { heave: constantRatio(0.85), roll: tabledRatio([-0.03, -0.01, 0.02, 0.03], [-0.02, -0.008, 0.013, 0.021]) },
    false,
    undefined,
  ),
  "ratio, torsional": byRatios({ roll: constantRatio(12) }, true, undefined),
  "ratio of a corner": byRatios({ corner: tabledRatio([-0.03, 0, 0.03], [-0.02, 0.001, 0.024]) }, false, "right"),
};

const travel = fc.double({ min: -0.025, max: 0.025, noNaN: true });
const STEP = 2e-5;

describe.each(Object.entries(cases))("%s", (_, connection) => {
  it("is zero at design", () => {
    expect(Math.abs(at(connection, 0, 0).s)).toBeLessThan(1e-12);
  });

  it("has the gradient and the Hessian of its deflection", () => {
    fc.assert(
      fc.property(travel, travel, (l, r) => {
        const d = at(connection, l, r);
        const numeric = (f: (h: number) => number): number =>
          (8 * (f(STEP) - f(-STEP)) - (f(2 * STEP) - f(-2 * STEP))) / (12 * STEP);
        // A knot of a table inside the stencil has no second derivative.
        fc.pre(
          connection.kind !== "ratio" ||
            Math.abs(at(connection, l - 2 * STEP, r).dLL - at(connection, l + 2 * STEP, r).dLL) < 0.3,
        );
        fc.pre(
          connection.kind !== "ratio" ||
            Math.abs(at(connection, l, r - 2 * STEP).dRR - at(connection, l, r + 2 * STEP).dRR) < 0.3,
        );
        const scale = 20;
        const off = (value: number, f: (h: number) => number): number => Math.abs(numeric(f) - value);
        expect(off(d.dL, (h) => at(connection, l + h, r).s)).toBeLessThan(DIFFERENCED * scale);
        expect(off(d.dR, (h) => at(connection, l, r + h).s)).toBeLessThan(DIFFERENCED * scale);
        const bend = connection.kind === "ratio" ? 0.3 : DIFFERENCED * 200;
        expect(off(d.dLL, (h) => at(connection, l + h, r).dL)).toBeLessThan(bend);
        expect(off(d.dLR, (h) => at(connection, l, r + h).dL)).toBeLessThan(bend);
        expect(off(d.dRR, (h) => at(connection, l, r + h).dR)).toBeLessThan(bend);
      }),
    );
  });
});

describe("mirror image", () => {
  it("swapping the wheels and the sides of the ends changes nothing", () => {
    const there = connected(between(rockerEye("left", high), rockerEye("right", low), "hardpoints"));
    const back = connected(between(rockerEye("right", high), rockerEye("left", low), "hardpoints"));
    fc.assert(
      fc.property(travel, travel, (l, r) => {
        const a = at(there, l, r);
        const b = at(back, r, l);
        expectClose(b.s, a.s, IDENTITY);
        expectClose(b.dR, a.dL, IDENTITY);
        expectClose(b.dLR, a.dLR, IDENTITY, 1e-10);
        expectClose(b.dRR, a.dLL, IDENTITY, 1e-10);
      }),
    );
  });

  it("a bar's twist changes its sign", () => {
    fc.assert(
      fc.property(travel, travel, (l, r) => {
        expectClose(at(bar(corner), r, l).s, -at(bar(corner), l, r).s, IDENTITY);
      }),
    );
  });
});

describe("signs", () => {
  it("twist is positive as the left wheel's bump makes it, whatever the sense of the lever's axis", () => {
    for (const sense of [1, -1] as const) {
      const { dL, dR } = at(bar(corner, sense), 0, 0);
      expect(dL).toBeGreaterThan(0);
      expect(dR).toBeLessThan(0);
    }
    const ratio = at(byRatios({ roll: constantRatio(12) }, true, undefined), 0.01, -0.01);
    expectClose(ratio.s, 0.12, IDENTITY);
  });

  it("a telescopic ratio in roll is deflection per travel in the roll pattern (−, +)", () => {
    const { s } = at(byRatios({ roll: constantRatio(0.8) }, false, undefined), -0.01, 0.01);
    expectClose(s, 0.008, IDENTITY);
  });

  it("compression is positive from design", () => {
    const strut = between(
      { kind: "body", side: "left", body: "upright", point: [0, 0.6, 0.2] },
      { kind: "chassis", point: [0, 0.6, 0.6] },
      "hardpoints",
    );
    expect(at(connected(strut), 0.01, 0).s).toBeGreaterThan(0.0099);
  });
});

describe("tied bars", () => {
  it("twist in heave, and turn freely in roll where the levers stand square to the link", () => {
    const flat = syntheticCorner({ pivot: [0, 0.21, 0.43], axis: [1, 0, 0], rocker: [9, 0, 0] });
    const tie = { pivot: [0, 0.21, 0.43] as Vec3, axis: [1, 0, 0] as Vec3, arm: [0, 0.21, 0.52] as Vec3 };
    const connection = connected(tiedBars(tie, tie, "hardpoints"));
    expectClose(at(connection, 0.01, 0.01, flat).s, 0.18, IDENTITY);
    expectClose(at(connection, 0.02, -0.02, flat).s, 0, IDENTITY, 1e-14);
  });

  it("do not hold where the levers lie along the link", () => {
    const lying = { pivot: [0, 0.21, 0.43] as Vec3, axis: [1, 0, 0] as Vec3, arm: [0, 0.15, 0.43] as Vec3 };
    expect(tiedBars(lying, lying, "hardpoints")).toBeUndefined();
  });
});

describe("what has no deflection", () => {
  it("coincident ends are said, not divided by", () => {
    expect(between(rockerEye("left", high), rockerEye("left", high), "hardpoints").kind).toBe("no-deflection");
    expect(between(rockerEye("left", high), rockerEye("right", mirrored(high)), "hardpoints").kind).toBe(
      "no-deflection",
    );
  });

  it("a bar with a drop link off is never twisted", () => {
    const off = barTwist({ left: lever(corner), right: undefined }, "hardpoints");
    expect(off.idle).toBe("its drop link is off on the right side");
    expect(at(off, 0.02, -0.02).s).toBe(0);
  });

  it("a drop link that does not reach is named with its side", () => {
    const short = lever(corner, 1, 0.008);
    const connection = barTwist({ left: short, right: short }, "hardpoints");
    const l = corner.motion(0.0);
    const r = corner.motion(-0.06);
    if ("kind" in l || "kind" in r) throw new Error("unreachable");
    expect(connection.deflection({ left: l, right: r })).toEqual({
      kind: "no-deflection",
      reason: "drop-link",
      side: "right",
    });
  });
});
