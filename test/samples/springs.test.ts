/**
 * Springs and stops of samples/systems, a second time: laws in closed form from the numbers in the file, moved by the
 * plain axle (test/support/plain-axle.ts), rates as second differences of the energy. Formulae: mechanics of materials
 * as in check-values.md, SPR (coil), TB (torsion bar), STK and PRE (stages, preload), BST (stops), [own numbers].
 */
import { describe, expect, it } from "vitest";
import { expectClose } from "../support/approx.js";
import {
  across,
  both,
  bracket,
  eyes,
  heaveRate,
  leftWheelRate,
  rollStiffness,
  slope,
  SPRUNG_WEIGHT,
  sum,
  toChassis,
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

/** Corner bars of 11 mm as most of the files carry them, trimmed; and what else carries the axle. */
const onCornerBars = (other: (zl: number, zr: number) => number = () => 0) => {
  const rate = barRate(0.011, 0, 0.36);
  return trimmed(
    (seat) =>
      sum(
        both((z) => 0.5 * rate * (twist(z) + seat) ** 2),
        other,
      ),
    1,
  );
};
const cornerBars = "torsion-bar { diameter 11 mm, length 360 mm }";

const side = toChassis(eyes.side, bracket);
const third = across(eyes.third, eyes.third);
const thirdInHeave = (z: number): number => third(z, z);
/** Travel of both wheels at which the third is shortened by `s`, by halving. */
function travelFor(motion: (z: number) => number, s: number): number {
  let [low, high] = [-0.03, 0.03];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (motion(middle) < s) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

describe("coil.crank", () => {
  const rate = (G * 0.0095 ** 4) / (8 * 0.046 ** 3 * 9);
  const energy = trimmed((seat) => both((z) => 0.5 * rate * (side(z) + seat) ** 2), 0.1);

  it("has the wheel rate of k = G d⁴ / (8 D³ n) at its leverage, the load's own term included", () => {
    says("coil", "coil C-92 { wire 9.5 mm, mean-diameter 46 mm, active-turns 9, free-length 165 mm");
    const { rates, element } = frontOf("coil");
    expectClose(number(element("left.coil").rate), rate, CLOSED_FORM);
    expectClose(number(element("left.coil").motionRatio), slope(side), ENERGY_DIFFERENCE);
    expectClose(number(rates.wheelRate.left), leftWheelRate(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.rollStiffness), rollStiffness(energy), ENERGY_DIFFERENCE);
  });

  it("carries the weight over its leverage, stressed as Bergsträsser's factor has it", () => {
    const { element } = frontOf("coil");
    const load = SPRUNG_WEIGHT / 2 / slope(side);
    expectClose(number(element("left.coil").staticLoad), load, ENERGY_DIFFERENCE);
    const index = 46 / 9.5;
    const shear = (((4 * index + 2) / (4 * index - 3)) * 8 * load * 0.046) / (Math.PI * 0.0095 ** 3);
    const { strength } = element("left.coil");
    if (strength === undefined || "kind" in strength) throw new Error("no stress");
    expectClose(strength.stresses[0]?.atRest ?? 0, shear, ENERGY_DIFFERENCE);
    // Eleven turns of wire lie on each other, two of them closed ends.
    expectClose(strength.coil?.solid ?? 0, 11 * 0.0095, CLOSED_FORM);
    expectClose(strength.coil?.atRest ?? 0, 0.165 - load / rate, ENERGY_DIFFERENCE);
  });

  it("takes a stated rate before the wire's", () => {
    expectClose(number(frontOf("coil", "coil-stated").element("left.coil").rate), 96e3, CLOSED_FORM);
  });
});

describe("torsion-bar.crank", () => {
  it.each([
    ["torsion-bar", 0.011, 0, 0.36],
    ["torsion-bar-stiffer", 0.012, 0, 0.36],
    ["torsion-tube", 0.013, 0.0095, 0.33],
  ] as const)("%s has the wheel rate of k = G J / L", (car, diameter, bore, length) => {
    const rate = barRate(diameter, bore, length);
    const energy = trimmed((seat) => both((z) => 0.5 * rate * (twist(z) + seat) ** 2), 1);
    says("torsion-bar");
    const { rates, element } = frontOf("torsion-bar", car);
    expectClose(number(element("left.corner-bar").rate), rate, CLOSED_FORM);
    expectClose(number(rates.wheelRate.left), leftWheelRate(energy), ENERGY_DIFFERENCE);
    const moment = SPRUNG_WEIGHT / 2 / slope(twist);
    const { strength } = element("left.corner-bar");
    if (strength === undefined || "kind" in strength) throw new Error("no stress");
    const shear = (16 * moment * diameter) / (Math.PI * (diameter ** 4 - bore ** 4));
    expectClose(strength.stresses[0]?.atRest ?? 0, shear, ENERGY_DIFFERENCE);
  });
});

describe("heave-together.crank", () => {
  it("begins to carry where the rockers have closed its gap", () => {
    says("heave-together", cornerBars, "rate 55 N/mm", "gap 2 mm { step 0.5 mm }");
    const { rates, element } = frontOf("heave-together");
    expectClose(number(rates.heaveRate), heaveRate(onCornerBars()), ENERGY_DIFFERENCE);
    const { events } = element("third");
    if (events === undefined || "kind" in events) throw new Error("no events");
    const [begins] = events.filter(({ what }) => what === "free");
    expectClose(begins?.where?.travel ?? 0, travelFor(thirdInHeave, 0.002), CROSSING, CROSSING);
  });

  it("adds its rate and its preload's own term once it is seated", () => {
    says("heave-together", "front.third.gap 0 mm", "front.third.preload 300 N");
    const energy = onCornerBars((zl, zr) => 300 * third(zl, zr) + 0.5 * 55e3 * third(zl, zr) ** 2);
    const { rates } = frontOf("heave-together", "heave-together-seated");
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.rollStiffness), rollStiffness(energy), ENERGY_DIFFERENCE);
  });
});

