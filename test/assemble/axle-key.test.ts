/** The key of an axle: it changes with every number that a figure rests on, and with nothing else. */
import { describe, expect, it } from "vitest";
import { analyseAxle } from "../../server/analyses/analyse-axle.js";
import { assembleAxle, axleKey } from "../../server/assemble/assemble.js";
import { carOf, carText, cornerSpring } from "../support/written-car.js";

const everything = carText({
  axle: "right { camber -1.2 deg }",
  elements: `${cornerSpring}
    spring third for heave {
      rate 120 N/mm
      gap 2 mm
      tender { rate 300 N/mm, travel 4 mm }
      between left.rocker.third and right.rocker.third
    }
    spring stacked for heave {
      curve { 0 mm: 0 N, 10 mm: 150 N, 20 mm: 400 N }
      preload 60 N
      between left.rocker.third and right.rocker.third
    }
    bump-stop stop for heave {
      power-law { force 1500 N, deflection 12 mm, exponent 2 }
      gap 14 mm
      packer 2 mm
      between left.rocker.third and right.rocker.third
    }
    damper diagonal for roll {
      bump { 50 mm/s: 320 N, 100 mm/s: 470 N }
      rebound { slow 6 N*s/mm, knee 50 mm/s, fast 1.5 N*s/mm }
      gas-force 20 N
      between left.rocker.high and right.rocker.low
    }
    anti-roll-bar arb for roll {
      torsion-bar { diameter 24 mm, bore 18 mm, length 420 mm }
      lever { pivot (-110, 346, 300) mm, axis (0.1, 1, 0.2), end (-25, 346, 295) mm }
      blade { position 3 of 5, soft 1 deg, stiff 89 deg, section 8 x 30 mm, length 70 mm }
      drop-link rocker.bar
      link-spring { rate 90 N/mm, travel 3 mm }
    }
    gas-spring gas for heave {
      pressure 3 bar
      volume 80 ml
      exponent 1.3
      area-curve { 0 mm: 314 mm^2, 20 mm: 300 mm^2 }
      charge-temperature 20 degC
      working-temperature 60 degC
      gap 1 mm
      between left.rocker.third and right.rocker.third
    }
    hydraulic-link line for heave {
      cylinder one { between left.rocker.third and chassis (-14, 20, 533) mm, area 20 mm^2 }
      cylinder other { between right.rocker.third and chassis (-14, -20, 533) mm, area 25 mm^2, annulus-area 21 mm^2 }
      line one to other crossed { resistance 40 bar*s/l, one-way one, bulk-modulus 1.4 GPa, volume 60 ml }
      accumulator { pressure 2 bar, volume 30 ml }
    }
    actuator push for heave {
      hold 50 N
      between left.rocker.third and right.rocker.third
    }`,
});

const keyOf = (text: string): string => {
  const car = carOf(text);
  if (car.axles.front === undefined) throw new Error("no front axle");
  return axleKey(car.axles.front, car);
};

/** Figures as text, small enough digits left out that rounding does not count. */
function figuresOf(text: string): string {
  const car = carOf(text);
  if (car.axles.front === undefined) throw new Error("no front axle");
  return JSON.stringify(analyseAxle(assembleAxle(car.axles.front, car)), (_, value: unknown) =>
    typeof value === "number" ? Number(value.toPrecision(11)) : value,
  );
}

/** The text with its n-th number made a little larger. */
function changed(text: string, place: RegExpMatchArray): string {
  const old = place[0];
  const next = `${Math.round((Number(old) + (Number.isInteger(Number(old)) ? 1 : 0.01)) * 1e6) / 1e6}`;
  return text.slice(0, place.index) + next + text.slice((place.index ?? 0) + old.length);
}

const numbers = [...everything.matchAll(/(?<![\w.])-?\d+(?:\.\d+)?/g)];

describe("the key of an axle", () => {
  it("is another one whenever a changed number changes a figure", () => {
    const [key, figures] = [keyOf(everything), figuresOf(everything)];
    let moved = 0;
    for (const place of numbers) {
      const text = changed(everything, place);
      if (figuresOf(text) === figures) continue;
      moved++;
      const line = everything.slice(0, place.index).split("\n").length;
      expect(keyOf(text), `line ${line}: ${place[0]}`).not.toBe(key);
    }
    expect(moved).toBeGreaterThan(numbers.length / 2);
  });

  it("is the same wherever the axle is written, whatever is said beside it", () => {
    const moved = everything
      .replace("car tried", "# a comment\n\n## a note\ncar tried")
      .replace("spring third", "## softer than last year\n    spring third")
      .replace("ride-height 30 mm", "ride-height 3 cm");
    expect(keyOf(moved)).toBe(keyOf(everything));
  });

  it("does not ask for what only other analyses read", () => {
    const other = everything
      .replace("cg-height 300 mm", "cg-height 310 mm")
      .replace("wheelbase 2500 mm", "wheelbase 2600 mm");
    expect(keyOf(other)).toBe(keyOf(everything));
    expect(figuresOf(other)).toBe(figuresOf(everything));
  });
});
