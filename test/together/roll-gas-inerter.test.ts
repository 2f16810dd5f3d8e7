/**
 * A bar with link springs beside a roll damper, gas beside oil, an inerter beside spring and damper: sums by hand and
 * energies of the test's own, differenced. Laws as in check-values.md, ARB, GAS and INR [own numbers].
 */
import { describe, expect, it } from "vitest";
import { contextOf } from "../support/context.js";
import { expectClose } from "../support/approx.js";
import {
  across,
  both,
  bracket,
  type Energy,
  eyes,
  heaveRate,
  leverAngle,
  rollStiffness,
  slope,
  sum,
  toChassis,
  TRACK,
  trimmed,
  twist,
} from "../support/plain-axle.js";
import { CLOSED_FORM, ENERGY_DIFFERENCE, IDENTITY } from "../support/tolerances.js";
import { elementIn, number } from "../support/written-car.js";
import { cornerBar, onOneAxle, onTwoAxles } from "./planar-car.js";

const G = 79.3e9;
const barRate = (diameter: number, length: number): number => (G * Math.PI * diameter ** 4) / 32 / length;
const cornerBars = (seat: number): Energy => both((z) => 0.5 * barRate(0.011, 0.36) * (twist(z) + seat) ** 2);
const third = across(eyes.third, eyes.third);
const inHeave = slope((z) => third(z, z));

function analysed(text: string) {
  const car = contextOf({ "car.crank": text }, "car.crank").cars.at(-1);
  if (car === undefined) throw new Error("no car");
  return car.analysis;
}
function frontOf(text: string) {
  const { front } = analysed(text).axles;
  if (front === undefined) throw new Error("no front axle");
  return front;
}

