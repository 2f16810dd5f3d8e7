/** What a mechanism does wrong: found where it is, told once, and mended so that the check passes. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../server/findings/run.js";
import { contextOf } from "../../support/context.js";
import { checkFindings } from "../../support/check-findings.js";
import { afterFix, fixesFor } from "../../support/check-fixes.js";
import { brokenSamples } from "../../support/shared-car.js";

const axle = brokenSamples["axle.crank"] as string;
const setup = (...lines: readonly string[]): string =>
  `use "axle.crank"\n\nsetup trial from plover {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;
const checked = (text: string) => contextOf({ ...brokenSamples, "trial.crank": text }, "trial.crank");
const found = (text: string) => runRules(checked(text)).map(({ rule, severity }) => `${severity} ${rule}`);
/** The car itself, changed. */
const car = (from: string, to: string): string => {
  expect(axle).toContain(from);
  return axle.replace(from, to);
};

describe("coupling", () => {
  const leaking = car("eye roll-low (45, 175, 348) mm", "eye roll-low (45, 180, 356) mm");

  it("stands at the element's name, with its eyes beside", () => {
    const { findings } = checkFindings(
      leaking.replace(
        "    damper roll-damper for roll {\n",
        "    damper roll-damper for roll {\n#          ^^^^^^^^^^^ warning coupling: roll-damper is for roll, but heave moves it too\n",
      ),
    );
    expect(findings[0]?.related.map(({ message }) => message)).toEqual([
      "The eye roll-high that it is joined to",
      "The eye roll-low that it is joined to",
    ]);
  });

  it("is information above 2 % and a warning above 5 %, as practice has it", () => {
    expect(found(setup("front.rocker.roll-low (45, 181, 348) mm"))).toEqual(["information coupling"]);
    expect(found(setup("front.rocker.roll-low (45, 193, 348) mm"))).toEqual(["warning coupling"]);
  });

  it("takes other limits from the file", () => {
    const limits = (information: number, warning: number) =>
      `checks { leak { information ${information} %, warning ${warning} % } }`;
    expect(found(setup("front.rocker.roll-low (45, 183, 348) mm", limits(10, 20)))).toEqual([]);
    expect(found(setup("front.rocker.roll-low (45, 183, 348) mm", limits(1, 20)))).toEqual(["information coupling"]);
  });

  it("is told with the car and not again with a set-up that inherits it", () => {
    const files = {
      "car.crank": leaking,
      "trial.crank": 'use "car.crank"\n\nsetup trial from plover {\n  mass 545 kg\n}\n',
    };
    expect(runRules(contextOf(files, "trial.crank"))).toEqual([]);
    expect(runRules(contextOf(files, "car.crank")).map(({ rule }) => rule)).toEqual(["coupling"]);
  });

  it("moves an eye: first order to nothing, own motion within a tenth, the check passes", () => {
    const context = checked(leaking);
    const before = context.cars[0]?.analysis.axles.front?.elements.find(({ path }) => path === "front.roll-damper");
    const moves = fixesFor(context, "coupling").filter(({ title }) => title.startsWith("Move eye"));
    expect(moves.length).toBeGreaterThan(0);
    for (const { title } of moves) {
      const { findings, context: after } = afterFix(context, "coupling", title);
      expect(findings).toEqual([]);
      const element = after.cars[0]?.analysis.axles.front?.elements.find(({ path }) => path === "front.roll-damper");
      expect(rollOf(element) / rollOf(before)).toBeGreaterThan(0.9);
      expect(rollOf(element) / rollOf(before)).toBeLessThan(1.1);
      expect(Math.abs(heaveOf(element))).toBeLessThan(1e-3 * Math.abs(rollOf(element)));
    }
  });

  it("names the others on the eye, and offers an eye of its own", () => {
    const shared = leaking.replace(
      "    damper roll-damper for roll {",
      "    inerter roll-inerter for roll {\n      inertance 20 kg\n      between left.rocker.roll-high and right.rocker.roll-low\n    }\n    damper roll-damper for roll {",
    );
    const context = checked(shared);
    const damper = runRules(context).find(({ message }) => message.startsWith("roll-damper"));
    expect(damper).toBeDefined();
    const titles = fixesFor(context, "coupling").map(({ title }) => title);
    expect(titles.some((title) => /with it$/.test(title))).toBe(true);
    const own = titles.find((title) => title.includes("an eye of its own"));
    expect(own).toBeDefined();
    const after = afterFix(context, "coupling", "an eye of its own");
    expect(after.text).toMatch(/eye roll-(low|high)-roll-inerter \(45, /);
    expect(after.findings.map(({ message }) => message.split(" ")[0])).toEqual(["roll-damper"]);
  });

  it("says what it is for where both modes are meant", () => {
    const after = afterFix(checked(leaking), "coupling", "for roll and heave");
    expect(after.text).toContain("damper roll-damper for roll and heave {");
    expect(after.findings).toEqual([]);
  });

  it("writes inches where the author does", () => {
    const inch = leaking.replace("eye roll-low (45, 180, 356) mm", "eye roll-low (1.7717, 7.0866, 14.0157) in");
    const after = afterFix(checked(inch), "coupling", "Move eye roll-low");
    expect(after.text).toMatch(/eye roll-low \(1\.7717, \d\.\d{2,4}, \d+\.\d{2,4}\) in/);
    expect(after.findings).toEqual([]);
  });

  it("never replaces what the author wrote with names", () => {
    const named = leaking.replace(
      "        eye roll-low (45, 180, 356) mm",
      "        eye roll-low (45, 170 + 10, 356) mm",
    );
    const titles = fixesFor(checked(named), "coupling").map(({ title }) => title);
    expect(titles.some((title) => title.startsWith("Move eye roll-low"))).toBe(false);
    expect(titles.some((title) => title.startsWith("Move eye roll-high"))).toBe(true);
  });

  it("mirrors a side that was changed alone", () => {
    const context = checked(setup("front.right.rocker.roll-low (45, -183, 348) mm"));
    const after = afterFix(context, "coupling", "Mirror the left side's eye roll-low again");
    expect(after.findings.filter(({ rule }) => rule === "coupling")).toEqual([]);
    expect(after.text).not.toContain("roll-low");
  });

  it("keeps the move in the plane of a skewed rocker", () => {
    const skewed = leaking.replace("axis (1, 0, 0)", "axis (1, 0.05, -0.02)");
    const context = checked(skewed);
    if (!runRules(context).some(({ rule }) => rule === "coupling")) throw new Error("the skewed rocker does not leak");
    const after = afterFix(context, "coupling", "Move both eyes");
    const moved = /eye roll-low \(([^,]*), ([^,]*), ([^,]*)\) mm/.exec(after.text)?.slice(1).map(Number) as number[];
    const along =
      (((moved[0] ?? 0) - 45) * 1 + ((moved[1] ?? 0) - 180) * 0.05 - ((moved[2] ?? 0) - 356) * 0.02) /
      Math.hypot(1, 0.05, 0.02);
    expect(Math.abs(along)).toBeLessThan(0.01);
  });
});

type Element = { readonly sensitivity: unknown } | undefined;
const motionOf = (element: Element): { heave: number; roll: number } =>
  element?.sensitivity as { heave: number; roll: number };
const rollOf = (element: Element): number => motionOf(element).roll;
const heaveOf = (element: Element): number => motionOf(element).heave;

describe("needless-claim", () => {
  it("says which mode moves it instead, and offers to say so", () => {
    const like = car(
      "left.rocker.roll-high and right.rocker.roll-low",
      "left.rocker.roll-high and right.rocker.roll-high",
    );
    const context = checked(like);
    const [finding] = runRules(context);
    expect(finding?.message).toContain("it is moved in heave");
    expect(like.slice(finding?.span.start, finding?.span.end)).toBe("roll");
    const after = afterFix(context, "needless-claim");
    expect(after.text).toContain("damper roll-damper for heave {");
    expect(after.findings.filter(({ rule }) => rule === "needless-claim")).toEqual([]);
  });

  it("takes out the one of two claims that is idle", () => {
    const both = car("spring third for heave", "spring third for heave and roll");
    expect(afterFix(checked(both), "needless-claim").text).toContain("spring third for heave {");
  });
});

describe("unserved-mode", () => {
  it("asks for a spring and a damper in heave and in roll", () => {
    expect(found(setup("remove front.side", "remove front.roll-damper"))).toEqual([
      "warning unserved-mode",
      "warning unserved-mode",
    ]);
    const [noSpring] = runRules(checked(setup("remove front.corner-bar", "front.third.gap 0 mm"))).filter(
      ({ rule }) => rule === "unserved-mode",
    );
    expect(noSpring?.message).toContain("no spring that works in roll");
  });

  it("is content with heave and roll elements alone", () => {
    const mixed = axle
      .replace(/ {4}spring corner-bar[\s\S]*?\n {4}\}\n/, "")
      .replace(/ {4}damper side[\s\S]*?\n {4}\}\n/, "")
      .replace("    trim by corner-bar\n", "    trim by third\n")
      .replace(
        "    damper roll-damper",
        "    spring roll-coil for roll {\n      rate 40 N/mm\n      between left.rocker.roll-high and right.rocker.roll-low\n    }\n    damper heave-damper for heave {\n      damping 2 N*s/mm\n      between left.rocker.third and right.rocker.third\n    }\n    damper roll-damper",
      );
    expect(found(mixed).filter((line) => line.includes("unserved-mode"))).toEqual([]);
  });
});

