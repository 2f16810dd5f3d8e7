/**
 * Facts of the trade (common practice, no published source), each from the geometry of a corner with
 * push rod and rocker, never from a ratio.
 */
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import type { ByMode, ElementFigures, Figure, Leak } from "../../server/analyses/results.js";
import type { Element } from "../../server/elements/element.js";
import { mirror, type Vec3 } from "../../server/maths/vec3.js";
import { antiRollBar, axle, damping, element, joined, rockerEye, sideSprings, spring } from "../support/mechanisms.js";
import { hardpoint } from "../support/wishbone-case.js";

const springs = sideSprings(spring(150e3));

function figuresOf(tested: Element): ElementFigures {
  const found = analyseAxle(axle([...springs, tested])).elements.find(({ path }) => path === tested.path);
  if (found === undefined) throw new Error("no figures");
  return found;
}

function sensitivityOf({ sensitivity }: ElementFigures): ByMode {
  if ("kind" in sensitivity) throw new Error(sensitivity.reason);
  return sensitivity;
}

function leakOf({ leak }: ElementFigures): Leak {
  if (leak === undefined || "kind" in leak) throw new Error("no leak");
  return leak;
}

const number = (figure: Figure): number => {
  if (typeof figure !== "number") throw new Error(figure.reason);
  return figure;
};

/** Two eyes of the check case's rocker, above and below its axis, at the same distance across. */
const upper: Vec3 = hardpoint("RDT");
const lower: Vec3 = hardpoint("RDB");

describe("a spring between the rockers' like eyes", () => {
  const third = element("third", joined(rockerEye("left", upper), rockerEye("right", upper)), spring(100e3), {
    for: ["heave"],
  });

  it("is worked in heave and only swings in roll", () => {
    const by = sensitivityOf(figuresOf(third));
    expect(by.heave).toBeGreaterThan(0.9);
    expect(Math.abs(by.roll)).toBeLessThan(1e-12);
  });

  it("has no first-order leak, yet its length changes with roll squared: a finite leak well below one per cent", () => {
    const leak = leakOf(figuresOf(third));
    expect(leak.firstOrder).toBeLessThan(1e-12);
    expect(number(leak.finite)).toBeGreaterThan(0);
    expect(number(leak.finite)).toBeLessThan(0.01);
  });

  it("loaded, it changes roll stiffness although nothing works it in roll", () => {
    const loaded = element(
      "third",
      joined(rockerEye("left", upper), rockerEye("right", upper)),
      spring(100e3, { preload: 900 }),
      {
        for: ["heave"],
      },
    );
    expect(Math.abs(number(leakOf(figuresOf(third)).rate))).toBeLessThan(1e-12);
    expect(Math.abs(number(leakOf(figuresOf(loaded)).rate))).toBeGreaterThan(1e-4);
  });
});

describe("a damper from one rocker's upper eye to the other one's lower eye", () => {
  const diagonal = element("diagonal", joined(rockerEye("left", upper), rockerEye("right", lower)), damping(4000), {
    for: ["roll"],
  });

  it("is worked in roll and only swings in heave", () => {
    const by = sensitivityOf(figuresOf(diagonal));
    expect(Math.abs(by.roll)).toBeGreaterThan(0.9);
    expect(Math.abs(by.heave)).toBeLessThan(0.06 * Math.abs(by.roll));
  });

  it("turned over, it works the same", () => {
    const turned = element("diagonal", joined(rockerEye("left", lower), rockerEye("right", upper)), damping(4000), {
      for: ["roll"],
    });
    const [a, b] = [leakOf(figuresOf(diagonal)), leakOf(figuresOf(turned))];
    expect(b.firstOrder).toBeCloseTo(a.firstOrder, 12);
    expect(number(b.finite)).toBeCloseTo(number(a.finite), 12);
  });

  it("with both ends on upper eyes it is no roll damper at all: idle in roll", () => {
    const mistaken = element("diagonal", joined(rockerEye("left", upper), rockerEye("right", upper)), damping(4000), {
      for: ["roll"],
    });
    const figures = figuresOf(mistaken);
    expect(figures.idleIn).toEqual(["roll"]);
    expect(figures.leak).toEqual({ kind: "absent", reason: "it is not moved in roll, which it is for" });
  });
});

describe("an anti-roll bar with a drop link from each rocker", () => {
  const bar = antiRollBar(spring(800));

  it("twists in roll and not in heave", () => {
    const by = sensitivityOf(figuresOf(bar));
    expect(Math.abs(by.roll)).toBeGreaterThan(1);
    expect(Math.abs(by.heave)).toBeLessThan(1e-9);
  });

  it("twists as the left wheel's bump makes it: negative in roll, which droops the left wheel", () => {
    expect(sensitivityOf(figuresOf(bar)).roll).toBeLessThan(0);
  });

  it("adds roll stiffness, nothing in heave, and half as much at one wheel as its roll rate at both", () => {
    const { rates } = analyseAxle(axle([...springs, bar]));
    const share = rates.shares.find(({ path }) => path === bar.path);
    const track = axle([]).track ?? 0;
    expect(share?.heave ?? 1).toBeCloseTo(0, 6);
    // K_φ = ½ k_w t² with both wheels moved; one wheel alone feels k_w / 2.
    expect(share?.single).toBeCloseTo((2 * (share?.roll ?? 0)) / track ** 2 / 2, 6);
  });
});

describe("a corner element", () => {
  it("moves with its own wheel and cannot leak into the other one", () => {
    const [left] = analyseAxle(axle(springs)).elements;
    if (left === undefined) throw new Error("no figures");
    expect(leakOf(left)).toMatchObject({ mode: "other-wheel", firstOrder: 0, finite: 0, rate: 0 });
  });

  it("has the same ratio on both sides of a mirrored axle", () => {
    const [left, right] = analyseAxle(axle(springs)).elements;
    expect(left?.motionRatio).toBe(right?.motionRatio);
  });
});

it("the other side's eyes are mirror images", () => {
  expect(mirror(upper)).toEqual([upper[0], -upper[1], upper[2]]);
});
