import { describe, expect, it } from "vitest";
import { runRules } from "../../../server/findings/run.js";
import { checkFindings } from "../../support/check-findings.js";
import { afterFix, fixesFor } from "../../support/check-fixes.js";
import { contextOfSetup, sharedCar } from "../../support/shared-car.js";

describe("unknown-unit", () => {
  it("points at the unit, and offers the one that looks like it", () => {
    const { context } = checkFindings(
      `use "shared.crank"
setup wet from wren {
  front.third.rate 48 n/mm
#                     ^^^^ error unknown-unit: "n/mm" is not a unit that is known
}
`,
      sharedCar,
    );
    const after = afterFix(context, "unknown-unit");
    expect(after.text).toContain("rate 48 N/mm\n");
    expect(after.findings).toEqual([]);
  });

  it.each([
    ["70 kph", "Write km/h"],
    ["70 KMH", "Write km/h"],
    ["20 mps", "Write m/s"],
  ])("takes %s for another spelling, not for what looks alike", (speed, title) => {
    const context = contextOfSetup(`case wet-hairpin { speed ${speed} }`);
    expect(fixesFor(context, "unknown-unit")[0]?.title).toBe(title);
  });

  it("offers units of the dimension that is due where nothing is alike", () => {
    const titles = fixesFor(contextOfSetup("front.third.rate 48 zz"), "unknown-unit").map(({ title }) => title);
    expect(titles).toContain("Write N/mm");
    expect(titles.length).toBeLessThanOrEqual(3);
  });
});

describe("missing-unit", () => {
  it("points at the number, and adds the likely unit", () => {
    const { context } = checkFindings(
      `use "shared.crank"
setup wet from wren {
  front.third.rate 48
#                  ^^ error missing-unit: "48" has no unit, so it cannot be used: a rate (force per length) is due here. Write the unit behind it, such as N/mm
}
`,
      sharedCar,
    );
    const after = afterFix(context, "missing-unit");
    expect(after.text).toContain("rate 48 N/mm\n");
    expect(after.findings).toEqual([]);
  });

  it("puts the unit behind a point as a whole", () => {
    const after = afterFix(contextOfSetup("front.wheel.centre (0, 735, 230)"), "missing-unit");
    expect(after.text).toContain("centre (0, 735, 230) mm\n");
    expect(after.findings).toEqual([]);
  });

  it("takes a fraction for the share that it is", () => {
    const context = contextOfSetup("mass-front 0.455");
    expect(fixesFor(context, "missing-unit").map(({ title }) => title)).toEqual(["Write 45.5 %", "Add %"]);
    expect(afterFix(context, "missing-unit").text).toContain("mass-front 45.5 %\n");
  });

  it("puts one unit behind the two numbers of a pair", () => {
    const after = afterFix(contextOfSetup("expect front.heave-rate between 1 and 1900"), "missing-unit");
    expect(after.text).toContain("between 1 and 1900 N/mm\n");
    expect(after.findings.filter(({ rule }) => rule === "missing-unit")).toEqual([]);
  });

  it("offers first what the file uses", () => {
    const context = contextOfSetup("front.tyre-rate 900 lbf/in", "front.third.rate 300");
    expect(fixesFor(context, "missing-unit")[0]?.title).toBe("Add lbf/in");
  });

  it("says nothing to a plain number where one is due", () => {
    expect(
      runRules(contextOfSetup("axle front {", "  damper extra for heave { fit V-22, ratio heave 0.9 }", "}")),
    ).toEqual([]);
  });
});

describe("wrong-dimension", () => {
  it("knows a pound of mass that is meant as a force", () => {
    const context = contextOfSetup("front.third.rate 300 lb/in");
    const [found] = runRules(context).filter(({ rule }) => rule === "wrong-dimension");
    expect(found?.message).toMatch(/^lb is a mass; the force is lbf, so that "lbf\/in" may be meant\./);
    expect(fixesFor(context, "wrong-dimension")[0]?.title).toBe("Write lbf/in");
    const other = runRules(contextOfSetup("front.third.rate 300 kg")).find(({ rule }) => rule === "wrong-dimension");
    expect(other?.message).toMatch(/^This is a mass/);
  });

  it("points at the value, and completes the unit", () => {
    const { context } = checkFindings(
      `use "shared.crank"
setup wet from wren {
  front.third.rate 48 N
#                  ^^^^ error wrong-dimension: a rate (force per length) is due here
}
`,
      sharedCar,
    );
    const after = afterFix(context, "wrong-dimension");
    expect(after.text).toContain("rate 48 N/mm\n");
    expect(after.findings).toEqual([]);
  });

  it("offers nothing where it is not one value with one unit", () => {
    const context = contextOfSetup("front.third.rate 48 N/mm * 2 mm");
    expect(fixesFor(context, "wrong-dimension")).toEqual([]);
  });

  it.each([
    ["front.third.rate 90 N", "This is a force, but a rate (force per length) is due here"],
    ["front.track 3 turn", "This is a number of turns, but a length is due here"],
    ["front.third.rate 3 N/mm * 2 kg", "This is a value in kg^2/s^2, but a rate (force per length) is due here"],
    ["front.third.rate 1 N/mm / (2 mm * 2 mm * 1 kg)", "This is a value in 1/m^2/s^2, but a rate"],
    ["front.third.rate 1 N/mm + 2 mm", "This is a length, but a rate (force per length) is due here"],
    ["let odd = 2 kg * 3 s + 1 mm", "This is a length, but a value in kg*s is due here"],
    ["let odd = (2 mm * 3 mm) kg*m", "This is an area, but a value in m*kg is due here"],
  ])("says in words what is there and what is due: %s", (line, words) => {
    const lines = line.startsWith("let") ? [line, "mass 545 kg + 0 * odd / odd * 1 kg"] : [line];
    const told = runRules(contextOfSetup(...lines)).map(({ message }) => message);
    expect(told.join("\n")).toContain(words);
    expect(told.join("\n")).not.toMatch(/\b(length|mass|time|angle)\^|\bany\b|torsional-rate|This is force/);
  });
});
