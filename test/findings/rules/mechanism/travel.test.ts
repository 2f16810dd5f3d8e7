/** The travel that the links can do: where one binds, and where one comes near to a toggle. */
import { describe, expect, it } from "vitest";
import { parse } from "../../../../grammar/index.js";
import { applyEdits } from "../../../../server/findings/edits.js";
import { runRules } from "../../../../server/findings/run.js";
import { convertUnits } from "../../../../server/views/convert-units.js";
import { axle, axleWith, carWith, checked, found, setup, underlined } from "../../../support/axle-car.js";
import { checkFindings } from "../../../support/check-findings.js";
import { afterFix } from "../../../support/check-fixes.js";
import { uriOf } from "../../../support/context.js";

const inches = (text: string): string => applyEdits(text, convertUnits(uriOf("trial.crank"), parse(text), "inch"));
const only = (rule: string, text: string, car: string = axle) => {
  const context = checked(text, car);
  const [finding, more] = runRules(context).filter((one) => one.rule === rule);
  expect(more).toBeUndefined();
  return { context, finding, place: finding && underlined(context, finding) };
};

describe("unreachable-travel", () => {
  const far = carWith(["travel -30 .. 25 mm", "travel -150 .. 25 mm"]);

  it("names the link and where it binds, at the travel", () => {
    const { findings } = checkFindings(
      far.replace(
        "    travel -150 .. 25 mm\n",
        "    travel -150 .. 25 mm\n#          ^^^^^^^^^^^^^ error unreachable-travel: The front axle is to go to -150 mm, but its push-rod binds at -84\n",
      ),
    );
    expect(findings[0]?.related.map(({ origin }) => far.slice(origin.start, origin.end))).toEqual(["(2, 632, 128) mm"]);
  });

  it("tells both ends in one sentence", () => {
    const { finding } = only("unreachable-travel", setup("front.travel -150 .. 400 mm"));
    expect(finding?.message).toMatch(
      /^The front axle is to go to -150 mm, but its push-rod binds at -84\.\d mm and is to go to 400 mm, but its [a-z-]+ binds at \d+ mm\./,
    );
  });

  it("says which side where one side alone binds", () => {
    const lines = ["front.right.push-rod.inner (0, -230, 430) mm", "front.travel -75 .. 25 mm"];
    expect(only("unreachable-travel", setup(...lines)).finding?.message).toContain(
      "its right push-rod binds at -68.4 mm",
    );
  });

  it("speaks inches to who writes inches, and shortens the travel in them", () => {
    const { context, finding } = only("unreachable-travel", inches(far));
    expect(finding?.message).toContain("is to go to -5.91 in, but its push-rod binds at -3.3");
    const after = afterFix(context, "unreachable-travel");
    expect(after.fix.title).toMatch(/^Shorten the travel to -3\.25 \.\. 0\.984\d* in$/);
    expect(after.findings.filter(({ rule }) => rule === "unreachable-travel")).toEqual([]);
  });

  it("stands at the set-up's line, and is mended there", () => {
    const { context, place } = only("unreachable-travel", setup("mass 545 kg", "front.travel -150 .. 25 mm"));
    expect(place).toBe("-150 .. 25 mm");
    expect(afterFix(context, "unreachable-travel").text).toBe(setup("mass 545 kg", "front.travel -83 .. 25 mm"));
  });

  it("leaves the car's travel alone where the set-up's links do not reach", () => {
    const reaching = carWith(["travel -30 .. 25 mm", "travel -80 .. 25 mm"]);
    const line = "front.push-rod.inner (0, 230, 430) mm";
    const { context, place } = only("unreachable-travel", setup("mass 545 kg", line), reaching);
    expect(place).toBe(line);
    const after = afterFix(context, "unreachable-travel");
    expect(after.text).toMatch(/430\) mm\n {2}front\.travel -\d+ \.\. 25 mm\n\}\n$/);
    expect(after.findings.filter(({ rule }) => rule === "unreachable-travel")).toEqual([]);
  });

  it("is told with the car and not again with a set-up, unless at the other end", () => {
    expect(found(setup("mass 545 kg"), far)).toEqual([]);
    expect(only("unreachable-travel", setup("front.travel -150 .. 400 mm"), far).finding?.message).toContain(
      "The front axle is to go to 400 mm",
    );
  });
});

