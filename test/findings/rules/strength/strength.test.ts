/** What parts bear, and how much room they have: where it is told, in which words, and what mends it. */
import { describe, expect, it } from "vitest";
import type { RuleContext } from "../../../../server/findings/context.js";
import { runRules } from "../../../../server/findings/run.js";
import { afterFix, fixesFor } from "../../../support/check-fixes.js";
import { underlined } from "../../../support/axle-car.js";
import { contextOf } from "../../../support/context.js";
import { brokenSamples } from "../../../support/shared-car.js";

const coils = brokenSamples["coils.crank"] ?? "";

/** The car's text with some of it changed. */
const carWith = (...changes: readonly (readonly [from: string, to: string])[]): RuleContext =>
  contextOf({ "car.crank": changed(coils, changes) }, "car.crank");

function changed(text: string, changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((before, [from, to]) => {
    if (!before.includes(from)) throw new Error(`the car does not say ${from}`);
    return before.replace(from, to);
  }, text);
}

const setup = (...lines: readonly string[]): RuleContext =>
  contextOf(
    {
      ...brokenSamples,
      "trial.crank": `use "coils.crank"\n\nsetup trial from dunnock {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`,
    },
    "trial.crank",
  );

const told = (context: RuleContext): readonly string[] =>
  runRules(context).map((finding) => `${finding.severity} ${finding.rule} at ${underlined(context, finding)}`);
const messageOf = (context: RuleContext): string => runRules(context)[0]?.message ?? "";
const titles = (context: RuleContext, rule: string): readonly string[] =>
  fixesFor(context, rule).map(({ title }) => title);

const STIFF_BAR = "torsion-bar { diameter 15 mm, bore 10 mm, length 380 mm }";
const bladed = (blade: string) => carWith([STIFF_BAR, `${STIFF_BAR}\n      blade { ${blade} }`]);
const SOFT_BLADE = "position 2 of 5, section 6 x 18 mm, length 70 mm";

