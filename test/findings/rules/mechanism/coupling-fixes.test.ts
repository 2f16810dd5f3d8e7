/** The computed fixes of a coupled element: each is applied and the check made again. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "../../../../grammar/index.js";
import { connectionProbe, withEyeMoved } from "../../../../server/assemble/eye-probe.js";
import { elementAt } from "../../../../server/findings/axle-parts.js";
import type { RuleContext } from "../../../../server/findings/context.js";
import { claimedMotion, leakOverTravel, unclaimedMotion } from "../../../../server/findings/coupling/motion.js";
import { applyEdits } from "../../../../server/findings/edits.js";
import { runRules } from "../../../../server/findings/run.js";
import { convertUnits } from "../../../../server/views/convert-units.js";
import type { Vec3 } from "../../../../server/maths/vec3.js";
import { axle, axleWith, carWith, checked, figuresOf, motionOf, setup } from "../../../support/axle-car.js";
import { type AfterFix, afterFix, fixesFor } from "../../../support/check-fixes.js";
import { contextOf, isFormatted, uriOf } from "../../../support/context.js";
import { brokenSamples } from "../../../support/shared-car.js";
import { NEAREST_EYE } from "../../../support/tolerances.js";

const DAMPER = "front.roll-damper";
const leaking = carWith(["eye roll-low (45, 175, 348) mm", "eye roll-low (45, 180, 356) mm"]);
const titles = (context: RuleContext): readonly string[] => fixesFor(context, "coupling").map(({ title }) => title);
const left = ({ findings }: AfterFix): readonly string[] => findings.map(({ rule }) => rule);

/** The eye as it is written in a text, in its own unit. */
function eyeIn(text: string, name: string): readonly number[] {
  const match = new RegExp(`(?:eye |\\.)${name} \\(([^)]*)\\)`).exec(text);
  if (match?.[1] === undefined) throw new Error(`no eye ${name}`);
  return match[1].split(",").map(Number);
}

