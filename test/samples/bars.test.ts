/**
 * Bars and what works in roll, of samples/systems, a second time: torsion and bending in closed form (check-values.md, TB and
 * ARB), moved by the plain axle, rates as second differences of the energy.
 */
import { describe, expect, it } from "vitest";
import { expectClose } from "../support/approx.js";
import {
  across,
  both,
  eyes,
  flat,
  heaveRate,
  leverAngle,
  plainCorner,
  rollStiffness,
  sum,
  TRACK,
  trimmed,
  twist,
} from "../support/plain-axle.js";
import { CLOSED_FORM, CROSSING, ENERGY_DIFFERENCE } from "../support/tolerances.js";
import { number } from "../support/written-car.js";
import { frontOf, says } from "./front-of.js";

const G = 79.3e9;
const barRate = (diameter: number, bore: number, length: number): number =>
  (G * Math.PI * (diameter ** 4 - bore ** 4)) / 32 / length;
const inLine = (...rates: readonly number[]): number => 1 / rates.reduce((all, rate) => all + 1 / rate, 0);

const cornerBars = "torsion-bar { diameter 11 mm, length 360 mm }";
const cornerRate = barRate(0.011, 0, 0.36);
const onCornerBars = (other: (zl: number, zr: number) => number = () => 0) =>
  trimmed(
    (seat) =>
      sum(
        both((z) => 0.5 * cornerRate * (twist(z) + seat) ** 2),
        other,
      ),
    1,
  );
const cornersAlone = rollStiffness(onCornerBars());

const LEVER = 0.07;
const lever = leverAngle(eyes.bar, LEVER, 0.1);
/** A U-shaped bar's energy: what it is twisted by is the difference of its levers. */
const uBar =
  (rate: number) =>
  (zl: number, zr: number): number =>
    0.5 * rate * (lever(zl) - lever(zr)) ** 2;
const leverText = "lever { pivot (70, 222, 296) mm, axis (0, 1, 0), end (0, 222, 296) mm }";