describe("over-stress", () => {
  it("stands at the dimension that a set-up changed, and says stress, allowable, source and where", () => {
    const context = setup("front.bar.torsion-bar.length 120 mm");
    expect(told(context)).toEqual(["warning over-stress at front.bar.torsion-bar.length 120 mm"]);
    expect(messageOf(context)).toMatch(
      /^bar's torsion bar is stressed to 1\d{3} MPa in shear within the travel, and 700 MPa is usual for it \(51CrV4 bars.*DIN 2091, from memory\); it passes that in roll, with the right wheel 1\d(\.\d)? mm in bump/,
    );
  });

  it("holds what the maker states above what is usual", () => {
    const stated = setup("front.bar.torsion-bar.length 120 mm", "front.bar.torsion-bar.allowable-stress 1400 MPa");
    expect(told(stated)).toEqual([]);
    const low = setup("front.bar.torsion-bar.allowable-stress 300 MPa");
    expect(told(low)).toEqual(["warning over-stress at front.bar.torsion-bar.allowable-stress 300 MPa"]);
    expect(messageOf(low)).toContain("and 300 MPa is what its maker allows; it passes that in roll");
    expect(messageOf(low)).toMatch(/Fit a stronger part\.$/);
  });

  it("is told of a coil in a part at the line that fits it, once for both sides", () => {
    const weak = carWith(
      ["C-92 { wire 9.5 mm", "C-92 { allowable-stress 300 MPa, wire 9.5 mm"],
      ["C-104 { wire 9.5 mm", "C-104 { allowable-stress 500 MPa, wire 9.5 mm"],
    );
    expect(told(weak)).toEqual(["warning over-stress at C-92"]);
    expect(messageOf(weak)).toContain("corner-coil's coil is stressed to 4");
  });

  it("names the side where one side alone bears too much", () => {
    const context = setup("front.left.corner-coil.coil.allowable-stress 300 MPa");
    expect(runRules(context).find(({ rule }) => rule === "over-stress")?.message).toMatch(
      /^The left corner-coil's coil is stressed/,
    );
  });

  it("offers parts that bear it, the nearest in rate first, each of them proven", () => {
    const weak = carWith(["C-92 { wire 9.5 mm", "C-92 { allowable-stress 300 MPa, wire 9.5 mm"]);
    expect(titles(weak, "over-stress")).toEqual(["Fit C-104, 13 % stiffer", "Fit C-76, 18 % softer"]);
    const after = afterFix(weak, "over-stress");
    expect(after.text).toContain("fit C-104\n");
    expect(after.findings).toEqual([]);
  });

  it("keeps the rate of a bar that it makes longer and thicker", () => {
    const context = setup("front.bar.torsion-bar.length 120 mm");
    const [fix] = fixesFor(context, "over-stress");
    expect(fix?.title).toMatch(
      /^Make its torsion bar [\d.]+ mm thick and \d+ mm long, (of the same rate|[\d.]+ % \w+)$/,
    );
    const after = afterFix(context, "over-stress");
    expect(after.findings).toEqual([]);
    const rate = (from: RuleContext): number => {
      const found = from.cars[0]?.analysis.axles.front?.elements.find(({ path }) => path === "front.bar")?.rate;
      return typeof found === "number" ? found : Number.NaN;
    };
    expect(Math.abs(Math.log(rate(after.context) / rate(context)))).toBeLessThan(0.03);
  });

  it("sets a blade to another position, or makes it thicker", () => {
    const context = bladed(SOFT_BLADE);
    expect(told(context)).toEqual(["warning over-stress at section 6 x 18 mm"]);
    expect(messageOf(context)).toContain("bar's blade is stressed to");
    expect(messageOf(context)).toContain("in bending within the travel, and 900 MPa is usual for it (yield strength");
    const found = titles(context, "over-stress");
    expect(found.some((title) => /^Make its blade [\d.]+ x 18 mm, \d+ % stiffer$/.test(title))).toBe(true);
    for (const fix of fixesFor(context, "over-stress")) {
      expect(afterFix(context, "over-stress", fix.title).findings).toEqual([]);
    }
  });

  it("leaves a value that is worked out from names alone", () => {
    const named = changed(coils, [
      [STIFF_BAR, "torsion-bar { diameter 15 mm, bore 10 mm, length short }"],
      ["car dunnock", "let short = 120 mm\n\ncar dunnock"],
    ]);
    const context = contextOf({ "car.crank": named }, "car.crank");
    expect(told(context).filter((one) => one.includes("over-stress"))).toHaveLength(1);
    expect(fixesFor(context, "over-stress")).toEqual([]);
  });

  it("speaks psi to who writes inches", () => {
    const inches = changed(coils, [
      ["travel -25 .. 25 mm", "travel -1 .. 1 in"],
      [STIFF_BAR, "torsion-bar { diameter 15 mm, bore 10 mm, length 120 mm }"],
    ]);
    expect(messageOf(contextOf({ "car.crank": inches }, "car.crank"))).toMatch(/ psi in shear .* in in bump/);
  });

  it("is told with the car and not again with a set-up", () => {
    const car = changed(coils, [[STIFF_BAR, STIFF_BAR.replace("380", "120")]]);
    const files = {
      "coils.crank": car,
      "trial.crank": 'use "coils.crank"\n\nsetup trial from dunnock {\n  mass 545 kg\n}\n',
    };
    expect(told(contextOf(files, "coils.crank"))).toHaveLength(1);
    expect(told(contextOf(files, "trial.crank"))).toEqual([]);
  });
});

