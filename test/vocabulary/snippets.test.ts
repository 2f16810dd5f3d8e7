/** Each snippet, taken as it is proposed, stands in a car as if it had been written there: laid out, and without an error. */
import { describe, expect, it } from "vitest";
import snippets from "../../client/snippets.json" with { type: "json" };
import { format } from "../../grammar/format.js";
import { words } from "../../grammar/vocabulary/index.js";
import { runRules } from "../../server/findings/run.js";
import { contextOf } from "../support/context.js";

const all = Object.entries(snippets).map(([title, { prefix, body }]) => ({
  title,
  prefix,
  text: body.join("\n").replace(/\$\{\d+:((?:\\.|[^}\\])*)\}|\$0/g, "$1"),
}));
const textOf = (title: string): string => all.find((one) => one.title === title)?.text ?? "";
const roleOf = (prefix: string): ReadonlySet<string> =>
  new Set(words.filter(({ word }) => word === prefix).map(({ role }) => role));

const indented = (text: string, by: number): string => text.replace(/^(?=.)/gm, " ".repeat(by));

const parts = ["valving", "torsion-bar", "coil", "blade"].map(textOf).join("\n");

/** A car with every eye and part that the snippets speak of, and a place for lines of an axle, of the car and of the file. */
const host = ({ axle = "", car = "", file = "", catalogue = "" }): string => `catalogue {
${indented([parts, catalogue].filter((text) => text !== "").join("\n"), 2)}
}
${file === "" ? "" : `\n${file}\n`}
car host "Host" {
  wheelbase 2500 mm
  mass 600 kg
  mass-front 45 %
  cg-height 300 mm

  case top-speed { speed 180 km/h }
${car === "" ? "" : `\n${indented(car, 2)}\n`}
${[axleText("front", 0, axle), axleText("rear", -2500, "")].join("\n\n")}
}
`;

const point = (x: number, y: number, z: number): string => `(${x}, ${y}, ${z}) mm`;

function axleText(name: string, x: number, more: string): string {
  return indented(
    `axle ${name} {
  track 1450 mm
  travel -20 .. 20 mm

  wheel {
    centre ${point(x, 725, 290)}
    unsprung-mass 18 kg
  }

  linkage {
    lower-wishbone { fore ${point(x + 150, 195, 104)}, aft ${point(x - 160, 195, 106)}, outer ${point(x + 5, 680, 110)} }
    upper-wishbone { fore ${point(x + 130, 240, 302)}, aft ${point(x - 145, 240, 294)}, outer ${point(x - 10, 652, 342)} }
    track-rod { inner ${point(x + 95, 190, 153)}, outer ${point(x + 105, 670, 170)} }
    push-rod on lower-wishbone { outer ${point(x, 634, 130)}, inner ${point(x, 230, 438)} }
    rocker {
      pivot ${point(x, 195, 402)}
      axis (1, 0, 0)
      eye side ${point(x - 45, 212, 464)}
      eye third ${point(x, 196, 458)}
      eye bar ${point(x, 226, 398)}
      eye roll-high ${point(x, 196, 454)}
      eye roll-low ${point(x, 196, 348)}
    }
  }

  spring carrying for corner {
    rate 40 N/mm
    between rocker.side and chassis ${point(x - 45, 50, 468)}
  }${more === "" ? "" : `\n${indented(more, 2)}`}
}`,
    2,
  );
}

const errorsIn = (text: string): readonly string[] =>
  runRules(contextOf({ "host.crank": text }, "host.crank"))
    .filter(({ severity }) => severity === "error")
    .map(({ rule, message }) => `${rule}: ${message}`);

describe("snippets", () => {
  it("have a host without errors that is laid out as the formatter does it", () => {
    expect(errorsIn(host({}))).toEqual([]);
    expect(format(host({}))).toBe(host({}));
  });

  it("exist for every element and every part", () => {
    const named = words.filter(({ role }) => role === "element" || role === "part").map(({ word }) => word);
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((word) => !all.some(({ prefix }) => prefix === word))).toEqual([]);
  });

  const elements = all.filter(({ prefix, title }) => roleOf(prefix).has("element") && !title.includes("(catalogue)"));

  it.each(elements)("$title stands in a car without an error, laid out", ({ text, prefix }) => {
    const isOfCar = prefix === "hydraulic-link";
    const whole = isOfCar ? host({ car: text }) : host({ axle: text });
    expect(errorsIn(whole)).toEqual([]);
    expect(format(whole)).toBe(whole);
  });

  const inCatalogue = all.filter(
    ({ prefix, title }) =>
      roleOf(prefix).has("part") && (!roleOf(prefix).has("element") || title.includes("(catalogue)")),
  );

  it.each(inCatalogue)("$title stands in a catalogue without an error, laid out", ({ text }) => {
    const whole = parts.includes(text) ? host({}) : host({ catalogue: text });
    expect(errorsIn(whole)).toEqual([]);
    expect(format(whole)).toBe(whole);
  });

  it.each(["case", "expect", "checks"])("%s stands in a car without an error, laid out", (title) => {
    const whole = host({ car: textOf(title) });
    expect(errorsIn(whole)).toEqual([]);
    expect(format(whole)).toBe(whole);
  });

  it("of a catalogue is a file without an error, laid out", () => {
    expect(errorsIn(`${textOf("catalogue")}\n`)).toEqual([]);
    expect(format(`${textOf("catalogue")}\n`)).toBe(`${textOf("catalogue")}\n`);
  });

  it("of a whole car is a file without an error, laid out", () => {
    expect(errorsIn(`${textOf("car")}\n`)).toEqual([]);
    expect(format(`${textOf("car")}\n`)).toBe(`${textOf("car")}\n`);
  });

  it("leave no number of a unit and no path without a stop", () => {
    const bodies = Object.values(snippets).map(({ body }) => body.join("\n"));
    expect(bodies.filter((body) => /\^\$\{/.test(body))).toEqual([]);
    const withoutStops = bodies.map((body) => body.replace(/\$\{[^}]*\}/g, ""));
    expect(withoutStops.filter((body) => /[a-z]\.[a-z]/.test(body.replace(/"[^"]*"/g, "")))).toEqual([]);
  });
});
