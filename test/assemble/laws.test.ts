/** Force laws from their words: rates, and why there is none. */
import { describe, expect, it } from "vitest";
import type { Element } from "../../server/elements/element.js";
import { expectClose } from "../support/approx.js";
import { CLOSED_FORM } from "../support/tolerances.js";
import { carText, mechanismOf } from "../support/written-car.js";

const telescopic = "between left.rocker.third and right.rocker.third";
const twisting = "twists rocker against chassis";

function elementOf(text: string): Element {
  const found = mechanismOf(carText({ elements: text })).elements[0];
  if (found === undefined) throw new Error("no element");
  return found;
}

const springOf = (words: string, connection = telescopic): Element =>
  elementOf(`spring tried for ${connection === twisting ? "corner" : "heave"} {\n ${words}\n ${connection}\n }`);

function rateOf({ law, lawMissing }: Element, at = 0): number {
  if (law?.kind !== "spring") throw new Error(lawMissing ?? "no spring");
  return law.rate(at);
}

function forceOf({ law, lawMissing }: Element, at: number): number {
  if (law?.kind !== "spring") throw new Error(lawMissing ?? "no spring");
  return law.force(at);
}

describe("springs", () => {
  it.each([
    ["rate 120 N/mm", 120e3],
    ["coil { wire 12 mm, mean-diameter 62 mm, active-turns 5, modulus 79.5 GPa }", 172924.708805],
    ["coil { rate 85 N/mm, wire 12 mm }", 85e3],
    ["rate 140 N/mm\n tender { rate 60 N/mm, travel 15 mm }", 42e3],
  ])("%s", (words, rate) => {
    expectClose(rateOf(springOf(words), 0.001), rate, CLOSED_FORM);
  });

  it.each([
    ["torsion-bar { diameter 24 mm, length 800 mm, modulus 78.5 GPa }", 3196.13070206],
    ["torsion-bar { diameter 30 mm, bore 22 mm, length 800 mm, modulus 78.5 GPa }", 5546.37187417],
    ["torsion-bar { rate 50 N*m/deg, diameter 24 mm }", (50 * 180) / Math.PI],
    ["rate 900 N*m/rad", 900],
  ])("%s", (words, rate) => {
    expectClose(rateOf(springOf(words, twisting)), rate, CLOSED_FORM);
  });

  it("a part of the catalogue", () => {
    const text = carText({
      before: "catalogue {\n  torsion-bar TB-1 { diameter 24 mm, length 800 mm, modulus 78.5 GPa }\n}",
      elements: `spring tried for corner {\n fit TB-1\n ${twisting}\n }`,
    });
    const [element] = mechanismOf(text).elements;
    if (element === undefined) throw new Error("no element");
    expectClose(rateOf(element), 3196.13070206, CLOSED_FORM);
  });

  it("gap: nothing until it is used up, then in compression only", () => {
    const element = springOf("rate 120 N/mm\n gap 2 mm");
    expect(forceOf(element, 0.0019)).toBe(0);
    expect(forceOf(element, -0.02)).toBe(0);
    expectClose(forceOf(element, 0.003), 120, CLOSED_FORM);
  });

  it("preload and direction", () => {
    const element = springOf("rate 55 N/mm\n preload 400 N\n acts in-compression");
    expectClose(forceOf(element, 0), 400, CLOSED_FORM);
    expect(forceOf(element, -0.01)).toBe(0);
  });

  it("a curve goes through its points", () => {
    const element = springOf("curve { 0 mm: 0 N, 10 mm: 900 N, 20 mm: 2400 N }");
    expectClose(forceOf(element, 0.01), 900, CLOSED_FORM);
    expectClose(forceOf(element, 0.03), 3900, CLOSED_FORM);
  });

  it.each([
    ["", telescopic, "it has no rate"],
    ["gap 2 mm\n preload 200 N\n rate 10 N/mm", telescopic, "a gap and a preload cannot both hold at design position"],
    [
      "rate 50 N*m/deg",
      telescopic,
      "its rate is for twisting, but it is joined so that it is lengthened and shortened",
    ],
    ["rate 50 N/mm", twisting, "its rate is for lengthening and shortening, but it is joined so that it twists"],
    ["torsion-bar { diameter 20 mm }", twisting, "its torsion bar has neither a rate nor diameter and length"],
    [
      "torsion-bar { diameter 20 mm, bore 22 mm, length 100 mm }",
      twisting,
      "the bore of its torsion bar is not smaller than its diameter",
    ],
    ["curve { 5 mm: 900 N, 10 mm: 400 N }", telescopic, "its curve falls, which would be a negative rate"],
  ])("%s: says why there is no law", (words, connection, why) => {
    expect(springOf(words, connection).lawMissing).toBe(why);
  });
});