describe("moving an eye", () => {
  it("takes the first order to nothing, keeps the own motion within a tenth, and passes the check", () => {
    const context = checked(leaking);
    const moves = titles(context).filter((title) => title.startsWith("Move eye"));
    expect(moves).toHaveLength(2);
    for (const title of moves) {
      const after = afterFix(context, "coupling", title);
      expect(after.findings).toEqual([]);
      expect(isFormatted(after.text)).toBe(true);
      const { heave, roll } = motionOf(after.context, DAMPER);
      expect(Math.abs(heave / roll)).toBeLessThan(1e-3);
      expect(roll / motionOf(context, DAMPER).roll).toBeGreaterThan(0.9);
      expect(roll / motionOf(context, DAMPER).roll).toBeLessThan(1.1);
      expect(figuresOf(after.context, DAMPER).leak).toMatchObject({
        finite: expect.toSatisfy((f: number) => f < 0.02),
      });
    }
  });

  it("offers the smaller move first, as the preferred one, in a title that says how far and where to", () => {
    const fixes = fixesFor(checked(leaking), "coupling");
    expect(fixes.map(({ preferred }) => preferred)).toEqual([true, false, false]);
    expect(fixes.every(({ safe }) => !safe)).toBe(true);
    const moved = fixes.flatMap(({ title }) => /^Move eye [a-z-]+ by ([\d.]+) mm to \(.*\) mm$/.exec(title)?.[1] ?? []);
    expect(moved.map(Number)).toEqual(moved.map(Number).sort((a, b) => a - b));
  });

  it.each([
    ["roll-low", 0.02],
    ["roll-high", 0.02],
    ["roll-low", 0.004],
  ])("puts %s at the nearest place that a search over the plane finds (limit %d)", (eye, limit) => {
    const car = leaking.replace(/\}\n$/, `  checks { leak { information ${limit * 100} %, warning 5 % } }\n}\n`);
    const context = checked(car);
    const title = titles(context).find((one) => one.startsWith(`Move eye ${eye}`)) ?? "";
    const from = eyeIn(context.text, eye);
    const to = eyeIn(afterFix(context, "coupling", title).text, eye);
    const distance = Math.hypot(...to.map((coordinate, index) => coordinate - (from[index] ?? 0)));
    expect(Math.abs(distance - nearestBySearch(context, eye, limit) * 1000)).toBeLessThan(NEAREST_EYE * 1000);
  });

  it("mends whatever eye is off, or says nothing", () => {
    const offset = fc.double({ min: -9, max: 9, noNaN: true });
    fc.assert(
      fc.property(offset, offset, fc.constantFrom("roll-low", "roll-high"), (y, z, name) => {
        const was = eyeIn(axle, name);
        const now = `eye ${name} (45, ${((was[1] ?? 0) + y).toFixed(2)}, ${((was[2] ?? 0) + z).toFixed(2)}) mm`;
        const context = checked(carWith([`eye ${name} (${was.join(", ")}) mm`, now]));
        if (!runRules(context).some(({ rule }) => rule === "coupling")) return;
        for (const title of titles(context)) expect(left(afterFix(context, "coupling", title))).toEqual([]);
        expect(titles(context).some((title) => title.startsWith("Move "))).toBe(true);
      }),
      { seed: 11, numRuns: 25 },
    );
  });

  it("moves both eyes where one alone would take too much of the own motion", () => {
    const far = carWith(["eye roll-low (45, 175, 348) mm", "eye roll-low (45, 191, 356) mm"]);
    const context = checked(far);
    expect(titles(context).map((title) => title.split(" ").slice(0, 2).join(" "))).toEqual(["Move both", "Say that"]);
    const after = afterFix(context, "coupling", "Move both eyes");
    expect(after.findings).toEqual([]);
    expect(motionOf(after.context, DAMPER).roll / motionOf(context, DAMPER).roll).toBeGreaterThan(0.9);
  });

  it("keeps to the plane of a skewed rocker", () => {
    const axis: Vec3 = [1, 0.05, -0.02];
    const context = checked(leaking.replace("axis (1, 0, 0)", `axis (${axis.join(", ")})`));
    const { text, findings } = afterFix(context, "coupling", "Move ");
    expect(findings).toEqual([]);
    for (const eye of ["roll-low", "roll-high"]) {
      const [before, after] = [eyeIn(context.text, eye), eyeIn(text, eye)];
      const along = after.reduce((sum, value, index) => sum + (value - (before[index] ?? 0)) * (axis[index] ?? 0), 0);
      // Coordinates are written to a hundredth of a millimetre.
      expect(Math.abs(along / Math.hypot(...axis))).toBeLessThan(0.01);
    }
  });

  it("writes inches where the author does", () => {
    const edits = convertUnits(uriOf("trial.crank"), parse(leaking), "inch");
    const context = checked(applyEdits(leaking, edits));
    expect(context.text).toContain("eye roll-low (1.7");
    const title = titles(context)[0] ?? "";
    expect(title).toMatch(/^Move eye roll-(low|high) by 0\.3\d in to \(1\.7\d*, [\d.]+, [\d.]+\) in$/);
    expect(afterFix(context, "coupling", title).findings).toEqual([]);
  });

  it("writes two coordinates in a planar linkage", () => {
    const context = checked(planar);
    const { text, findings } = afterFix(context, "coupling", "Move eye roll-low");
    expect(findings).toEqual([]);
    expect(text).toMatch(/eye roll-low \([\d.]+, [\d.]+\) mm/);
    expect(isFormatted(text)).toBe(true);
  });
});

const planar = leaking
  .replace(/ {4}linkage \{[\s\S]*?\n {4}\}\n/, "LINKAGE")
  .replace(
    "LINKAGE",
    `    linkage planar {
      lower-wishbone { inner (190, 103) mm, outer (678, 108) mm }
      upper-wishbone { inner (235, 297) mm, outer (650, 342) mm }
      push-rod on lower-wishbone { outer (632, 128) mm, inner (226, 436) mm }
      rocker {
        pivot (190, 400) mm
        eye side (208, 463) mm
        eye third (192, 456) mm
        eye roll-high (175, 452) mm
        eye roll-low (180, 356) mm
      }
    }
`,
  )
  .replace("chassis (-45, 45, 466) mm", "chassis (45, 466) mm");