describe("travel", () => {
  it("that a link cannot reach names the link and where it binds, and is shortened", () => {
    const context = checked(setup("front.travel -150 .. 25 mm"));
    const [finding] = runRules(context);
    expect(finding).toMatchObject({ rule: "unreachable-travel", severity: "error" });
    expect(finding?.message).toMatch(/push-rod binds at -84\.\d+ mm/);
    const after = afterFix(context, "unreachable-travel");
    expect(after.text).toMatch(/front\.travel -8[23] \.\. 2[45] mm/);
    expect(after.findings.filter(({ rule }) => rule === "unreachable-travel")).toEqual([]);
  });

  it("near a toggle is information, nearer a warning", () => {
    const near = (travel: number) => found(setup("remove front.roll-damper", `front.travel ${travel} .. 25 mm`));
    expect(near(-28)).toEqual([]);
    expect(near(-82)).toEqual(["information near-toggle"]);
    expect(near(-84)).toEqual(["warning near-toggle"]);
  });
});

describe("asymmetry", () => {
  it("tells both sides' values at the one-sided line, and mirrors again", () => {
    const context = checked(setup("front.left.side.damping 2.9 N*s/mm"));
    const [finding] = runRules(context);
    expect(finding).toMatchObject({ rule: "asymmetry", severity: "information" });
    expect(finding?.message).toContain("2.9 N*s/mm on the left and 2.4 N*s/mm on the right");
    expect(afterFix(context, "asymmetry").text).toBe('use "axle.crank"\n\nsetup trial from plover {\n}\n');
  });

  it("sees a point of the linkage and a wheel", () => {
    expect(found(setup("front.right.wheel.camber -2.2 deg"))).toEqual(["information asymmetry"]);
    expect(found(setup("front.right.linkage.track-rod.inner (95, -186, 151) mm"))).toContain("information asymmetry");
    expect(found(setup("front.wheel.camber -2.2 deg"))).toEqual([]);
  });
});

