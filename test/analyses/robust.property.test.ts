/**
 * Nothing throws, nothing is NaN or infinite: whatever is left out or typed wrongly, a figure is right
 * or absent with a reason.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { kinematics } from "../../server/analyses/kinematics.js";
import { assembleAxle } from "../../server/assemble/assemble.js";
import { contextOf } from "../support/context.js";
import { analysisOf, carText, cornerSpring } from "../support/written-car.js";

const whole = carText({
  elements: `${cornerSpring}
    spring third for heave {
      rate 120 N/mm
      gap 2 mm
      between left.rocker.third and right.rocker.third
    }
    spring tied for heave {
      torsion-bar { diameter 20 mm, length 300 mm }
      twists left.rocker against right.rocker
      tie { arm (-10, 283, 560) mm }
    }
    damper diagonal for roll {
      bump { 50 mm/s: 320 N, 100 mm/s: 470 N }
      rebound { slow 6 N*s/mm, knee 50 mm/s, fast 1.5 N*s/mm }
      between left.rocker.high and right.rocker.low
    }
    anti-roll-bar arb for roll {
      torsion-bar { diameter 24 mm, bore 18 mm, length 420 mm }
      lever { pivot (-110, 346, 300) mm, axis (0, 1, 0), end (-25, 346, 295) mm }
      blade { position 3 of 5, section 8 x 30 mm, length 70 mm }
      drop-link rocker.bar
      link-spring { rate 90 N/mm, travel 3 mm }
    }
    bump-stop stop for heave and roll {
      power-law { force 1500 N, deflection 12 mm, exponent 2 }
      gap 14 mm
      between left.rocker.third and right.rocker.third
    }`,
  car: `case top { speed 200 km/h }
  expect front.heave-rate between 1 and 900 N/mm
  expect front.diagonal.heave-leak below 2 %
  expect front.left.side.motion-ratio above 0.5
  expect front.ride-height at top above 10 mm`,
});

const lines = whole.split("\n");
const numbers = [...whole.matchAll(/(?<![\w.])-?\d+(?:\.\d+)?/g)];

/** Every number in a result, with the way to it. */
function* numbersIn(value: unknown, path = ""): Generator<readonly [string, number]> {
  if (typeof value === "number") yield [path, value];
  else if (typeof value === "object" && value !== null) {
    for (const [key, inner] of Object.entries(value)) yield* numbersIn(inner, `${path}.${key}`);
  }
}

function expectSound(text: string): void {
  for (const { model } of contextOf({ "car.crank": text }, "car.crank").cars) {
    for (const [path, value] of numbersIn(analysisOf(model)))
      expect(Number.isFinite(value), `${path} is ${value}`).toBe(true);
    const { front } = model.axles;
    if (front === undefined) continue;
    const rows = kinematics(assembleAxle(front, model), [-0.05, 0, 0.3], [0, 0.02, 3]);
    for (const [path, value] of numbersIn(rows)) expect(Number.isFinite(value), `${path} is ${value}`).toBe(true);
  }
}

describe("the figures of a car", () => {
  it("are sound as it stands", () => expectSound(whole));

  it("are sound with lines left out", () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(lines.length - 1), { minLength: 1, maxLength: 8 }), (out) => {
        expectSound(lines.filter((_, i) => !out.includes(i)).join("\n"));
      }),
      { numRuns: 50 },
    );
  });

  it("are sound with numbers that make no sense", () => {
    const odd = fc.constantFrom("0", "-1", "1e9", "-1000", "0.0000001", "283", "99999999");
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(numbers.length - 1), odd), { minLength: 1, maxLength: 4 }), (changes) => {
        let text = whole;
        for (const [n, value] of [...changes].sort(([a], [b]) => b - a)) {
          const place = numbers[n];
          if (place?.index === undefined) continue;
          text = text.slice(0, place.index) + value + text.slice(place.index + place[0].length);
        }
        expectSound(text);
      }),
      { numRuns: 100 },
    );
  });
});