/** Distance in m to the nearest place free of leak: along rays from where the eye is, each root closed in on by halving. */
function nearestBySearch(context: RuleContext, eye: string, limit: number): number {
  const [car] = context.cars;
  const element = car && elementAt(car, DAMPER);
  if (element?.axle === undefined || element.model.connection === undefined) throw new Error("no damper");
  const { connection } = element.model;
  const probe = connectionProbe(element.axle, element.model);
  const [x = 0, y = 0, z = 0] = eyeIn(context.text, eye).map((millimetres) => millimetres / 1000);
  const at = (angle: number, radius: number) =>
    probe(
      withEyeMoved(connection, { eye, sides: ["left", "right"] }, [
        x,
        y + radius * Math.cos(angle),
        z + radius * Math.sin(angle),
      ]),
    );
  const start = at(0, 0);
  if (start === undefined) throw new Error("no motion");
  const leak = (angle: number, radius: number) => {
    const probed = at(angle, radius);
    return probed === undefined ? Number.NaN : unclaimedMotion(probed, "heave");
  };
  const isAllowed = (angle: number, radius: number) => {
    const probed = at(angle, radius);
    if (probed === undefined) return false;
    const kept = claimedMotion(probed, "heave") / claimedMotion(start, "heave");
    return Math.abs(kept - 1) <= 0.1 && leakOverTravel(probed, "heave") <= limit;
  };
  let nearest = Number.POSITIVE_INFINITY;
  for (let angle = 0; angle < 2 * Math.PI; angle += Math.PI / 720) {
    for (let radius = 0; radius < Math.min(nearest, 0.03); radius += 0.0005) {
      let [low, high] = [radius, radius + 0.0005];
      const below = leak(angle, low);
      if (!(below * leak(angle, high) < 0)) continue;
      while (high - low > 1e-7) {
        const middle = (low + high) / 2;
        if (below * leak(angle, middle) > 0) low = middle;
        else high = middle;
      }
      if (isAllowed(angle, high)) nearest = Math.min(nearest, high);
    }
  }
  return nearest;
}

describe("an eye whose coordinates have a unit each", () => {
  it("is moved like any other", () => {
    const each = leaking.replace("eye roll-low (45, 180, 356) mm", "eye roll-low (45 mm, 180 mm, 356 mm)");
    const after = afterFix(checked(each), "coupling", "Move eye roll-low");
    expect(after.text).toMatch(/eye roll-low \(45, [\d.]+, [\d.]+\) mm\n/);
    expect(after.findings).toEqual([]);
  });
});

describe("an eye that others use", () => {
  const shared = leaking.replace(
    "    damper roll-damper for roll {",
    "    inerter roll-inerter for roll {\n      inertance 20 kg\n      between left.rocker.roll-high and right.rocker.roll-low\n    }\n    damper roll-damper for roll {",
  );

  it("is moved with them, which the title says; or the element gets one of its own", () => {
    const context = checked(shared);
    const all = titles(context);
    expect(
      all
        .filter((title) => title.startsWith("Move eye"))
        .every((title) => title.endsWith("; roll-damper moves with it")),
    ).toBe(true);
    expect(left(afterFix(context, "coupling", "Move eye"))).toEqual([]);
    const after = afterFix(context, "coupling", "Give roll-inerter an eye of its own");
    expect(after.text).toMatch(/\n {8}eye roll-(low|high)-roll-inerter \(45, [\d.]+, [\d.]+\) mm\n/);
    expect(after.text).toMatch(
      /between left\.rocker\.[a-z-]+ and right\.rocker\.[a-z-]+-roll-inerter\n|between left\.rocker\.roll-high-roll-inerter and/,
    );
    expect(after.findings.map(({ message }) => message.split(" ")[0])).toEqual(["roll-damper"]);
    expect(isFormatted(after.text)).toBe(true);
  });

  it("stays in a rocker that is written on one line", () => {
    const oneLine = shared.replace(
      /rocker \{\n([\s\S]*?)\n {6}\}/,
      (_all, lines: string) => `rocker { ${lines.trim().split(/\n\s*/).join(", ")} }`,
    );
    const after = afterFix(checked(oneLine), "coupling", "Give roll-inerter an eye of its own");
    expect(after.text).toMatch(/, eye roll-(low|high)-roll-inerter \([^)]*\) mm \}/);
    expect(after.findings.map(({ message }) => message.split(" ")[0])).toEqual(["roll-damper"]);
  });

  it("is not moved where that would couple another element", () => {
    // The inerter is clean: it is joined to the low eye on one side only, and to another one on the other.
    const clean = leaking
      .replace("        eye roll-high", "        eye inert (45, 177.13, 443.3) mm\n        eye roll-high")
      .replace(
        "    damper roll-damper for roll {",
        "    inerter roll-inerter for roll {\n      inertance 20 kg\n      between left.rocker.inert and right.rocker.roll-low\n    }\n    damper roll-damper for roll {",
      );
    const all = titles(checked(clean));
    expect(all.some((title) => title.startsWith("Move eye roll-low"))).toBe(false);
    expect(all.some((title) => title.startsWith("Move eye roll-high"))).toBe(true);
    expect(all.some((title) => title.startsWith("Give roll-damper an eye of its own"))).toBe(true);
    expect(all).toContain("Join roll-damper to left.rocker.inert");
  });
});