describe("missed-expectation", () => {
  it("tells what is, what was wanted and by how much it misses", () => {
    const [finding] = runRules(checked(setup("expect front.heave-rate above 900 N/mm")));
    expect(finding).toMatchObject({ rule: "missed-expectation", severity: "warning" });
    expect(finding?.message).toMatch(
      /^front\.heave-rate is 1[\d.]+ N\/mm, but trial is expected to have it above 900 N\/mm, 7[\d.]+ N\/mm away/,
    );
  });

  it("of the car is shown at the set-up that misses it", () => {
    const wants = axle.replace(/\}\n$/, "  expect front.heave-rate above 120 N/mm\n}\n");
    const files = {
      "car.crank": wants,
      "soft.crank": 'use "car.crank"\n\nsetup soft from plover {\n  front.third.rate 5 N/mm\n}\n',
    };
    expect(runRules(contextOf(files, "car.crank"))).toEqual([]);
    const [finding] = runRules(contextOf(files, "soft.crank"));
    expect(finding?.rule).toBe("missed-expectation");
    expect(finding?.related[0]?.origin.uri).toMatch(/car\.crank$/);
  });

  it("about an element that the set-up removes is no error", () => {
    const wants = axle.replace(/\}\n$/, "  expect front.roll-damper.heave-leak below 2 %\n}\n");
    const files = {
      "car.crank": wants,
      "soft.crank": 'use "car.crank"\n\nsetup soft from plover {\n  remove front.roll-damper\n}\n',
    };
    expect(runRules(contextOf(files, "soft.crank")).filter(({ severity }) => severity === "error")).toEqual([]);
  });
});

describe("unbuildable", () => {
  it("says what contradicts itself, and the rest is computed", () => {
    const context = checked(setup("front.corner-bar.torsion-bar.bore 14 mm"));
    const [finding] = runRules(context);
    expect(finding).toMatchObject({ rule: "unbuildable", severity: "error" });
    const damper = context.cars[0]?.analysis.axles.front?.elements.find(({ path }) => path === "front.roll-damper");
    expect(rollOf(damper)).toBeLessThan(-1);
  });
});
