/** What a person reads of gas, oil and the whole car: the same figures as everywhere, in units that fit. */
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import type { FileView } from "../../server/snapshot/workspace.js";
import { hoverAt } from "../../server/views/hover.js";
import { ratesPage } from "../../server/views/rates-page.js";
import { twoAxles } from "../support/two-axles.js";
import { carText, cornerSpring } from "../support/written-car.js";

const open = (text: string): FileView => {
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  workspace.set("memory:///car.crank", text);
  return workspace.file("memory:///car.crank");
};
const hover = (text: string, at: string): string => hoverAt(open(text), text.indexOf(at) + 1)?.markdown ?? "";

const line = `hydraulic-link pitch-line for pitch {
      cylinder nose { between front.left.rocker.third and front.right.rocker.third, area 314 mm^2 }
      cylinder tail { between rear.left.rocker.third and rear.right.rocker.third, area 314 mm^2 }
      line nose to tail crossed { resistance 40 bar*s/l }
      accumulator { pressure 20 bar, volume 80 ml, exponent 1.3 }
    }`;
const third = `gas-spring third for heave {
      pressure 6 bar
      volume 30 ml
      area 314 mm^2
      between left.rocker.third and right.rocker.third
    }`;

describe("the card of", () => {
  it("a hydraulic link between the axles: areas, bar and millilitres, and the car's patterns", () => {
    const card = hover(twoAxles(line), "hydraulic-link");
    expect(card).toContain("| oil pushed out per wheel travel |");
    expect(card).toMatch(/from hardpoints \| 0 mm\^2 \| 0 mm\^2 \| 691\.\d mm\^2 \| 0 mm\^2 \|/);
    expect(card).toContain("at the car in pitch");
    expect(card).toMatch(/own rate 0\.34\d+ bar\/ml/);
    expect(card).toMatch(/oil at 20 bar above atmosphere at rest, 14\.6 bar to 30 bar over the travel/);
    expect(card).toMatch(/in the pitch pattern/);
    expect(card).toMatch(/moves -2\d\.\d ml to 2\d\.\d ml over the car's travel/);
    expect(card).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("a gas spring: its pressure beside its load, and how much of the gas is swept", () => {
    const card = hover(carText({ elements: `${cornerSpring}\n    ${third}` }), "gas-spring third");
    expect(card).toContain("static load 188.4 N");
    expect(card).toMatch(/gas at 6 bar above atmosphere at rest, 3\.76 bar to 11\.1 bar over the travel/);
    expect(card).toMatch(/sweeps 34\.4 % of the gas volume at most; next to none would be left after 93\.6 mm/);
    expect(card).not.toContain("by its length");
  });

  it("a gas spring that trims its axle: by its length", () => {
    const strut = third
      .replace("third for heave", "strut for corner")
      .replace(/between.*/, "between rocker.side and chassis (-55, 88, 385) mm");
    expect(hover(carText({ elements: strut }), "gas-spring strut")).toContain("carries the weight by its length");
  });

  it("an actuator: that static trim is no case", () => {
    const text = carText({
      elements: `${cornerSpring}\n    actuator push for heave {\n      hold { fast: 4 mm }\n      between left.rocker.third and right.rocker.third\n    }`,
      car: "case fast { speed 200 km/h }",
    });
    expect(hover(text, "actuator push")).toContain("static trim is no case");
  });
});

describe("the whole car", () => {
  const text = twoAxles(line);

  it("is told at the car's own statement, and only where there are two axles", () => {
    const card = hover(text, "car tried");
    expect(card).toContain("The whole car, about its centre of gravity");
    expect(card).toMatch(/\| pitch \| \d+ N\\?\*m\/deg \| \d+ N\\?\*m\/deg \|/);
    expect(card).toContain("what couples them");
    expect(hover(carText({}), "car tried")).not.toContain("The whole car");
  });

  it("has its sections on the page of rates, with what joins the axles", () => {
    const [car] = open(text).cars;
    if (car === undefined) throw new Error("no car");
    const { sections, reasons } = ratesPage(car);
    const titled = (start: string) => sections.find(({ title }) => title.startsWith(start));
    const body = titled("The whole car, about")?.rows ?? [];
    expect(body.map(([name]) => name)).toEqual([
      "heave",
      "pitch",
      "roll",
      "pitch with roll",
      "heave is resisted behind the centre of gravity by",
      "and left of it by",
    ]);
    expect(body.flat()).not.toContain("-");
    expect(titled("What axles and the elements between them add")?.rows.map(([name]) => name)).toEqual([
      "front axle",
      "rear axle",
      "pitch-line",
    ]);
    expect(reasons).toEqual([]);
  });

  it("says once why it has no figure", () => {
    const [car] = open(text.replace("tyre-rate 200 N/mm", "")).cars;
    if (car === undefined) throw new Error("no car");
    const { reasons } = ratesPage(car);
    expect(reasons.filter((why) => why.includes("no tyre-rate"))).toHaveLength(1);
  });
});