describe("an eye that is worked out from names or sums", () => {
  const summed = leaking.replace("eye roll-low (45, 180, 356) mm", "eye roll-low (45 mm, 170 mm + 10 mm, 356 mm)");

  it("is never replaced by its value of today; the element gets one of its own", () => {
    const context = checked(summed);
    expect(titles(context).some((title) => title.startsWith("Move eye roll-low"))).toBe(false);
    expect(titles(context).some((title) => title.startsWith("Move eye roll-high"))).toBe(true);
    const after = afterFix(context, "coupling", "an eye of its own");
    expect(after.findings).toEqual([]);
    expect(after.text).toContain(
      "eye roll-low (45 mm, 170 mm + 10 mm, 356 mm)\n        eye roll-low-roll-damper (45, ",
    );
  });

  it("nor where the sum is of a let", () => {
    const named = `let low = 356 mm\n\n${leaking.replace("(45, 180, 356) mm", "(45 mm, 180 mm, low)")}`;
    const context = checked(named);
    expect(runRules(context).map(({ rule }) => rule)).toEqual(["coupling"]);
    for (const title of titles(context))
      expect(afterFix(context, "coupling", title).text).toContain("(45 mm, 180 mm, low)");
  });
});

describe("what a set-up does", () => {
  const both = (line: string) => ({ ...brokenSamples, "trial.crank": setup(line) });

  it("is mended in the set-up: an eye that it inherits is moved by a line of its own", () => {
    const context = contextOf(both("front.rocker.pivot (0, 190, 404) mm"), "trial.crank");
    const fixes = fixesFor(context, "coupling");
    expect(fixes.flatMap(({ edits }) => edits.map(({ uri }) => uri))).toEqual(
      fixes.flatMap(({ edits }) => edits.map(() => context.uri)),
    );
    const after = afterFix(context, "coupling", "Move eye roll-high");
    expect(after.fix.title).toMatch(/ mm in trial$/);
    expect(after.text).toMatch(
      /\n {2}front\.rocker\.pivot \(0, 190, 404\) mm\n {2}front\.rocker\.roll-high \(45, [\d.]+, [\d.]+\) mm\n\}\n$/,
    );
    expect(after.findings).toEqual([]);
  });

  it("is mended in its own line where it moved the eye, also by a change", () => {
    for (const line of ["front.rocker.roll-low (45, 184, 348) mm", "front.rocker.roll-low by (0, 9, 0) mm"]) {
      const after = afterFix(contextOf(both(line), "trial.crank"), "coupling", "Move eye roll-low");
      expect(after.text).toMatch(/\n {2}front\.rocker\.roll-low \(45, [\d.]+, [\d.]+\) mm\n\}\n$/);
      expect(after.findings).toEqual([]);
    }
  });

  it("is joined as before by taking the set-up's line out", () => {
    const context = contextOf(
      both("front.roll-damper.between left.rocker.roll-high and right.rocker.third"),
      "trial.crank",
    );
    const after = afterFix(context, "coupling", "Join roll-damper to right.rocker.roll-low");
    expect(after.text).not.toContain("between");
    expect(after.findings).toEqual([]);
  });

  it("adds an eye of its own in the set-up, and joins the element to it there", () => {
    const two = axleWith(
      "inerter roll-inerter for roll {",
      "  inertance 20 kg",
      "  between left.rocker.roll-high and right.rocker.roll-low",
      "}",
    );
    const context = checked(setup("front.rocker.roll-low (45, 186, 348) mm"), two);
    const after = afterFix(context, "coupling", "an eye of its own");
    expect(after.text).toMatch(
      /\n {2}front\.rocker\.eye roll-(low|high)-([a-z-]+) \(45, [\d.]+, [\d.]+\) mm\n {2}front\.\2\.between left\.rocker\.[a-z-]+ and right\.rocker\.[a-z-]+\n/,
    );
    // The new eye is so near to the old one that their pins would touch, which is told as well.
    expect(after.findings.filter(({ rule }) => rule !== "rocker-eye")).toHaveLength(1);
  });

  it("never changes the claim of what it derives from", () => {
    const context = contextOf(both("front.rocker.roll-low (45, 186, 348) mm"), "trial.crank");
    expect(titles(context).some((title) => title.startsWith("Say that"))).toBe(false);
  });
});