describe("coil-bind", () => {
  const short = () => setup("front.corner-coil.fit C-90S");

  it("says where the turns touch and by how much the travel goes beyond", () => {
    expect(told(short())).toEqual(["warning coil-bind at C-90S"]);
    expect(messageOf(short())).toMatch(
      /^corner-coil's turns touch with both wheels at 1\d\.\d mm of bump: it is 72 mm long when closed up, and the travel would take it [67]\.\d+ mm beyond\./,
    );
  });

  it("is an error where it is so at rest already", () => {
    const context = setup("front.corner-coil.fit C-90S", "front.corner-coil.coil.free-length 75 mm");
    expect(told(context)).toContain("error coil-bind at front.corner-coil.coil.free-length 75 mm");
    expect(runRules(context).find(({ rule }) => rule === "coil-bind")?.message).toContain(
      "turns touch at rest already",
    );
  });

  it("offers longer springs and less travel", () => {
    // C-92 is what the car has: a line that says so again would be needless.
    expect(titles(short(), "coil-bind")).toEqual([
      "Fit C-104, 14 % stiffer",
      "Fit C-76, 16 % softer",
      "Shorten the travel to -25 .. 14 mm",
    ]);
    for (const { title } of fixesFor(short(), "coil-bind")) {
      expect(afterFix(short(), "coil-bind", title).findings.filter(({ rule }) => rule === "coil-bind")).toEqual([]);
    }
  });

  it("opens a gap or lowers a preload that is to blame", () => {
    const third = "rate 20 N/mm\n      preload 700 N";
    const wound = (words: string) =>
      carWith([
        third,
        `coil { rate 20 N/mm, free-length 150 mm, bind-length 90 mm }\n      acts in-compression\n      ${words}`,
      ]);
    expect(titles(wound("preload 700 N"), "coil-bind")[0]).toMatch(/^Lower its preload to \d+ N$/);
    const late = carWith([
      third,
      "coil { rate 20 N/mm, free-length 60 mm, bind-length 40 mm }\n      acts in-compression\n      gap 2 mm",
    ]);
    expect(titles(late, "coil-bind")[0]).toMatch(/^Open its gap to \d+ mm$/);
    expect(afterFix(late, "coil-bind").findings).toEqual([]);
  });
});

describe("unseated", () => {
  const loose = () => setup("front.third.preload 400 N");

  it("says where it comes off and what to say of it", () => {
    expect(told(loose())).toEqual(["warning unseated at front.third.preload 400 N"]);
    expect(messageOf(loose())).toMatch(/^third leaves its seats with both wheels at 15\.\d mm of droop /);
  });

  it("says how it is held, or preloads it enough", () => {
    expect(titles(loose(), "unseated")).toEqual([
      "Let it go where it carries nothing: acts in-compression",
      expect.stringMatching(/^Raise its preload to \d+ N$/),
      "Say that it is held at both ends: acts both-ways",
    ]);
    expect(afterFix(loose(), "unseated").text).toContain("front.third.acts in-compression\n");
    for (const { title } of fixesFor(loose(), "unseated")) {
      expect(afterFix(loose(), "unseated", title).findings).toEqual([]);
    }
  });

  it("writes it into the element's own block where that is the car's", () => {
    const context = carWith(["preload 700 N", "preload 400 N"]);
    expect(afterFix(context, "unseated").text).toContain("preload 400 N\n      acts in-compression\n");
  });
});

describe("over-travel", () => {
  it("says what is left from rest and what is asked for, each way", () => {
    const context = setup("front.side.length 150 .. 175 mm");
    expect(told(context)).toEqual([
      "warning over-travel at front.side.length 150 .. 175 mm",
      "warning over-travel at front.side.length 150 .. 175 mm",
    ]);
    const [bump, rebound] = runRules(context).map(({ message }) => message);
    expect(bump).toMatch(
      /^side runs out of stroke in bump with both wheels at \d+(\.\d)? mm of bump: it has 13 mm from rest/,
    );
    expect(rebound).toMatch(/^side runs out of stroke in rebound .* of droop: it has 12 mm from rest/);
  });

  it("is an error where the damper cannot even be fitted", () => {
    const context = setup("front.side.length 170 .. 230 mm");
    expect(told(context)[0]).toBe("error over-travel at front.side.length 170 .. 230 mm");
    expect(messageOf(context)).toMatch(/^side does not fit in bump: .* it is 6\.97 mm beyond its stroke/);
  });

  it("moves the mount along the damper's line, where there is room to move", () => {
    const context = carWith(["length 130 .. 190 mm", "length 138 .. 178 mm"]);
    const titled = titles(context, "over-travel");
    expect(titled[0]).toMatch(/^Move its mount by \d\.\d mm to \(0, 4\d\.\d+, 46\d(\.\d+)?\) mm$/);
    expect(afterFix(context, "over-travel").findings).toEqual([]);
  });

  it("offers the damper on the shelf that is long enough", () => {
    const shelf = (from: string, to: string) =>
      carWith(
        [
          "catalogue {",
          `catalogue {\n  valving V-a {\n    damping 2.4 N*s/mm\n    length 130 .. ${from} mm\n  }\n  valving V-b {\n    damping 2.4 N*s/mm\n    length 130 .. ${to} mm\n  }`,
        ],
        ["damping 2.4 N*s/mm\n      length 130 .. 190 mm", "fit V-a"],
      );
    expect(titles(shelf("175", "192"), "over-travel")[0]).toBe("Fit V-b, of the same rate");
    expect(titles(shelf("175", "176"), "over-travel").filter((title) => title.startsWith("Fit"))).toEqual([]);
  });

  it("shortens the travel as a last resort", () => {
    const context = setup("front.side.length 130 .. 175 mm");
    const after = afterFix(context, "over-travel", "Shorten the travel");
    expect(after.text).toContain("front.travel -15 .. 25 mm\n");
    expect(after.findings).toEqual([]);
  });
});

