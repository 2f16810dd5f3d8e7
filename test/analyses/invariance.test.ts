/**
 * What must not change: the same axle from another origin, seen in a mirror, or in other units has the
 * same figures. Lopsided on purpose, so that nothing holds by symmetry alone.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import type { AxleAnalysis, Figure } from "../../server/analyses/results.js";
import { barTwist } from "../../server/elements/connections/bar.js";
import { rockerToChassis } from "../../server/elements/connections/twists.js";
import type { Element } from "../../server/elements/element.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import { type HardpointGeometry, isDegenerate } from "../../server/linkage/geometry.js";
import { hardpointCorner } from "../../server/linkage/hardpoint.js";
import { leverOf } from "../../server/linkage/lever.js";
import { add, mirror, scale, type Vec3 } from "../../server/maths/vec3.js";
import { expectClose } from "../support/approx.js";
import { axle, chassis, damping, element, joined, rockerEye, spring, trackAtContact } from "../support/mechanisms.js";
import { INVARIANCE } from "../support/tolerances.js";
import { hardpoint, wishboneGeometry } from "../support/wishbone-case.js";

/** How the axle is seen: lengths and forces in other units, moved, its sides swapped. */
interface View {
  readonly length: number;
  readonly force: number;
  readonly shift: Vec3;
  readonly swapped: boolean;
}

const PLAIN: View = { length: 1, force: 1, shift: [0, 0, 0], swapped: false };

function geometry(view: View, lowered: number): HardpointGeometry {
  const at = (p: Vec3): Vec3 => scale(add(p, view.shift), view.length);
  const { lower, upper, trackRod, rod, rocker, wheel } = wishboneGeometry;
  if (rod === undefined || rocker === undefined) throw new Error("the check case has a rocker");
  const lift = (p: Vec3): Vec3 => [p[0], p[1], p[2] - lowered];
  return {
    lower: { fore: at(lift(lower.fore)), aft: at(lower.aft), outer: at(lower.outer) },
    upper: { fore: at(upper.fore), aft: at(upper.aft), outer: at(upper.outer) },
    trackRod: { inner: at(trackRod.inner), outer: at(trackRod.outer) },
    rod: { ...rod, outer: at(rod.outer), inner: at(rod.inner) },
    rocker: { pivot: at(rocker.pivot), axis: rocker.axis },
    wheel: { ...wheel, centre: at(wheel.centre), loadedRadius: wheel.loadedRadius * view.length },
  };
}

/** The axle under a view; left and right differ by a lowered joint and by a spring's rate. */
function seen(view: View): AxleMechanism {
  const { length, force, swapped } = view;
  const corner = (lowered: number) => {
    const made = hardpointCorner(geometry(view, lowered));
    if (isDegenerate(made)) throw new Error(made.reason);
    return made;
  };
  const [first, second] = [corner(0), corner(0.004)];
  const corners = swapped ? { left: second, right: first } : { left: first, right: second };
  const side = (one: "left" | "right"): "left" | "right" => (swapped ? (one === "left" ? "right" : "left") : one);
  const at = (p: Vec3): Vec3 => scale(add(p, view.shift), length);
  /** A chassis point as written for the left side of the unswapped axle. */
  const inCar = (p: Vec3, one: "left" | "right"): Vec3 => (one === "left" ? at(p) : mirror(at(p)));
  const rate = (k: number) => spring((k * force) / length);
  const strut = (one: "left" | "right", k: number): Element =>
    element(
      "side",
      joined(rockerEye(side(one), at(hardpoint("SPR"))), chassis(inCar(hardpoint("SPC"), side(one)))),
      rate(k),
      {
        side: side(one),
        for: ["corner"],
      },
    );
  const bar = (one: "left" | "right") => {
    const points = { pivot: at(hardpoint("ABP")), axis: [0, 1, 0] as Vec3, end: at(hardpoint("DLA")) };
    const design = corners[one].motion(0);
    if ("kind" in design) throw new Error("unreachable");
    const lever = leverOf(points, design.point("rocker", at(hardpoint("DLR"))));
    if ("kind" in lever) throw new Error(lever.reason);
    return { lever, body: "rocker" as const, linkEnd: at(hardpoint("DLR")) };
  };
  const elements = [
    strut("left", 150e3),
    strut("right", 140e3),
    element(
      "third",
      joined(rockerEye(side("left"), at(hardpoint("HSR"))), rockerEye(side("right"), at(hardpoint("HSR")))),
      rate(90e3),
      {
        for: ["heave"],
      },
    ),
    element(
      "diagonal",
      joined(rockerEye(side("left"), at(hardpoint("RDT"))), rockerEye(side("right"), at(hardpoint("RDB")))),
      damping((4000 * force) / length),
      {
        for: ["roll"],
      },
    ),
    element("arb", barTwist({ left: bar("left"), right: bar("right") }, "hardpoints"), spring(800 * force * length), {
      kind: "anti-roll-bar",
      for: ["roll"],
    }),
    element(
      "twister",
      rockerToChassis(side("left"), "hardpoints"),
      spring(60 * force * length, { preload: 20 * force * length }),
      {
        for: ["heave"],
      },
    ),
  ];
  const wheel = { unsprungMass: 18 * force, tyreRate: (200e3 * force) / length };
  return axle(elements, {
    corners,
    track: trackAtContact * length,
    travel: { from: -0.03 * length, to: 0.025 * length },
    carMass: 560 * force,
    wheels: { left: wheel, right: wheel },
  });
}