describe("a side that was changed alone", () => {
  const rightOnly = axle.replace(
    "    spring corner-bar",
    "    right {\n      rocker {\n        eye roll-low (45, -183, 348) mm\n      }\n    }\n    spring corner-bar",
  );

  it.each([
    ["a car's right side", rightOnly],
    [
      "a car's left side",
      rightOnly
        .replace("right {", "left {")
        .replace("-183", "183")
        .replace("left.rocker.roll-high and right.rocker.roll-low", "left.rocker.roll-low and right.rocker.roll-high"),
    ],
    ["a set-up's right side", setup("front.right.rocker.roll-low (45, -183, 348) mm")],
    [
      "a set-up's right side in blocks",
      setup("front {", "  right {", "    rocker { eye roll-low (45, -183, 348) mm }", "  }", "}"),
    ],
  ])("mirrors the other again: %s", (_whose, text) => {
    const after = afterFix(checked(text), "coupling", "Mirror the");
    expect(after.fix.preferred).toBe(true);
    expect(after.findings).toEqual([]);
    expect(after.text).not.toMatch(/183/);
    if (text.startsWith("use")) expect(after.text).toBe('use "axle.crank"\n\nsetup trial from plover {\n}\n');
    else
      expect(after.text).toBe(
        axle.replace(
          /left\.rocker\.roll-[a-z]+ and right\.rocker\.roll-[a-z]+/,
          /between left\.rocker\.roll.*/.exec(text)?.[0].slice(8) ?? "",
        ),
      );
  });

  it("does not give the other side the same where that leaks too", () => {
    expect(titles(checked(rightOnly)).some((title) => title.startsWith("Give the left side"))).toBe(false);
  });
});

describe("an anti-roll bar", () => {
  const withBar = carWith([
    "        eye roll-low (45, 175, 348) mm\n",
    "        eye roll-low (45, 175, 348) mm\n        eye bar (0, 222, 396) mm\n",
  ]).replace(
    / {2}\}\n\}\n$/,
    `    anti-roll-bar bar for roll {
      torsion-bar { diameter 18 mm, bore 12 mm, length 380 mm }
      lever { pivot (70, 222, 296) mm, axis (0, 1, 0), end (0, 222, 296) mm }
      drop-link rocker.bar
    }
  }
}
`,
  );
  const rightSide = (lines: string) =>
    withBar.replace("    spring corner-bar", `    right {\n${lines}    }\n    spring corner-bar`);

  it("does not leak with like levers", () => {
    expect(runRules(checked(withBar))).toEqual([]);
  });

  it("leaks with a longer lever on one side, and is mended by making both alike", () => {
    const context = checked(
      rightSide("      bar.lever { pivot (70, -222, 296) mm, axis (0, 1, 0), end (6, -222, 296) mm }\n"),
    );
    expect(
      runRules(context)
        .map(({ rule }) => rule)
        .sort(),
    ).toEqual(["asymmetry", "coupling"]);
    expect(afterFix(context, "coupling", "Mirror the left side again").findings).toEqual([]);
    const same = afterFix(context, "coupling", "Give the left side the same");
    expect(same.findings).toEqual([]);
    expect(same.text).toContain("end (6, 222, 296) mm");
  });

  it("leaks with an eye off on one side, and is mended by mirroring or by moving the other", () => {
    const context = checked(rightSide("      rocker {\n        eye bar (0, -227, 396) mm\n      }\n"));
    expect(afterFix(context, "coupling", "Mirror the left side again").findings).toEqual([]);
    const moved = afterFix(context, "coupling", "Move eye bar");
    expect(left(moved)).toEqual(["asymmetry"]);
    const { heave, roll } = motionOf(moved.context, "front.bar");
    expect(Math.abs(heave / roll)).toBeLessThan(1e-3);
  });
});