describe("static-twist", () => {
  const long = () => setup("front.left.bar.drop-link.longer 2 mm");

  it("stands at the link's line, with twist, moment and what it does to the wheels", () => {
    expect(told(long())).toEqual(["warning static-twist at front.left.bar.drop-link.longer 2 mm"]);
    expect(messageOf(long())).toMatch(
      /^bar is twisted at rest by 1\.6 deg, 2\d\.\d N\*m: it presses the right wheel down with 12\d N and lifts the left one as much/,
    );
  });

  it("turns round with the side, and is silent where both links are set alike or hardly differ", () => {
    expect(messageOf(setup("front.right.bar.drop-link.longer 2 mm"))).toContain("presses the left wheel down");
    expect(told(setup("front.bar.drop-link.longer 2 mm"))).toEqual([]);
    expect(told(setup("front.left.bar.drop-link.longer 0.05 mm"))).toEqual([]);
  });

  it("sets the link to where the bar hangs free", () => {
    const after = afterFix(long(), "static-twist");
    expect(after.text).toContain("front.left.bar.drop-link.longer 0 mm\n");
    expect(after.findings.filter(({ rule }) => rule === "static-twist")).toEqual([]);
  });

  it("hangs free where both ends are drawn, however different the sides are", () => {
    expect(told(setup("front.right.bar.lever.end (0, -222, 300) mm")).some((one) => one.includes("static-twist"))).toBe(
      false,
    );
  });

  it("finds the length where the other side's link makes up for something else", () => {
    const both = setup("front.right.bar.drop-link.longer 1 mm", "front.left.bar.drop-link.longer 3 mm");
    const after = afterFix(both, "static-twist");
    expect(after.text).toContain("front.left.bar.drop-link.longer 1 mm\n");
    expect(after.findings.filter(({ rule }) => rule === "static-twist")).toEqual([]);
  });
});

describe("gap-beyond-travel", () => {
  const LOOSE = ["preload 700 N", "gap 60 mm"] as const;

  it("stands at the gap, says how much of it is too much, and closes it to half of what the travel takes up", () => {
    const context = carWith(LOOSE);
    expect(told(context)).toEqual(["warning gap-beyond-travel at gap 60 mm"]);
    expect(messageOf(context)).toMatch(/^third never works: the travel ends 28\.2 mm before its gap is taken up\./);
    expect(titles(context, "gap-beyond-travel")).toHaveLength(1);
    expect(told(afterFix(context, "gap-beyond-travel").context)).toEqual([]);
  });

  it("says nothing to a gap that the travel takes up, however late", () => {
    expect(told(carWith(["preload 700 N", "gap 20 mm"]))).toEqual([]);
  });

  it("is only information of a stop, and only by more than the whole travel", () => {
    const stop = [
      "    anti-roll-bar bar",
      "    bump-stop late for heave {\n      rate 200 N/mm\n      gap 110 mm\n      between left.rocker.third and right.rocker.third\n    }\n    anti-roll-bar bar",
    ] as const;
    expect(told(carWith(stop))).toEqual(expect.arrayContaining(["information gap-beyond-travel at gap 110 mm"]));
  });
});
