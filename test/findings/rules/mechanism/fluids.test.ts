/** Gas that is used up, pressures below that of the air, and links that serve, or fail to serve, by their motion. */
import { describe, expect, it } from "vitest";
import type { RuleContext } from "../../../../server/findings/context.js";
import { runRules } from "../../../../server/findings/run.js";
import { underlined } from "../../../support/axle-car.js";
import { contextOf } from "../../../support/context.js";
import { brokenSamples } from "../../../support/shared-car.js";
import { twoAxles } from "../../../support/two-axles.js";

const gas = brokenSamples["gas.crank"] ?? "";
const trial = (...lines: readonly string[]): RuleContext =>
  contextOf(
    { ...brokenSamples, "trial.crank": `use "gas.crank"\n\nsetup trial from siskin {\n  ${lines.join("\n  ")}\n}\n` },
    "trial.crank",
  );
const own = (text: string): RuleContext => contextOf({ "car.crank": text }, "car.crank");
const told = (context: RuleContext): readonly string[] =>
  runRules(context).map((finding) => `${finding.severity} ${finding.rule} at ${underlined(context, finding)}`);

describe("gas-exhausted", () => {
  it("warns where it is nearly so, is an error where nothing is left, and stands at the value", () => {
    expect(told(trial("front.third.volume 13 ml"))).toEqual([]);
    expect(told(trial("front.third.volume 11 ml"))).toEqual(["warning gas-exhausted at front.third.volume 11 ml"]);
    expect(told(trial("front.third.volume 8 ml"))).toEqual(["error gas-exhausted at front.third.volume 8 ml"]);
    expect(told(own(gas.replace("volume 30 ml", "volume 8 ml")))).toEqual(["error gas-exhausted at volume 8 ml"]);
  });

  it("says how much is swept and to what pressure, in the author's unit", () => {
    const [finding] = runRules(trial("front.third.volume 11 ml", "front.third.pressure 116 psi"));
    expect(finding?.message).toMatch(
      /^third sweeps 87 % of its gas within the travel, and its pressure runs up to 1\d\d\d psi/,
    );
  });

  it("is told of an accumulator at its own volume, and everything else is computed", () => {
    const context = own(linked("accumulator { pressure 20 bar, volume 15 ml }"));
    expect(told(context)).toEqual(["error gas-exhausted at volume 15 ml"]);
    const { modal } = context.cars[0]?.analysis ?? {};
    expect(modal?.springs.body.pitch).toBeGreaterThan(0);
  });

  it("is told with the car and not again with a set-up that inherits it", () => {
    const files = {
      "gas.crank": gas.replace("volume 30 ml", "volume 11 ml"),
      "trial.crank": 'use "gas.crank"\n\nsetup trial from siskin {\n  mass 545 kg\n}\n',
    };
    expect(told(contextOf(files, "trial.crank"))).toEqual([]);
  });
});

const linked = (law: string, more = ""): string =>
  twoAxles(
    `hydraulic-link pitch-line for pitch {
    cylinder nose { between front.left.rocker.third and front.right.rocker.third, area 314 mm^2 }
    cylinder tail { between rear.left.rocker.third and rear.right.rocker.third, area 314 mm^2 }
    line nose to tail crossed${more}
    ${law}
  }`,
    `spring side for corner {
      rate 150 N/mm
      acts both-ways
      between rocker.side and chassis (-55, 88, 385) mm
    }
    damper calm for corner {
      damping 2 N*s/mm
      between rocker.side and chassis (-55, 88, 385) mm
    }`,
  );

describe("pressure-below-ambient", () => {
  it("stands at the charge and says what follows", () => {
    const context = trial("front.third.pressure 1.2 bar", "front.third.volume 13 ml");
    expect(told(context)).toEqual(["warning pressure-below-ambient at front.third.pressure 1.2 bar"]);
    expect(runRules(context)[0]?.message).toMatch(
      /^third falls to -0\.\d+ bar within the travel, .* pulls instead of pushing/,
    );
  });

  it("is told of oil without a charge", () => {
    const context = own(linked("", " { bulk-modulus 1.4 GPa, volume 60 ml }"));
    expect(told(context)).toEqual(["warning pressure-below-ambient at pitch-line"]);
    expect(runRules(context)[0]?.message).toMatch(
      /^pitch-line falls to -1\.01 bar .* its oil draws air past the seals\. Charge it higher/,
    );
  });
});

describe("unknown-name", () => {
  it("is told of a case that an actuator holds and the car does not have", () => {
    const held = gas.replace(
      "    damper roll-damper",
      "    actuator push for heave {\n      hold { nowhere: 4 mm }\n      between left.rocker.third and right.rocker.third\n    }\n    damper roll-damper",
    );
    expect(told(own(held))).toEqual(["error unknown-name at nowhere"]);
  });
});

describe("unbuildable", () => {
  it("is told of what joins the axles", () => {
    const context = own(linked(""));
    expect(runRules(context).map(({ rule, message }) => `${rule}: ${message}`)).toEqual([
      expect.stringMatching(/^unbuildable: pitch-line cannot be computed: nothing in it gives/),
    ]);
  });
});

describe("unserved-mode", () => {
  const bare = (joining: string): RuleContext =>
    own(
      twoAxles(
        joining,
        "spring side for corner {\n rate 150 N/mm\n between rocker.side and chassis (-55, 88, 385) mm\n }",
      ),
    );
  const damping = (context: RuleContext): readonly string[] =>
    runRules(context)
      .filter(({ rule }) => rule === "unserved-mode")
      .map(({ message }) => message.slice(0, message.indexOf(",")))
      .sort();

  it("goes by what a link between the axles does, not by what it claims", () => {
    const damper =
      "damper tried for pitch {\n damping 2 N*s/mm\n between front.left.rocker.high and rear.right.rocker.low\n }";
    // Between one front and one rear wheel it works in heave and roll of both, whatever it is for.
    expect(damping(bare(damper))).toEqual([]);
    expect(damping(bare("damper tried for roll {\n damping 2 N*s/mm\n ratio pitch 0.8\n }"))).toEqual([
      "The front axle has no damper that works in roll",
      "The rear axle has no damper that works in roll",
    ]);
  });

  it("counts a hydraulic link as a damper only where its line resists", () => {
    const link = (more: string): string => `hydraulic-link tried for heave {
      cylinder nose { between front.left.rocker.third and front.right.rocker.third, area 314 mm^2 }
      cylinder tail { between rear.left.rocker.third and rear.right.rocker.third, area 314 mm^2 }
      line nose to tail${more}
      accumulator { pressure 20 bar, volume 80 ml }
    }`;
    expect(damping(bare(link("")))).toHaveLength(2);
    expect(damping(bare(link("")))[0]).toBe("The front axle has no damper that works in heave and roll");
    expect(damping(bare(link(" { resistance 40 bar*s/l }")))[0]).toBe(
      "The front axle has no damper that works in roll",
    );
  });
});
