/** Cars on gas and oil with lines left out and with numbers that make no sense: a figure is right, or absent with a reason. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { runRules } from "../../server/findings/run.js";
import { ratesMarkdown } from "../../server/views/rates-markdown.js";
import { contextOf } from "../support/context.js";
import { twoAxles } from "../support/two-axles.js";

const whole = twoAxles(
  `hydraulic-link pitch-line for pitch {
  pressure 3 bar
  cylinder nose { between front.left.rocker.third and front.right.rocker.third, area 300 mm^2, annulus-area 250 mm^2 }
  cylinder tail { between rear.left.rocker.third and rear.right.rocker.third, area 310 mm^2, annulus-area 260 mm^2 }
  line nose to tail crossed { resistance 40 bar*s/l, one-way nose, bulk-modulus 1.4 GPa, volume 60 ml }
  line tail to nose crossed { bulk-modulus 1.4 GPa, volume 50 ml }
  }
  spring warping for warp { rate 40 N/mm, ratio warp { -30 mm: -12 mm, 0 mm: 0 mm, 30 mm: 15 mm } }
  spring along for pitch and warp { rate 300 N*m/rad, twists front.left.rocker against rear.left.rocker }
  inerter swing for pitch { inertance 40 kg, ratio pitch 0.5 }
  case fast { speed 200 km/h }`,
  `gas-spring side for corner {
      pressure 9 bar
      volume 90 ml
      exponent 1.3
      area-curve { 0 mm: 1200 mm^2, 20 mm: 900 mm^2 }
      charge-temperature 20 degC
      working-temperature 60 degC
      between rocker.side and chassis (-55, 88, 385) mm
    }
    gas-spring third for heave {
      curve { 0 mm: 1200 N, 10 mm: 1500 N, 20 mm: 1100 N }
      gap 2 mm
      between left.rocker.third and right.rocker.third
    }
    hydraulic-link roll-line for roll {
      cylinder l { between left.rocker.side and chassis (-55, 88, 385) mm, area 300 mm^2 }
      cylinder r { between right.rocker.side and chassis (-55, -88, 385) mm, area 300 mm^2 }
      line l to r crossed { resistance 30 bar*s/l }
      line r to l crossed { bulk-modulus 1.2 GPa, volume 40 ml }
      accumulator { pressure 8 bar, volume 60 ml, exponent 1.4, working-temperature 50 degC }
    }
    actuator push for heave {
      hold { fast: 4 mm }
      between left.rocker.third and right.rocker.third
    }`,
);

const lines = whole.split("\n");
const numbers = [...whole.matchAll(/(?<![\w.])-?\d+(?:\.\d+)?/g)];
/** Numbers that belong to what is tried here, rather than to the linkage. */
const ours = numbers.filter(({ index }) => {
  const line = whole.slice(whole.lastIndexOf("\n", index), whole.indexOf("\n", index));
  return /area|volume|pressure|exponent|temperature|curve|gap|resistance|modulus|hold|ratio|rate|inertance/.test(line);
});

function* numbersIn(value: unknown, path = ""): Generator<readonly [string, number]> {
  if (typeof value === "number") yield [path, value];
  else if (typeof value === "object" && value !== null) {
    for (const [key, inner] of Object.entries(value)) yield* numbersIn(inner, `${path}.${key}`);
  }
}

function expectSound(text: string): void {
  const context = contextOf({ "car.crank": text }, "car.crank");
  for (const car of context.cars) {
    for (const [path, value] of numbersIn(car.analysis))
      expect(Number.isFinite(value), `${path} is ${value}`).toBe(true);
    expect(ratesMarkdown(car)).not.toMatch(/NaN|Infinity|undefined/);
  }
  const broken = runRules(context).filter(
    ({ rule, message }) => rule === "internal-error" || /NaN|Infinity|undefined/.test(message),
  );
  expect(broken.map(({ message }) => message)).toEqual([]);
}

describe("a car on gas and oil", () => {
  it("is sound as it stands, and computed", () => {
    expectSound(whole);
    const [car] = contextOf({ "car.crank": whole }, "car.crank").cars;
    expect(car?.analysis.problems).toEqual([]);
    expect(car?.analysis.modal.springs.body.heave).toBeGreaterThan(0);
    expect(car?.analysis.elements.map(({ path }) => path)).toEqual(["pitch-line", "warping", "along", "swing"]);
  });

  it("is sound with lines left out", () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(lines.length - 1), { minLength: 1, maxLength: 8 }), (out) => {
        expectSound(lines.filter((_, i) => !out.includes(i)).join("\n"));
      }),
      { numRuns: 60 },
    );
  });

  it("is sound with numbers that make no sense", () => {
    const odd = fc.constantFrom("0", "-1", "1e9", "-1000", "0.0000001", "99999999", "-274", "1e12", "1e-12");
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(ours.length - 1), odd), { minLength: 1, maxLength: 4 }), (changes) => {
        let text = whole;
        for (const [n, value] of [...changes].sort(([a], [b]) => b - a)) {
          const place = ours[n];
          if (place === undefined) continue;
          text = text.slice(0, place.index) + value + text.slice(place.index + place[0].length);
        }
        expectSound(text);
      }),
      { numRuns: 150 },
    );
  });
});
