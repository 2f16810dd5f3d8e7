import { describe, expect, it } from "vitest";
import { runRules, safeEdits } from "../../../server/findings/run.js";
import { contextOf } from "../../support/context.js";
import { checkFindings } from "../../support/check-findings.js";
import { afterFix } from "../../support/check-fixes.js";
import { contextOfSetup, setupWith, sharedCar } from "../../support/shared-car.js";

describe("needless-override", () => {
  it("points at the line that repeats what is inherited, fades it, and removes it", () => {
    const { context, findings } = checkFindings(
      `use "shared.crank"
setup wet from wren {
  front.track 1480 mm
# ^^^^^^^^^^^^^^^^^^^ information needless-override: "front.track" has this value already
  mass 555 kg
}
`,
      sharedCar,
    );
    expect(findings[0]?.tags).toEqual(["unnecessary"]);
    expect(findings[0]?.related[0]?.origin.uri).toMatch(/shared\.crank$/);
    const after = afterFix(context, "needless-override");
    expect(after.text).toBe('use "shared.crank"\nsetup wet from wren {\n  mass 555 kg\n}\n');
    expect(after.findings).toEqual([]);
    expect(after.fix.safe).toBe(true);
  });

  it("goes in bulk, and twice changes nothing more", () => {
    const context = contextOfSetup("front.track 1480 mm", "mass 540 kg", "front.third.rate 50 N/mm");
    const after = context.retry(
      safeEdits(runRules(context), context).map(({ uri, span, newText }) => ({ uri, ...span, newText })),
    );
    expect(after.text).toBe(setupWith("front.third.rate 50 N/mm"));
    expect(safeEdits(runRules(after), after)).toEqual([]);
  });

  it("speaks of a side that is the mirror image of the other", () => {
    const context = contextOfSetup("front.right.wheel.centre (0, -731, 230) mm");
    const [found] = runRules(context);
    expect(found?.rule).toBe("needless-override");
    expect(afterFix(context, "needless-override").findings).toEqual([]);
  });

  it("says nothing to a value that differs", () => {
    expect(runRules(contextOfSetup("front.track 1481 mm"))).toEqual([]);
  });
});

describe("unused-part", () => {
  const fitting = (part: string) => `use "shared.crank"
catalogue {
  torsion-bar TB-130 { diameter 13 mm, length 360 mm }
}
setup wet from wren {
  front.corner-bar.fit ${part}
}
`;

  it("hints at the part", () => {
    const [found, ...more] = runRules(contextOf({ ...sharedCar, "a.crank": fitting("TB-120") }, "a.crank"));
    expect([found?.rule, found?.severity, more]).toEqual(["unused-part", "hint", []]);
    expect(fitting("TB-120").slice(found?.span.start, found?.span.end)).toBe("TB-130");
  });

  it("says nothing to one that is fitted", () => {
    expect(runRules(contextOf({ ...sharedCar, "a.crank": fitting("TB-130") }, "a.crank"))).toEqual([]);
  });
});

describe("unused-let", () => {
  it("hints at the name, fades it, and removes the line", () => {
    const { context } = checkFindings(
      `use "shared.crank"
let wet-third = 48 N/mm
#   ^^^^^^^^^ hint unused-let: "wet-third" is used nowhere
setup wet from wren {
  front.third.rate 48 N/mm
}
`,
      sharedCar,
    );
    const after = afterFix(context, "unused-let");
    expect(after.text).not.toContain("let");
    expect(after.findings).toEqual([]);
    expect(after.fix.safe).toBe(false);
  });

  it("says nothing to one that another let uses, or in a file that is there for others", () => {
    const used =
      'use "shared.crank"\nlet a = 40 N/mm\nlet b = a + 8 N/mm\nsetup wet from wren {\n  front.third.rate b\n}\n';
    expect(runRules(contextOf({ ...sharedCar, "a.crank": used }, "a.crank"))).toEqual([]);
    expect(runRules(contextOf({ "a.crank": "let a = 40 N/mm\n" }, "a.crank"))).toEqual([]);
  });
});