describe("a bar with link springs and a roll damper", () => {
  const text = onOneAxle(`${cornerBar}
    damper side for corner {
      damping 3 N*s/mm
      between rocker.side and chassis (0, 45, 466) mm
    }
    damper roll-damper for roll {
      damping 1.5 N*s/mm
      between left.rocker.high and right.rocker.low
    }
    anti-roll-bar bar for roll {
      torsion-bar { diameter 17 mm, length 380 mm }
      lever { pivot (70, 222, 296) mm, axis (0, 1, 0), end (0, 222, 296) mm }
      drop-link rocker.bar
      link-spring { rate 180 N/mm, travel 2 mm }
    }`);
  const lever = leverAngle(eyes.bar, 0.07, 0.1);
  const inLine = 1 / (1 / barRate(0.017, 0.38) + 2 / (180e3 * 0.07 ** 2));

  it("has the stiffness of corner bars, bar and link springs; the damper adds none", () => {
    const energy = trimmed((seat) => sum(cornerBars(seat), (l, r) => 0.5 * inLine * (lever(l) - lever(r)) ** 2), 1);
    const { rates } = frontOf(text);
    expectClose(number(rates.rollStiffness), rollStiffness(energy), ENERGY_DIFFERENCE);
    expectClose(number(rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
  });

  it("is damped in roll by both dampers, in heave by the side dampers alone", () => {
    const { rates } = frontOf(text);
    const side = 3e3 * slope(toChassis(eyes.side, bracket)) ** 2;
    const diagonal = 1.5e3 * slope((z) => across(eyes.high, eyes.low)(-z, z)) ** 2;
    expectClose(number(rates.rollDamping), (TRACK ** 2 / 4) * (2 * side + diagonal), ENERGY_DIFFERENCE);
    expectClose(number(rates.heaveDamping), 2 * side, ENERGY_DIFFERENCE);
  });
});

describe("a gas spring and a hydraulic link", () => {
  const ATMOSPHERE = 101_325;
  const text = onTwoAxles(
    `${cornerBar}
    gas-spring gas for heave {
      pressure 12 bar
      volume 50 ml
      area 600 mm^2
      between left.rocker.third and right.rocker.third
    }`,
    `  hydraulic-link pitch-line for pitch {
    cylinder nose { between front.left.rocker.third and front.right.rocker.third, area 400 mm^2 }
    cylinder tail { between rear.left.rocker.third and rear.right.rocker.third, area 400 mm^2 }
    line nose to tail crossed
    line tail to nose crossed
    accumulator { pressure 20 bar, volume 60 ml, exponent 1.2 }
  }
`,
  );
  /** Work on gas that is squeezed by `swept`, polytropic, the air behind the piston helping. */
  const squeezed = (gauge: number, volume: number, n: number, swept: number): number => {
    const pressure = gauge + ATMOSPHERE;
    return ((pressure * volume) / (n - 1)) * ((volume / (volume - swept)) ** (n - 1) - 1) - ATMOSPHERE * swept;
  };
  const gas: Energy = (zl, zr) => squeezed(12e5, 50e-6, 1.3, 600e-6 * third(zl, zr));
  const axle = trimmed((seat) => sum(cornerBars(seat), gas), 1);
  /** What leaves the nose's working side less what the tail's far side takes, and the other way about. */
  const link = (nose: number, tail: number): number =>
    squeezed(20e5, 60e-6, 1.2, 400e-6 * (nose - tail)) + squeezed(20e5, 60e-6, 1.2, 400e-6 * (tail - nose));

  it("resists pitch by both and heave by the gas springs alone", () => {
    const { springs } = analysed(text).modal;
    const { patterns } = springs;
    if ("kind" in patterns) throw new Error(patterns.reason);
    const pattern = (mode: 1 | -1): number =>
      heaveRate((z) => axle(z, z) + axle(mode * z, mode * z) + link(third(z, z), third(mode * z, mode * z)));
    expectClose(patterns[0]?.[0] ?? 0, pattern(1), ENERGY_DIFFERENCE);
    expectClose(patterns[1]?.[1] ?? 0, pattern(-1), ENERGY_DIFFERENCE);
    expect(patterns[1]?.[1] ?? 0).toBeGreaterThan((patterns[0]?.[0] ?? 0) + 50e3);
  });

  it("leaves the roll of both axles as it is without the link", () => {
    const { front } = analysed(text).axles;
    if (front === undefined) throw new Error("no front axle");
    expectClose(number(front.rates.rollStiffness), rollStiffness(axle), ENERGY_DIFFERENCE);
  });
});

describe("an inerter with a damper and a spring", () => {
  const elements = (eye: "third" | "damper"): string => `${cornerBar}
    spring third for heave {
      rate 50 N/mm
      between left.rocker.third and right.rocker.third
    }
    damper heave-damper for heave {
      damping 2.5 N*s/mm
      between left.rocker.${eye} and right.rocker.${eye}
    }
    inerter flywheel for heave {
      inertance 25 kg
      between left.rocker.${eye} and right.rocker.${eye}
    }`;

  it.each([
    ["in one line, on the spring's own eyes", "third", inHeave],
    ["beside it, on eyes of their own", "damper", slope((z) => across(eyes.damper, eyes.damper)(z, z))],
  ] as const)("%s adds stiffness, damping and mass, each by its own leverage squared", (_, eye, leverage) => {
    const axle = frontOf(onOneAxle(elements(eye)));
    const energy = trimmed((seat) => sum(cornerBars(seat), (zl, zr) => 0.5 * 50e3 * third(zl, zr) ** 2), 1);
    expectClose(number(axle.rates.heaveRate), heaveRate(energy), ENERGY_DIFFERENCE);
    expectClose(number(axle.rates.heaveDamping), 2.5e3 * leverage ** 2, ENERGY_DIFFERENCE);
    const { inertance } = elementIn(axle, "front.flywheel");
    expectClose(inertance?.heave ?? 0, 25 * leverage ** 2, ENERGY_DIFFERENCE);
    // One wheel by itself moves it half as far.
    expectClose(inertance?.single ?? 0, (inertance?.heave ?? 0) / 4, CLOSED_FORM);
    expectClose(number(inertance?.roll), 0, IDENTITY, 1e-12);
  });
});
