/** An element that is moved in a mode that it is not for: found where it is, told once, in words that a mechanic can read aloud. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../../../server/findings/run.js";
import {
  axle,
  axleWith,
  carAnd,
  carWith,
  checked,
  figuresOf,
  found,
  setup,
  underlined,
} from "../../../support/axle-car.js";
import { checkFindings } from "../../../support/check-findings.js";
import { contextOf } from "../../../support/context.js";
import { brokenSamples } from "../../../support/shared-car.js";

const leaking = carWith(["eye roll-low (45, 175, 348) mm", "eye roll-low (45, 180, 356) mm"]);
const couplings = (text: string, car: string = axle) =>
  runRules(checked(text, car)).filter(({ rule }) => rule === "coupling");

describe("coupling", () => {
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

  it("reads as a sentence with its figures", () => {
    const [finding] = couplings(leaking);
    const { leak } = figuresOf(checked(leaking), "front.roll-damper");
    if (leak === undefined || "kind" in leak || typeof leak.finite !== "number") throw new Error("no leak");
    const [design, travel] = [leak.firstOrder, leak.finite].map((share) => `${(share * 100).toFixed(1)} %`);
    expect(finding?.message).toBe(
      `roll-damper is for roll, but heave moves it too: ${design} of its own motion at design, ${travel} over the travel, ` +
        "0.5 % of the damping in heave. Adjusting roll with it disturbs heave. Move an eye, or say that it is for both.",
    );
  });

  it("says how many times over where the wrong mode moves it more", () => {
    const [finding] = couplings(setup("front.roll-damper.between left.rocker.roll-high and right.rocker.third"));
    expect(finding?.message).toContain(
      "heave moves it too: 26 times its own motion at design, 20 times over the travel",
    );
  });

  it("is information above 2 %, a warning above 5 %", () => {
    expect(found(setup("front.rocker.roll-low (45, 178, 348) mm"))).toEqual([]);
    expect(found(setup("front.rocker.roll-low (45, 181, 348) mm"))).toEqual(["information coupling"]);
    expect(found(setup("front.rocker.roll-low (45, 193, 348) mm"))).toEqual(["warning coupling"]);
  });

  it("takes other limits from the file, be it the car's or the set-up's", () => {
    const limits = (information: number, warning: number) =>
      `checks { leak { information ${information} %, warning ${warning} % } }`;
    const moved = "front.rocker.roll-low (45, 183, 348) mm";
    expect(found(setup(moved))).toEqual(["information coupling"]);
    expect(found(setup(moved, limits(10, 20)))).toEqual([]);
    expect(found(setup(moved, limits(1, 2)))).toEqual(["warning coupling"]);
    expect(found(setup(moved), carAnd(limits(10, 20)))).toEqual([]);
    expect(found(setup(moved), carAnd(limits(1, 2)))).toEqual(["warning coupling"]);
  });

  it("counts what is left over the travel where design itself is clean", () => {
    const bent = carWith(["eye roll-high (45, 175, 452) mm", "eye roll-high (45, 122, 436) mm"]);
    const { leak } = figuresOf(checked(bent), "front.roll-damper");
    expect(leak).toMatchObject({ firstOrder: expect.toSatisfy((share: number) => share < 0.01) });
    expect(
      couplings(bent).map(({ severity, message }) => [severity, message.includes("10.5 % over the travel")]),
    ).toEqual([["warning", true]]);
  });

  it("tells of a load that pushes as the element swings, where its motion is clean", () => {
    const leaning = "eye third (0, 184, 456) mm";
    const loaded = carWith(
      ["eye third (0, 192, 456) mm", leaning],
      ["rate 55 N/mm", "rate 55 N/mm\n      preload 900 N"],
    );
    expect(found(carWith(["eye third (0, 192, 456) mm", leaning]))).toEqual([]);
    const [finding] = couplings(loaded);
    expect(finding?.message).toMatch(
      /^third is for heave and roll hardly moves it, but it takes [\d.]+ % of the stiffness in roll away, by the load that it carries as it swings\./,
    );
  });

  it("is told with the car and not again with a set-up that inherits it", () => {
    const files = { ...brokenSamples, "axle.crank": leaking, "trial.crank": setup("mass 545 kg") };
    expect(runRules(contextOf(files, "trial.crank"))).toEqual([]);
    expect(runRules(contextOf(files, "axle.crank")).map(({ rule }) => rule)).toEqual(["coupling"]);
  });

  it("is told again where the set-up makes a warning of an information", () => {
    const mild = carWith(["eye roll-low (45, 175, 348) mm", "eye roll-low (45, 181, 348) mm"]);
    expect(found(setup("front.rocker.roll-low (45, 182, 348) mm"), mild)).toEqual([]);
    expect(found(setup("front.rocker.roll-low (45, 193, 348) mm"), mild)).toEqual(["warning coupling"]);
  });

  it.each([
    ["the eye's", "front.rocker.roll-low (45, 193, 348) mm"],
    ["one side's eye's", "front.right.rocker.roll-low (45, -193, 348) mm"],
    ["the connection's", "front.roll-damper.between left.rocker.roll-high and right.rocker.side"],
    ["the rocker's", "front.rocker.pivot (0, 190, 408) mm"],
  ])("stands at %s line of the set-up that does it", (_whose, line) => {
    const context = checked(setup("mass 545 kg", line));
    const [finding] = runRules(context).filter(({ rule }) => rule === "coupling");
    expect(finding && underlined(context, finding)).toBe(line);
  });

  it("stands at the set-up's only line about the axle, else at its name", () => {
    const bump = "front.travel -30 .. 60 mm";
    const mild = carWith(["eye roll-low (45, 175, 348) mm", "eye roll-low (45, 179.5, 348) mm"]);
    const at = (...lines: readonly string[]) => {
      const context = checked(setup(...lines), mild);
      return runRules(context)
        .filter(({ rule }) => rule !== "over-stress")
        .map((finding) => `${finding.rule} ${underlined(context, finding)}`);
    };
    expect(at("mass 545 kg")).toEqual([]);
    expect(at("mass 545 kg", bump)).toEqual([`coupling ${bump}`]);
    expect(at("front.third.rate 50 N/mm", bump)).toEqual(["coupling trial"]);
  });

  it("tells of every element that one line couples", () => {
    const two = axleWith(
      "inerter roll-inerter for roll {",
      "  inertance 20 kg",
      "  between left.rocker.roll-high and right.rocker.roll-low",
      "}",
    );
    const names = couplings(setup("front.rocker.roll-low (45, 193, 348) mm"), two).map(
      ({ message }) => message.split(" ")[0],
    );
    expect(new Set(names)).toEqual(new Set(["roll-damper", "roll-inerter"]));
  });

  it("says nothing of an element for a corner, which the other wheel does not reach, or for both modes", () => {
    expect(couplings(axle)).toEqual([]);
    expect(couplings(leaking.replace("roll-damper for roll", "roll-damper for roll and heave"))).toEqual([]);
  });
});
