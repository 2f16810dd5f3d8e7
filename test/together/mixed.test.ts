/** An axle carried by heave and roll elements alone is legal as long as every mode is served; without one of them it is told. */
import { describe, expect, it } from "vitest";
import { runRules } from "../../server/findings/run.js";
import { contextOf } from "../support/context.js";
import { samples } from "../support/samples.js";

const told = (...lines: readonly string[]): readonly string[] => {
  const files = {
    "mixed.crank": samples["systems/mixed.crank"] ?? "",
    "trial.crank": `use "mixed.crank"\n\nsetup trial from mixed {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`,
  };
  return runRules(contextOf(files, "trial.crank"))
    .filter(({ rule }) => rule === "unserved-mode")
    .map(({ message }) => message);
};

describe("mixed.crank", () => {
  it("serves every mode", () => {
    expect(told("front.third.rate by +5 N/mm")).toEqual([]);
  });

  it.each([
    ["front.third", /heave/],
    ["front.heave-damper", /heave/],
    ["front.roll-damper", /roll/],
    ["front.bar", /roll/],
  ] as const)("does not without %s", (element, mode) => {
    const messages = told(`remove ${element}`);
    expect(messages).toHaveLength(1);
    expect(messages[0]).toMatch(mode);
  });
});