describe("heave-apart.crank", () => {
  it("has heave rates and damping at the leverages of two pairs of eyes", () => {
    says(
      "heave-apart",
      "wire 8.5 mm, mean-diameter 46 mm, active-turns 9.7",
      "preload 400 N { step 20 N }",
      "slow 2.2 N*s/mm",
    );
    const rate = (G * 0.0085 ** 4) / (8 * 0.046 ** 3 * 9.7);
    const energy = onCornerBars((zl, zr) => 400 * third(zl, zr) + 0.5 * rate * third(zl, zr) ** 2);
    const { rates } = frontOf("heave-apart");
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.wheelRate.left), leftWheelRate(energy), ENERGY_DIFFERENCE);
    // Slow slopes of bump and rebound, halved: 2.2 and 2.5 at the heave damper, 50/25 and 70/25 N*s/mm at the sides.
    const damper = slope((z) => across(eyes.damper, eyes.damper)(z, z));
    const heave = 2 * 2400 * slope(side) ** 2 + 2350 * damper ** 2;
    expectClose(number(rates.heaveDamping), heave, ENERGY_DIFFERENCE);
  });
});

describe("double-acting.crank", () => {
  it("adds its soft stages at rest", () => {
    says(
      "double-acting",
      "squat { soft 40 N/mm, knee 8 mm, hard 110 N/mm }",
      "rise { soft 40 N/mm, knee 4 mm, hard 75 N/mm }",
    );
    const energy = onCornerBars((zl, zr) => 0.5 * 40e3 * third(zl, zr) ** 2);
    const { rates, element } = frontOf("double-acting");
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
    const { events } = element("third");
    if (events === undefined || "kind" in events) throw new Error("no events");
    expect(events.map(({ what }) => what)).toEqual(["stage", "stage"]);
    for (const [i, knee] of [-0.004, 0.008].entries()) {
      expectClose(events[i]?.where?.travel ?? 0, travelFor(thirdInHeave, knee), CROSSING, CROSSING);
    }
  });
});

describe("stacks.crank", () => {
  const inLine = (a: number, b: number): number => (a * b) / (a + b);

  it("gives way with both springs in line, and says where each stage ends", () => {
    says(
      "stacks",
      "rate 95 N/mm",
      "tender { rate 160 N/mm, travel 11 mm }",
      "tender { rate 40 N/mm, travel 6 mm }",
      "preload 100 N",
    );
    const { rates, element } = frontOf("stacks");
    const soft = inLine(120e3, 40e3);
    const corner = inLine(95e3, 160e3);
    const energy = trimmed(
      (seat) =>
        sum(
          both((z) => 0.5 * corner * (side(z) + seat) ** 2),
          (zl, zr) => 100 * third(zl, zr) + 0.5 * soft * third(zl, zr) ** 2,
        ),
      0.2,
    );
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.rollStiffness), rollStiffness(energy), ENERGY_DIFFERENCE);
    const { events } = element("third");
    if (events === undefined || "kind" in events) throw new Error("no events");
    // 100 N are there at design; the tender is solid at 40 N/mm · 6 mm = 240 N.
    const used = events.find(({ what }) => what === "stage");
    expectClose(used?.at ?? 0, 140 / soft, CROSSING, CROSSING);
    expectClose(used?.where?.travel ?? 0, travelFor(thirdInHeave, 140 / soft), CROSSING, CROSSING);
  });
});

describe("bump-stops.crank", () => {
  it("meets each stop where gap less packer is used up", () => {
    says("bump-stops", "gap 14 mm", "packer 3 mm", "gap 16 mm { step 1 mm }");
    const { element } = frontOf("bump-stops");
    const met = (name: string): number => {
      const { events } = element(name);
      if (events === undefined || "kind" in events) throw new Error("no events");
      return events.find(({ what }) => what === "free")?.where?.travel ?? Number.NaN;
    };
    expectClose(met("left.side-stop"), travelFor(side, 0.011), CROSSING, CROSSING);
    expectClose(met("heave-stop"), travelFor(thirdInHeave, 0.016), CROSSING, CROSSING);
  });
});

describe("mixed.crank", () => {
  it("holds a single wheel by a quarter of the heave rate and the roll stiffness over the track squared", () => {
    says("mixed", "rate 80 N/mm", "torsion-bar { diameter 18 mm, bore 11 mm, length 380 mm }");
    const { rates } = frontOf("mixed");
    const [heave, roll] = [number(rates.heaveRate), number(rates.rollStiffness)];
    expectClose(number(rates.wheelRate.left), heave / 4 + roll / TRACK ** 2, CLOSED_FORM);
    const carried = trimmed((seat) => (zl, zr) => 0.5 * 80e3 * (third(zl, zr) + seat) ** 2, 0.1);
    expectClose(heave, heaveRate(carried), ENERGY_DIFFERENCE);
    expect(roll).toBeGreaterThan(0);
  });
});
