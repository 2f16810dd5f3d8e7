/** A load case that lacks something: told at the case with the reason, and mended where a word of the car is missing. */
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../../../server/findings/edits.js";
import { fixesOf, runRules } from "../../../../server/findings/run.js";
import { underlined } from "../../../support/axle-car.js";
import { contextOf } from "../../../support/context.js";
import { brokenSamples } from "../../../support/shared-car.js";

const car = brokenSamples["cases.crank"] ?? "";
const BRAKES = "  brakes { front 57 %, mounting outboard }\n";
const DRIVE = "  drive rear\n";
const unsolved = (text: string) => {
  const context = contextOf({ "car.crank": text }, "car.crank");
  return { context, found: runRules(context).filter(({ rule }) => rule === "case-not-solved") };
};

describe("case-not-solved", () => {
  it("tells braking without brakes at the case, and adds them", () => {
    const braking = car.replace(
      "  case straight",
      "  case braking { speed 90 km/h, longitudinal -1 g }\n  case straight",
    );
    expect(unsolved(braking).found).toEqual([]);
    const text = braking.replace(BRAKES, "");
    const { context, found } = unsolved(text);
    expect(found.map((one) => [one.severity, underlined(context, one), one.message])).toEqual([
      [
        "information",
        "braking",
        "braking of wagtail is not solved: the car has no brakes, and the case has braking. Say what is missing, or leave it out of the case.",
      ],
    ]);
    const [fix, ...more] = fixesOf(found[0]!, context);
    expect([fix?.title, more]).toEqual(['Add "brakes { front 58 %, mounting outboard }"', []]);
    expect(unsolved(applyEdits(text, fix?.edits ?? [])).found).toEqual([]);
  });

  it("tells cases for one reason once: drag without a drive", () => {
    const { context, found } = unsolved(car.replace(DRIVE, ""));
    expect(found.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^straight and corner of wagtail are not solved: the car has no drive/),
    ]);
    expect(fixesOf(found[0]!, context).map(({ title }) => title)).toEqual(['Add "drive rear"']);
  });

  it("offers nothing that would not solve the case", () => {
    const context = contextOf(brokenSamples, "case-not-solved.crank");
    const [finding] = runRules(context);
    expect(finding?.message).toMatch(/^hairpin of parking is not solved: .*rack/);
    expect(fixesOf(finding!, context)).toEqual([]);
  });
});