describe("bump stops", () => {
  const stopOf = (words: string) => elementOf(`bump-stop tried for heave {\n ${words}\n ${telescopic}\n }`);

  it("meet after their gap, packers taken off it", () => {
    const stop = stopOf("rate 300 N/mm\n gap 12 mm\n packer 2 mm");
    expect(forceOf(stop, 0.0099)).toBe(0);
    expectClose(forceOf(stop, 0.011), 300, CLOSED_FORM);
  });

  it("by power law", () => {
    const stop = stopOf("power-law { force 1500 N, deflection 12 mm, exponent 2 }\n gap 5 mm");
    expectClose(forceOf(stop, 0.017), 1500, CLOSED_FORM);
    expectClose(forceOf(stop, 0.011), 375, CLOSED_FORM);
    expectClose(rateOf(stop, 0.011), (2 * 375) / 0.006, CLOSED_FORM);
  });
});

describe("anti-roll bars", () => {
  const barOf = (words: string, link = "rocker.bar") =>
    elementOf(`anti-roll-bar tried for roll {\n ${words}
      lever { pivot (-138, 341, 300) mm, axis (0, 1, 0), end (-18, 341, 300) mm }
      drop-link ${link}\n }`);
  const tube = "torsion-bar { diameter 22 mm, bore 16 mm, length 700 mm, modulus 79.3 GPa }";
  const blade = (position: string) =>
    `blade { position ${position}, section 8 x 30 mm, length 120 mm, modulus 206 GPa }`;

  it.each([
    [tube, 1876.469926],
    [`${tube}\n ${blade("5 of 5")}`, 1803.45733792],
    [`${tube}\n ${blade("1 of 5")}`, 1195.72369962],
    ["rate 30 N*m/deg", (30 * 180) / Math.PI],
  ])("%s", (words, rate) => {
    expectClose(rateOf(barOf(words)), rate, CLOSED_FORM);
  });

  it("springs in the drop links are in series until they are used up", () => {
    // The link stands square on its lever: its moment arm is the lever, 120 mm.
    const bar = barOf(`rate 800 N*m/rad\n link-spring { rate 90 N/mm, travel 3 mm }`);
    const springs = (90e3 * 0.12 ** 2) / 2;
    expectClose(rateOf(bar), (800 * springs) / (800 + springs), CLOSED_FORM);
    expectClose(rateOf(bar, 1), 800, CLOSED_FORM);
  });

  it("with its drop link off does nothing, and leaves the axle's sums alone", () => {
    const bar = barOf("rate 800 N*m/rad", "off");
    expect(bar.connection?.idle).toBe("its drop links are off");
  });
});

describe("dampers", () => {
  const damperOf = (words: string) => elementOf(`damper tried for heave {\n ${words}\n ${telescopic}\n }`);
  const law = (element: Element) => {
    if (element.law?.kind !== "damper") throw new Error(element.lawMissing ?? "no damper");
    return element.law;
  };

  it("one damping", () => {
    expect(law(damperOf("damping 5 N*s/mm")).lowSpeed).toBe(5000);
  });

  it("tables, rebound entered positive", () => {
    const d = law(damperOf("bump { 50 mm/s: 320 N, 100 mm/s: 470 N }\n rebound { 50 mm/s: 410 N, 100 mm/s: 690 N }"));
    expectClose(d.force(0.1), 470, CLOSED_FORM);
    expectClose(d.force(-0.1), -690, CLOSED_FORM);
    expectClose(d.lowSpeed, (6400 + 8200) / 2, CLOSED_FORM);
  });

  it("knees", () => {
    const d = law(
      damperOf(
        "bump { slow 6 N*s/mm, knee 50 mm/s, fast 1.5 N*s/mm }\n rebound { slow 6 N*s/mm, knee 50 mm/s, fast 1.5 N*s/mm }",
      ),
    );
    expectClose(d.force(0.2), 525, CLOSED_FORM);
  });

  it("gas force pushes apart at rest", () => {
    expect(law(damperOf("damping 5 N*s/mm\n gas-force 120 N")).gasForce).toBe(120);
  });

  it("a measured curve, rebound at negative speed", () => {
    const text = carText({ elements: `damper tried for heave {\n curve from csv "bench.csv"\n ${telescopic}\n }` });
    const [element] = mechanismOf(text, {
      "bench.csv": "speed [mm/s], force [N]\n-100, -690\n-50, -410\n0, 0\n50, 320\n100, 470\n",
    }).elements;
    if (element?.law?.kind !== "damper") throw new Error(element?.lawMissing ?? "no damper");
    expectClose(element.law.force(0.05), 320, CLOSED_FORM);
    expectClose(element.law.force(-0.05), -410, CLOSED_FORM);
  });

  it.each([
    ["", "it has no damping"],
    ["bump { 50 mm/s: 320 N }", "it has no rebound"],
    ["bump { slow 6 N*s/mm }\n rebound { 50 mm/s: 320 N }", "its knee needs slow, knee and fast"],
    ["damping 5 N*m*s/deg", "its damping is for twisting, but it is joined so that it is lengthened and shortened"],
  ])("%s: says why there is no law", (words, why) => {
    expect(damperOf(words).lawMissing).toBe(why);
  });
});

describe("an inerter", () => {
  it("has its law, and no rate", () => {
    expect(elementOf(`inerter tried for heave {\n inertance 60 kg\n ${telescopic}\n }`).law).toEqual({
      kind: "inerter",
      inertance: 60,
    });
  });
});