describe("eyes that are there already", () => {
  it("are exchanged between two elements that each have the other's", () => {
    const mixed = axleWith(
      "damper heave-damper for heave {",
      "  damping 2 N*s/mm",
      "  between left.rocker.roll-high and right.rocker.roll-low",
      "}",
    ).replace(
      /(damper roll-damper for roll \{\s+damping 1\.2 N\*s\/mm\s+between) left\.rocker\.roll-high and right\.rocker\.roll-low/,
      "$1 left.rocker.third and right.rocker.third",
    );
    const context = checked(mixed);
    const after = afterFix(context, "needless-claim", "Exchange its eyes");
    expect(after.findings).toEqual([]);
  });

  it("are swapped end for end where only one side's eye is off", () => {
    const context = checked(setup("front.right.rocker.roll-low (45, -184, 348) mm"));
    const after = afterFix(context, "coupling", "Swap the eyes: left roll-low, right roll-high");
    expect(left(after)).toEqual(["asymmetry"]);
  });
});

describe("the claim", () => {
  it("is told as the motion is where both modes are meant", () => {
    const after = afterFix(checked(leaking), "coupling", "Say that roll-damper is for roll and heave");
    expect(after.text).toContain("damper roll-damper for roll and heave {");
    expect(after.findings).toEqual([]);
  });
});

describe("every fix", () => {
  const SHARING = [
    "spring roll-spring for roll {",
    "  rate 20 N/mm",
    "  between left.rocker.roll-high and right.rocker.roll-low",
    "}",
  ];

  /** The car with its lower roll eye elsewhere, and with a spring on the same eyes or without. */
  const withEye = (y: number, z: number, shared: boolean): RuleContext => {
    const car = shared ? axleWith(...SHARING) : axle;
    return checked(car.replace("eye roll-low (45, 175, 348) mm", `eye roll-low (45, ${y}, ${z}) mm`));
  };
  const kinds = (findings: readonly { rule: string; message: string }[]): ReadonlySet<string> =>
    new Set(findings.map(({ rule, message }) => `${rule} ${message.split(" ", 2).join(" ")}`));

  it("keeps a pin's distance from an eye that stays", () => {
    const context = withEye(176.5, 351.5, true);
    const fixes = fixesFor(context, "coupling");
    expect(fixes.map(({ title }) => title).filter((title) => title.includes("an eye of its own"))).not.toEqual([]);
    for (const { title } of fixes) expect(left(afterFix(context, "coupling", title))).not.toContain("rocker-eye");
  });

  it("brings no finding that was not there", () => {
    const offset = fc.integer({ min: -24, max: 24 });
    fc.assert(
      fc.property(offset, offset, fc.boolean(), (y, z, shared) => {
        const context = withEye(175 + y / 2, 348 + z / 2, shared);
        const before = runRules(context);
        if (!before.some(({ rule }) => rule === "coupling")) return;
        for (const { title } of fixesFor(context, "coupling")) {
          for (const kind of kinds(afterFix(context, "coupling", title).findings))
            expect(kinds(before)).toContain(kind);
        }
      }),
      { numRuns: 25, seed: 7 },
    );
  });
});
