import { describe, expect, it } from "vitest";
import { runRules } from "../../../server/findings/run.js";
import { checkFindings } from "../../support/check-findings.js";
import { afterFix, fixesFor } from "../../support/check-fixes.js";
import { contextOfSetup, sharedCar } from "../../support/shared-car.js";

describe("range-violated", () => {
  it("points at the value, and drops a slipped minus", () => {
    const { context } = checkFindings(
      `use "shared.crank"
setup wet from wren {
  front.third.rate -48 N/mm
#                  ^^^^^^^^ error range-violated: "rate" is -48 N/mm, but it has to be
}
`,
      sharedCar,
    );
    const after = afterFix(context, "range-violated");
    expect(after.text).toContain("rate 48 N/mm\n");
    expect(after.findings).toEqual([]);
  });

  it("tells of a left wheel that stands on the right", () => {
    const context = contextOfSetup("front.wheel.centre (0, -735, 230) mm");
    const found = runRules(context).find(({ rule }) => rule === "range-violated");
    expect(found?.message).toMatch(/is -735 mm, but it has to be above 0 mm, since y points left/);
  });

  it("speaks of a share above 100 %, in the author's unit", () => {
    const [found] = runRules(contextOfSetup("mass-front 144 %"));
    expect(found?.message).toBe(
      '"mass-front" is 144 %, but it has to be at most 100 %; nothing can be computed with it. Correct the value.',
    );
    expect(fixesFor(contextOfSetup("mass-front 144 %"), "range-violated")).toEqual([]);
  });
});

describe("implausible-value", () => {
  it.each([
    ["lateral 9 g", "-6 g to 6 g"],
    ["longitudinal -9 g", "-7 g to 4 g"],
    ["vertical 5 g", "-1 g to 3 g"],
  ])("tells the usual range of %s in whole gravities", (line, range) => {
    const said = [...runRules(contextOfSetup(`case odd { ${line} }`))].filter(
      ({ rule }) => rule === "implausible-value",
    );
    expect(said.map(({ message }) => message)).toEqual([expect.stringContaining(`in practice it is ${range} (`)]);
  });

  it("informs with the usual range in the author's unit and where it comes from", () => {
    checkFindings(
      `use "shared.crank"
setup wet from wren {
  front.tyre-rate 1650 N/mm
#                 ^^^^^^^^^ information implausible-value: "tyre-rate" is 1650 N/mm; in practice it is 60 N/mm to 400 N/mm (common practice, no published source).
}
`,
      sharedCar,
    );
  });

  it("offers the unit with which the same digits would be usual", () => {
    const context = contextOfSetup("front.tyre-rate 900 N/mm");
    const after = afterFix(context, "implausible-value", "lbf/in");
    expect(after.text).toContain("tyre-rate 900 lbf/in\n");
    expect(after.findings).toEqual([]);
  });

  it("says nothing inside the range", () => {
    expect(runRules(contextOfSetup("mass 555 kg"))).toEqual([]);
  });
});
