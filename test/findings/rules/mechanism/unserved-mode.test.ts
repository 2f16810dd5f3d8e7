/** An axle without a spring, or without a damper, in a mode. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../../server/findings/run.js";
import { axle, axleWith, carWith, checked, found, setup, underlined } from "../../../support/axle-car.js";

const messages = (text: string, car: string = axle) =>
  runRules(checked(text, car))
    .filter(({ rule }) => rule === "unserved-mode")
    .map(({ message }) => message);

const without = (...names: readonly string[]): string =>
  names.reduce((text, name) => text.replace(new RegExp(` {4}[a-z-]+ ${name} for [\\s\\S]*?\\n {4}\\}\\n`), ""), axle);

describe("unserved-mode", () => {
  it("tells once of a damper that is missing in both modes", () => {
    expect(messages(setup("remove front.side", "remove front.roll-damper"))).toEqual([
      "The front axle has no damper that works in heave and roll, so that it swings on undamped there. Add one for corner, which serves both.",
    ]);
  });

  it("tells of the one mode that is bare", () => {
    expect(messages(setup("remove front.side"))).toEqual([
      "The front axle has no damper that works in heave, so that it swings on undamped there. Add one for heave, or one for corner.",
    ]);
    expect(messages(setup("remove front.corner-bar"), carWith(["trim by corner-bar", "trim by third"]))).toEqual([
      "The front axle has no spring that works in roll, so that nothing carries or centres it there. Add one for roll, or one for corner.",
    ]);
  });

  it("stands at the axle of a car, and at the set-up's line that leaves the mode bare", () => {
    const car = checked(without("side", "roll-damper"));
    expect(runRules(car).map((finding) => [finding.rule, underlined(car, finding)])).toEqual([
      ["unserved-mode", "front"],
    ]);
    const trial = checked(
      setup(
        "remove front.third",
        "remove front.side",
        "front.ride-height 31 mm",
        "remove front.roll-damper",
        "mass 545 kg",
      ),
    );
    expect(runRules(trial).map((finding) => underlined(trial, finding))).toEqual(["remove front.roll-damper"]);
  });

  it("is told with the car and not again with a set-up; what the set-up adds to it is", () => {
    const car = without("side");
    expect(messages(setup("mass 545 kg"), car)).toEqual([]);
    expect(messages(setup("remove front.roll-damper"), car)).toEqual([
      "The front axle has no damper that works in roll, so that it swings on undamped there. Add one for roll, or one for corner.",
    ]);
  });

  it("judges by the motion, not by the claim", () => {
    const like = "front.roll-damper.between left.rocker.roll-high and right.rocker.roll-high";
    expect(messages(setup("remove front.side", like))).toEqual([
      "The front axle has no damper that works in roll, so that it swings on undamped there. Add one for roll, or one for corner.",
    ]);
  });

  it("is content with heave and roll elements alone", () => {
    const pair = axleWith(
      "spring roll-coil for roll {",
      "  rate 40 N/mm",
      "  between left.rocker.roll-high and right.rocker.roll-low",
      "}",
      "damper heave-damper for heave {",
      "  damping 2 N*s/mm",
      "  between left.rocker.third and right.rocker.third",
      "}",
    )
      .replace(/ {4}spring corner-bar[\s\S]*?\n {4}\}\n/, "")
      .replace(/ {4}damper side[\s\S]*?\n {4}\}\n/, "")
      .replace("trim by corner-bar", "trim by third")
      .replace("rate 55 N/mm", "rate 55 N/mm\n      acts both-ways");
    expect(found(pair)).toEqual([]);
  });

  it("goes by the claims where no motion is known", () => {
    const open = axle.replace(/ {6}push-rod .*\n/, "");
    expect(found(open).filter((line) => line.includes("unserved-mode"))).toEqual([]);
  });

  it("does not take a stop at the end of the travel for a spring", () => {
    const stop = axleWith(
      "bump-stop stop for corner {",
      "  rate 200 N/mm",
      "  gap 20 mm",
      "  between rocker.side and chassis (-45, 45, 466) mm",
      "}",
    )
      .replace(/ {4}spring corner-bar[\s\S]*?\n {4}\}\n/, "")
      .replace(/ {4}spring third[\s\S]*?\n {4}\}\n/, "")
      .replace("    trim by corner-bar\n", "");
    expect(messages(stop)[0]).toContain("has no spring that works in heave and roll");
  });
});
