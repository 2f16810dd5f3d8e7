/** Sides that are not mirror images: which line makes them so, and both ways to make them alike. */
import { describe, expect, it } from "vitest";
import { fixesOf, runRules } from "../../../../server/findings/run.js";
import { axle, axleWith, carWith, checked, found, setup, underlined } from "../../../support/axle-car.js";
import { checkFindings } from "../../../support/check-findings.js";
import { afterFix } from "../../../support/check-fixes.js";
import { contextOf } from "../../../support/context.js";
import { brokenSamples } from "../../../support/shared-car.js";

const asymmetries = (text: string, car: string = axle) =>
  runRules(checked(text, car)).filter(({ rule }) => rule === "asymmetry");
const oneSided = (...lines: readonly string[]) =>
  axle.replace("    spring corner-bar", `${lines.map((line) => `    ${line}\n`).join("")}    spring corner-bar`);
const bare = 'use "axle.crank"\n\nsetup trial from plover {\n}\n';

describe("asymmetry", () => {
  it("tells both sides' values at the one-sided line", () => {
    const { findings } = checkFindings(
      `use "axle.crank"
setup trial from plover {
  front.left.side.damping 2.9 N*s/mm
# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ information asymmetry: front side damping is 2.9 N*s/mm on the left and 2.4 N*s/mm on the right.
}
`,
      brokenSamples,
    );
    expect(findings[0]?.related.map(({ origin }) => origin.uri.split("/").at(-1))).toEqual(["axle.crank"]);
  });

  it.each([
    [
      "a wheel's figure",
      "front.right.wheel.camber -2.2 deg",
      "-2.2 deg",
      "front camber is -2 deg on the left and -2.2 deg on the right",
    ],
    [
      "the wheel's centre",
      "front.left.wheel.centre (0, 732, 230) mm",
      "(0, 732, 230) mm",
      "front wheel centre is (0, 732, 230) mm on the left",
    ],
    ["a joint", "front.right.track-rod.inner (95, -186, 151) mm", "(95, -186, 151) mm", "front track-rod inner is"],
    ["the rocker's axis", "front.right.rocker.axis (1, 0.02, 0)", "(1, 0.02, 0)", "front rocker axis is"],
    ["an eye", "front.left.rocker.side (-45, 208, 464) mm", "(-45, 208, 464) mm", "front rocker eye side is"],
    [
      "a corner element's end",
      "front.left.side.between rocker.side and chassis (-45, 46, 466) mm",
      undefined,
      "front side between differs between the left and the right",
    ],
    [
      "a word that one side alone has",
      "front.left.corner-bar.gap 1 deg",
      undefined,
      "front corner-bar gap is 1 deg on the left and not given on the right",
    ],
    [
      "an element that one side has not",
      "remove front.left.side",
      undefined,
      "front side is not there on the left and there on the right",
    ],
  ])("sees %s", (_what, line, place, words) => {
    const context = checked(setup("mass 545 kg", line, "front.ride-height 31 mm"));
    const here = runRules(context).filter(({ rule }) => rule === "asymmetry");
    expect(here.map((finding) => underlined(context, finding))).toEqual([place ?? line]);
    expect(here[0]?.message).toContain(words);
  });

  it("names the part alone where another one is fitted on one side", () => {
    const parts = `catalogue {
  valving V-1 {
    bump { 50 mm/s: 120 N, 100 mm/s: 190 N }
    rebound { 50 mm/s: 150 N, 100 mm/s: 260 N }
  }
  valving V-2 {
    bump { 50 mm/s: 160 N, 100 mm/s: 240 N }
    rebound { 50 mm/s: 160 N, 100 mm/s: 240 N }
  }
}

`;
    const fitted = parts + carWith(["damping 2.4 N*s/mm", "fit V-1"]);
    const [finding, more] = asymmetries(setup("front.left.side.fit V-2"), fitted);
    expect(more).toBeUndefined();
    expect(finding?.message).toContain("front side fit is V-2 on the left and V-1 on the right");
  });

  it("is content with axes that are drawn the other way round, and with eyes that one side alone has", () => {
    expect(found(setup("front.right.rocker.axis (-1, 0, 0)"))).toEqual([]);
    expect(found(setup("front.right.rocker.eye spare (0, -190, 450) mm"))).toEqual([]);
    expect(found(setup("front.wheel.camber -2.2 deg"))).toEqual([]);
  });

  it("is told with the car and not again with a set-up that inherits it", () => {
    const car = oneSided("right.wheel.camber -2.2 deg");
    const files = { ...brokenSamples, "axle.crank": car, "trial.crank": setup("mass 545 kg") };
    expect(runRules(contextOf(files, "axle.crank")).map(({ rule }) => rule)).toEqual(["asymmetry"]);
    expect(runRules(contextOf(files, "trial.crank"))).toEqual([]);
    expect(found(setup("front.left.wheel.camber -2.1 deg"), car)).toEqual(["information asymmetry"]);
  });

  it("stands at the one-sided line wherever that is in the text", () => {
    const bar = axleWith(
      "anti-roll-bar bar for roll {",
      "  torsion-bar { diameter 18 mm, bore 12 mm, length 380 mm }",
      "  lever { pivot (70, 222, 296) mm, axis (0, 1, 0), end (0, 222, 296) mm }",
      "  drop-link rocker.third",
      "}",
    ).replace(
      "    spring corner-bar",
      "    right { bar.lever { pivot (70, -222, 296) mm, axis (0, 1, 0), end (6, -222, 296) mm } }\n    spring corner-bar",
    );
    const context = checked(bar);
    const here = runRules(context).filter(({ rule }) => rule === "asymmetry");
    expect(here.map((finding) => underlined(context, finding))).toEqual(["(6, -222, 296) mm"]);
  });

  it("speaks the author's unit", () => {
    const [finding] = asymmetries(setup("front.right.rocker.side (-1.7717, -8.2, 18.2283) in"));
    expect(finding?.message).toContain(
      "is (-45, 208, 463) mm on the left and (-1.7717, -8.2, 18.2283) in on the right",
    );
  });
});

