/** A claim that the motion does not bear out. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../../server/findings/run.js";
import { carWith, checked, found, motionOf, setup, underlined } from "../../../support/axle-car.js";
import { checkFindings } from "../../../support/check-findings.js";
import { afterFix, fixesFor } from "../../../support/check-fixes.js";

const like = carWith([
  "left.rocker.roll-high and right.rocker.roll-low",
  "left.rocker.roll-high and right.rocker.roll-high",
]);

describe("needless-claim", () => {
  it("stands at the claim and says which mode moves it instead", () => {
    checkFindings(
      like.replace(
        "    damper roll-damper for roll {\n",
        "    damper roll-damper for roll {\n#                          ^^^^ warning needless-claim: roll-damper is said to be for roll, but roll hardly moves it (it is moved in heave), so it does nothing there.\n",
      ),
    );
  });

  it("stands at the line of the set-up that joins it so", () => {
    const line = "front.roll-damper.between left.rocker.roll-high and right.rocker.roll-high";
    const context = checked(setup("mass 545 kg", line));
    expect(runRules(context).map((finding) => underlined(context, finding))).toEqual([line]);
  });

  it("is told with the car and not again with a set-up that inherits it", () => {
    expect(found(setup("mass 545 kg"), like)).toEqual([]);
  });

  it.each([456.5, 458, 459, 462])("begins below 2 %% of what the other mode does (right eye %d mm high)", (z) => {
    const both = carWith(["spring third for heave", "spring third for heave and roll"]);
    const context = checked(setup(`front.right.rocker.third (0, -192, ${z}) mm`), both);
    const { heave, roll } = motionOf(context, "front.third");
    const claims = runRules(context).filter(({ rule }) => rule === "needless-claim");
    // With the car's own eyes roll does nothing at all, which is told there.
    expect(claims).toEqual([]);
    const alone = checked(
      both.replace("    spring corner-bar", `    right.rocker.third (0, -192, ${z}) mm\n    spring corner-bar`),
    );
    expect(runRules(alone).some(({ rule }) => rule === "needless-claim")).toBe(
      Math.abs(roll) <= 0.02 * Math.abs(heave),
    );
  });

  it("tells once of an element for a corner", () => {
    // The damper stands square to the way of its eye, which goes round the pivot (190, 400).
    const square = carWith([
      "between rocker.side and chassis (-45, 45, 466) mm",
      "between rocker.side and chassis (-45, 226, 526) mm",
    ]);
    const claims = runRules(checked(square)).filter(({ rule }) => rule === "needless-claim");
    expect(claims.map(({ message }) => message)).toEqual([
      "side is said to be for corner, but its own wheel hardly moves it (no mode of its axle moves it), so it does nothing there. Join it to other eyes, or take the claim out.",
    ]);
    expect(fixesFor(checked(square), "needless-claim")).toEqual([]);
  });
});

describe("the fixes of a needless claim", () => {
  it("join it so that its mode moves it, first", () => {
    const after = afterFix(checked(like), "needless-claim");
    expect(after.fix.title).toMatch(/^Join roll-damper to (left|right)\.rocker\.roll-low$/);
    expect(after.findings).toEqual([]);
    expect(Math.abs(motionOf(after.context, "front.roll-damper").roll)).toBeGreaterThan(1);
  });

  it("tell the claim as the motion is", () => {
    const after = afterFix(checked(like), "needless-claim", "Say that roll-damper is for heave");
    expect(after.text).toContain("damper roll-damper for heave {");
    expect(after.findings.filter(({ rule }) => rule === "needless-claim")).toEqual([]);
  });

  it("take out the one of two claims that is idle", () => {
    const both = carWith(["spring third for heave", "spring third for heave and roll"]);
    const after = afterFix(checked(both), "needless-claim");
    expect(after.fix.title).toBe("Say that third is for heave");
    expect(after.text).toContain("spring third for heave {");
    expect(after.findings).toEqual([]);
  });

  it("mend a set-up in the set-up", () => {
    const context = checked(setup("front.roll-damper.between left.rocker.roll-high and right.rocker.roll-high"));
    const fixes = fixesFor(context, "needless-claim");
    expect(fixes.flatMap(({ edits }) => edits.map(({ uri }) => uri === context.uri)).every(Boolean)).toBe(true);
    for (const { title } of fixes) expect(afterFix(context, "needless-claim", title).findings).toEqual([]);
    expect(fixes.map(({ title }) => title)).toContain("Join roll-damper to right.rocker.roll-low");
  });
});