const number = (figure: Figure | undefined): number => {
  if (typeof figure !== "number") throw new Error(figure?.reason ?? "nothing");
  return figure;
};

function figuresOf(analysis: AxleAnalysis, name: string, side?: "left" | "right") {
  const path = side === undefined ? `front.${name}` : `front.${side}.${name}`;
  const found = analysis.elements.find((one) => one.path === path);
  if (found === undefined || "kind" in found.sensitivity) throw new Error(path);
  return { ...found, by: found.sensitivity };
}

const plain = analyseAxle(seen(PLAIN));

function expectSame(other: AxleAnalysis, view: View): void {
  const { length, force, swapped } = view;
  const near = (a: Figure | undefined, b: Figure | undefined, unit: number): void =>
    expectClose(number(a), number(b) * unit, INVARIANCE, 1e-9 * unit);
  const perLength = force / length;
  near(other.rates.heaveRate, plain.rates.heaveRate, perLength);
  near(other.rates.rollStiffness, plain.rates.rollStiffness, force * length);
  near(other.rates.wheelRate[swapped ? "right" : "left"], plain.rates.wheelRate.left, perLength);
  near(other.rates.rideRate.heave, plain.rates.rideRate.heave, perLength);
  near(other.rates.heaveDamping, plain.rates.heaveDamping, perLength);
  near(other.rates.rollDamping, plain.rates.rollDamping, force * length);
  for (const side of ["left", "right"] as const) {
    const there = figuresOf(other, "side", swapped ? (side === "left" ? "right" : "left") : side);
    const here = figuresOf(plain, "side", side);
    near(there.staticLoad, here.staticLoad, force);
    near(there.motionRatio, here.motionRatio, 1);
    near(there.atWheels, here.atWheels, perLength);
  }
  const [leak, before] = [figuresOf(other, "diagonal").leak, figuresOf(plain, "diagonal").leak];
  if (leak === undefined || before === undefined || "kind" in leak || "kind" in before) throw new Error("no leak");
  if (leak.mode === "other-wheel") throw new Error("not a corner element");
  near(leak.firstOrder, before.firstOrder, 1);
  near(leak.finite, before.finite, 1);
  near(leak.rate, before.rate, 1);
  const sense = swapped ? -1 : 1;
  expectClose(figuresOf(other, "third").by.heave, figuresOf(plain, "third").by.heave, INVARIANCE);
  expectClose(figuresOf(other, "third").by.roll, sense * figuresOf(plain, "third").by.roll, INVARIANCE, 1e-9);
  expectClose(figuresOf(other, "arb").by.roll, figuresOf(plain, "arb").by.roll / length, INVARIANCE);
}

describe("an axle's figures", () => {
  it("do not depend on where the origin lies along and above the car", () => {
    const metre = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(metre, metre, (x, z) => {
        const view: View = { ...PLAIN, shift: [x, 0, z] };
        expectSame(analyseAxle(seen(view)), view);
      }),
      { numRuns: 25 },
    );
  });

  it("are those of the other side in a mirror", () => {
    const view: View = { ...PLAIN, swapped: true };
    expectSame(analyseAxle(seen(view)), view);
  });

  it("are the same in other units: inches and pounds-force", () => {
    const view: View = { ...PLAIN, length: 1 / 0.0254, force: 1 / 4.4482216152605 };
    expectSame(analyseAxle(seen(view)), view);
  });

  it("are the same in any units", () => {
    const factor = fc.double({ min: 0.05, max: 50, noNaN: true });
    fc.assert(
      fc.property(factor, factor, (length, force) => {
        const view: View = { ...PLAIN, length, force };
        expectSame(analyseAxle(seen(view)), view);
      }),
      { numRuns: 25 },
    );
  });

  it("are lopsided: the check does not rest on symmetry", () => {
    expect(number(plain.rates.wheelRate.left)).not.toBeCloseTo(number(plain.rates.wheelRate.right), -2);
  });
});