describe("the fixes of an asymmetry", () => {
  it("take the one-sided line out, notes and all, first", () => {
    const context = checked(setup("## softer here", "front.left.side.damping 2.9 N*s/mm"));
    const after = afterFix(context, "asymmetry");
    expect(after.fix.title).toBe("Mirror the right side: take the left side's own line out");
    expect(after.text).toBe(bare);
    expect(after.fix.safe).toBe(false);
  });

  it.each([
    ["front.left.side.damping 2.9 N*s/mm", "front.side.damping 2.9 N*s/mm"],
    ["front.right.rocker.roll-low (45, -175, 348.5) mm", "front.rocker.roll-low (45, 175, 348.5) mm"],
    ["front.right.track-rod.inner (95, -186, 151) mm", "front.track-rod.inner (95, 186, 151) mm"],
    ["front { right { wheel { camber -2.2 deg } } }", "front.wheel.camber -2.2 deg"],
    ["axle front { left { rocker { eye side (-45, 208, 464) mm } } }", "front.rocker.side (-45, 208, 464) mm"],
  ])("give both sides what a set-up says of one: %s", (line, both) => {
    const after = afterFix(checked(setup(line)), "asymmetry", "the same");
    expect(after.text).toBe(setup(both));
    expect(after.findings).toEqual([]);
  });

  it("keep what else stands in the block", () => {
    const lines = [
      "front {",
      "  right {",
      "    wheel { camber -2.2 deg }",
      "    rocker { eye side (-45, -208, 464) mm }",
      "  }",
      "}",
    ];
    const context = checked(setup(...lines));
    const [camber] = runRules(context);
    const [mirrored, same] = camber === undefined ? [] : fixesOf(camber, context);
    expect(mirrored?.edits).toHaveLength(1);
    const after = context.retry((same?.edits ?? []).map(({ uri, span, newText }) => ({ uri, ...span, newText })));
    expect(after.text).toContain("front.wheel.camber -2.2 deg");
    expect(after.text).toContain("eye side (-45, -208, 464) mm");
    expect(runRules(after).map(({ message }) => message.slice(0, 21))).toEqual(["front rocker eye side"]);
  });

  it.each([
    ["right.wheel.camber -2.2 deg", "camber -2 deg", "camber -2.2 deg"],
    ["right { rocker { eye side (-45, -208, 464) mm } }", "eye side (-45, 208, 463) mm", "eye side (-45, 208, 464) mm"],
    ["left { side { damping 2.9 N*s/mm } }", "damping 2.4 N*s/mm", "damping 2.9 N*s/mm"],
  ])("give both sides of a car what it says of one: %s", (line, from, to) => {
    const context = checked(oneSided(line));
    expect(afterFix(context, "asymmetry").text).toBe(axle);
    const after = afterFix(context, "asymmetry", "the same");
    expect(after.text).toBe(axle.replace(from, to));
    expect(after.findings).toEqual([]);
  });

  it("give one line in place of two where each side has its own", () => {
    const context = checked(
      setup("front.left.wheel.camber -2.1 deg", "mass 545 kg", "front.right.wheel.camber -2.2 deg"),
    );
    const after = afterFix(context, "asymmetry", "the same");
    expect(after.text).toBe(setup("mass 545 kg", "front.wheel.camber -2.2 deg"));
    expect(after.findings).toEqual([]);
  });

  it("keep apart what would run into each other", () => {
    const line = "front { left { wheel { camber -2.1 deg } }, right { wheel { camber -2.2 deg } } }";
    const context = checked(setup(line));
    const [finding] = runRules(context).filter(({ rule }) => rule === "asymmetry");
    const fixes = finding === undefined ? [] : fixesOf(finding, context);
    for (const { title } of fixes) expect(afterFix(context, "asymmetry", title).findings).toEqual([]);
  });

  it("leave alone what is worked out from names on the right side", () => {
    const context = checked(`let low = 464 mm\n\n${oneSided("right.rocker.side (-45 mm, -208 mm, low)")}`);
    const [finding] = runRules(context).filter(({ rule }) => rule === "asymmetry");
    const titles = finding === undefined ? [] : fixesOf(finding, context).map(({ title }) => title);
    expect(titles).toEqual(["Mirror the left side: take the right side's own line out"]);
  });
});