describe("anti-roll-bar.crank", () => {
  /** Tube in torsion, in line with both blades: 1/k = 1/k_T + 2 l³ / (3 E I a²), and 1/I over the blade's angle. */
  const withBlades = (angle: number): number => {
    const [stiff, soft] = [(0.007 * 0.02 ** 3) / 12, (0.02 * 0.007 ** 3) / 12];
    const inverse = Math.sin(angle) ** 2 / stiff + Math.cos(angle) ** 2 / soft;
    return inLine(barRate(0.014, 0.009, 0.38), (3 * 205e9 * LEVER ** 2) / (2 * 0.07 ** 3 * inverse));
  };

  it.each([
    ["anti-roll-bar", Math.PI / 4],
    ["bar-soft", 0],
  ] as const)("%s is tube and blades in line", (car, angle) => {
    says(
      "anti-roll-bar",
      cornerBars,
      leverText,
      "diameter 14 mm, bore 9 mm, length 380 mm",
      "section 7 x 20 mm, length 70 mm",
    );
    const rate = withBlades(angle);
    const energy = onCornerBars(uBar(rate));
    const { rates, element } = frontOf("anti-roll-bar", car);
    expectClose(number(element("bar").rate), rate, CLOSED_FORM);
    expectClose(number(rates.rollStiffness), rollStiffness(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
  });

  it("with a link off leaves roll to the corner bars", () => {
    expectClose(number(frontOf("anti-roll-bar", "bar-off").rates.rollStiffness), cornersAlone, ENERGY_DIFFERENCE);
  });
});

describe("link-springs.crank", () => {
  const tube = barRate(0.018, 0.012, 0.38);
  /** A spring of 160 N/mm in each link, both at the lever's end: k a² / 2 of the bar's twist. */
  const soft = inLine(tube, (160e3 * LEVER ** 2) / 2);

  it("has the rate of bar and springs in line, until the springs are used up at 2.5 mm", () => {
    says(
      "link-springs",
      leverText,
      "diameter 18 mm, bore 12 mm, length 380 mm",
      "link-spring { rate 160 N/mm, travel 2.5 mm }",
    );
    const { rates, element } = frontOf("link-springs");
    const bar = element("bar");
    expectClose(number(bar.rate), soft, CLOSED_FORM);
    expectClose(number(rates.rollStiffness), rollStiffness(onCornerBars(uBar(soft))), ENERGY_DIFFERENCE);
    if (bar.events === undefined || "kind" in bar.events) throw new Error("no events");
    // The links then carry 160 N/mm · 2.5 mm, and the bar that over its lever.
    const used = (160e3 * 0.0025 * LEVER) / soft;
    expectClose(Math.max(...bar.events.map(({ at }) => at)), used, CLOSED_FORM);
  });

  it("goes on with the bar alone beyond, at the roll angle where the twist gets there", () => {
    const { car } = frontOf("link-springs");
    const over = car.analysis.changeOvers?.[0];
    const used = (160e3 * 0.0025 * LEVER) / soft;
    let [low, high] = [0, 0.025];
    for (let i = 0; i < 60; i++) {
      const z = (low + high) / 2;
      if (lever(z) - lever(-z) < used) low = z;
      else high = z;
    }
    expectClose(over?.angle ?? 0, (2 * low) / TRACK, 0, 2 * CROSSING);
  });
});

describe("tee-bar.crank", () => {
  it("swings freely in heave; in roll its stem is twisted by the cross arm", () => {
    says(
      "tee-bar",
      cornerBars,
      "diameter 20 mm, length 160 mm",
      "foot (-160, 0, 300) mm, head (0, 0, 300) mm, end (0, 150, 300) mm",
    );
    const { rates, element } = frontOf("tee-bar");
    const rate = barRate(0.02, 0, 0.16);
    expectClose(number(element("tee").rate), rate, CLOSED_FORM);
    expectClose(number(rates.heaveRate), heaveRate(onCornerBars()), ENERGY_DIFFERENCE);
    // Both links stand upright at design, 98 mm long; the arm turns until they have their lengths again.
    const eye = flat(150, 398);
    const ends = (zl: number, zr: number): number => {
      const [left, right] = [plainCorner(zl).eye(eye), plainCorner(zr).eye(eye)];
      // To first order in the links' tilt the ends follow the eyes; what is left is of third order in roll.
      return Math.atan2((left[1] - right[1]) / 2, 0.15);
    };
    const energy = onCornerBars((zl, zr) => 0.5 * rate * ends(zl, zr) ** 2);
    expectClose(number(rates.rollStiffness), rollStiffness(energy), ENERGY_DIFFERENCE);
  });
});

describe("tied-bars.crank", () => {
  it("carries heave by two bars in line and leaves roll to the anti-roll bar", () => {
    says(
      "tied-bars",
      "torsion-bar { diameter 12.5 mm, length 330 mm }",
      "tie { arm (-330, 190, 450) mm }",
      "diameter 18 mm, bore 12 mm, length 380 mm",
    );
    const { rates, element } = frontOf("tied-bars");
    const rate = barRate(0.0125, 0, 0.33) / 2;
    expectClose(number(element("tied-bars").rate), rate, CLOSED_FORM);
    // The arms stand upright over the pivots: as a parallelogram they follow the rockers in roll, and hold still in heave.
    const energy = trimmed(
      (seat) => sum((zl, zr) => 0.5 * rate * (twist(zl) + twist(zr) + seat) ** 2, uBar(barRate(0.018, 0.012, 0.38))),
      2,
    );
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
    const { sensitivity } = element("tied-bars");
    if ("kind" in sensitivity) throw new Error(sensitivity.reason);
    expectClose(sensitivity.roll, 0, 0, 1e-9);
    const own = rates.shares.find(({ path }) => path === "front.tied-bars");
    expect(Math.abs(own?.roll ?? 1)).toBeLessThan(0.01 * number(rates.rollStiffness));
  });
});

describe("roll-elements.crank", () => {
  it("adds its diagonal to roll and nothing to heave", () => {
    says("roll-elements", cornerBars, leverText, "rate 22 N/mm", "diameter 15 mm, bore 10 mm, length 380 mm");
    const diagonal = across(eyes.high, eyes.low);
    const energy = onCornerBars(sum(uBar(barRate(0.015, 0.01, 0.38)), (zl, zr) => 0.5 * 22e3 * diagonal(zl, zr) ** 2));
    const { rates } = frontOf("roll-elements");
    expectClose(number(rates.rollStiffness), rollStiffness(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.heaveRate), heaveRate(onCornerBars()), ENERGY_DIFFERENCE);
  });
});