describe("near-toggle", () => {
  const far = (travel: number) =>
    setup(
      "remove front.roll-damper",
      "front.corner-bar.torsion-bar.allowable-stress 1500 MPa",
      `front.travel ${travel} .. 25 mm`,
    );

  it("is information below 20 deg, a warning below 10", () => {
    expect(found(far(-28))).toEqual([]);
    expect(found(far(-82))).toEqual(["information near-toggle"]);
    expect(found(far(-84))).toEqual(["warning near-toggle"]);
  });

  it("says how close, where, and to whom it matters, at the link", () => {
    const car = carWith(["travel -30 .. 25 mm", "travel -83 .. 25 mm"]);
    const { finding, place } = only("near-toggle", car);
    expect(place).toBe("(2, 632, 128) mm");
    expect(finding?.message).toMatch(
      /^The front push-rod comes within 1\d deg of a toggle at -83 mm of travel; towards it the ratio runs away and at it nothing moves\. /,
    );
    expect(only("near-toggle", inches(car)).finding?.message).toContain("at -3.27 in of travel");
  });

  it("stands at the set-up's line that does it, and is not told again", () => {
    const long = carWith(["travel -30 .. 25 mm", "travel -83 .. 25 mm"]);
    expect(only("near-toggle", setup("mass 545 kg"), long).finding).toBeUndefined();
    const line = "front.travel -82 .. 25 mm";
    expect(only("near-toggle", setup("mass 545 kg", line)).place).toBe(line);
    expect(only("near-toggle", setup("front.travel -84 .. 25 mm"), long).finding?.severity).toBe("warning");
  });

  it("says which side where one side alone comes close", () => {
    const { finding } = only(
      "near-toggle",
      setup("front.left.push-rod.inner (0, 230, 430) mm", "front.travel -66 .. 25 mm"),
    );
    expect(finding?.message).toContain("The front left push-rod comes within");
  });

  it("speaks of a drop link at its bar", () => {
    const bar = axle
      .replace(
        / {2}\}\n\}\n$/,
        `    anti-roll-bar bar for roll {
      torsion-bar { diameter 18 mm, bore 12 mm, length 380 mm }
      lever { pivot (70, 222, 385) mm, axis (0, 1, 0), end (0, 222, 385) mm }
      drop-link rocker.bar
    }
  }
}
`,
      )
      .replace("        eye roll-low", "        eye bar (40, 222, 396) mm\n        eye roll-low");
    const { finding, place } = only("near-toggle", bar);
    expect(place).toBe("bar");
    expect(finding?.message).toContain("The front drop link of bar comes within");
  });

  it("tells each of two bars by its name", () => {
    const bar = (name: string, eye: string) => [
      `anti-roll-bar ${name} for roll {`,
      "  torsion-bar { diameter 12 mm, bore 8 mm, length 380 mm }",
      "  lever { pivot (70, 222, 385) mm, axis (0, 1, 0), end (0, 222, 385) mm }",
      `  drop-link rocker.${eye}`,
      "}",
    ];
    const car = axleWith(...bar("bar", "bar"), ...bar("second", "bar-two")).replace(
      "        eye roll-low",
      "        eye bar (40, 222, 396) mm\n        eye bar-two (41, 222, 396) mm\n        eye roll-low",
    );
    const told = runRules(checked(car)).filter(({ rule }) => rule === "near-toggle");
    expect(told.map(({ message }) => message.slice(0, message.indexOf(" comes")))).toEqual([
      "The front drop link of bar",
      "The front drop link of second",
    ]);
  });

  it("leaves a link that binds to the check of the travel", () => {
    expect(found(setup("remove front.roll-damper", "front.travel -150 .. 25 mm"))).toEqual([
      "error unreachable-travel",
    ]);
  });
});
