import { describe, expect, it } from "vitest";
import { runRules } from "../../../server/findings/run.js";
import { contextOf } from "../../support/context.js";
import { checkFindings } from "../../support/check-findings.js";
import { afterFix, fixesFor } from "../../support/check-fixes.js";
import { contextOfSetup, setupWith, sharedCar } from "../../support/shared-car.js";

describe("unknown-word", () => {
  it("points at the word, and offers the likely one", () => {
    const { context } = checkFindings(`catalogue {
  torsion-bar TB-115 { diametre 11.5 mm, diameter 11.5 mm, length 360 mm }
#                      ^^^^^^^^ error unknown-word: "diametre" is not a word of a "torsion-bar" block, so this line sets nothing. Did you mean "diameter"?
}
`);
    expect(fixesFor(context, "unknown-word").map(({ title }) => title)).toEqual(['Write "diameter"']);
  });

  it("is mended by its fix", () => {
    const context = contextOf(
      { "a.crank": "catalogue {\n  torsoin-bar TB-115 { diameter 11.5 mm, length 360 mm }\n}\n" },
      "a.crank",
    );
    const after = afterFix(context, "unknown-word");
    expect(after.text).toContain("  torsion-bar TB-115 {");
    expect(after.findings).toEqual([]);
  });

  it("lists some words of the place where nothing is alike", () => {
    const { context } = checkFindings(`xyzzy 12 mm
#^^^^ error unknown-word: "xyzzy" is not a word of the top level of a file, so this line sets nothing. Words of this place are "use", "let", "catalogue", "car" or "setup".
`);
    expect(fixesFor(context, "unknown-word")).toEqual([]);
  });

  it("is told once of a word that is needed and mistyped", () => {
    const text = "catalogue {\n  torsion-bar TB-115 { Diameter 11.5 mm, length 360 mm }\n}\n";
    expect(runRules(contextOf({ "a.crank": text }, "a.crank")).map(({ rule }) => rule)).toEqual(["unknown-word"]);
  });

  it("tells how modes are joined", () => {
    const context = contextOfSetup("axle front {", "  damper extra for heave, roll { fit V-22 }", "}");
    const found = runRules(context).find(({ rule }) => rule === "unknown-word");
    expect(found?.message).toMatch(/Modes are joined by "and": `for heave and roll`/);
  });

  it("speaks of a mode that is none", () => {
    checkFindings(
      setupWith(
        "axle front {",
        "  damper extra for twist { fit V-22, between left.rocker.third and right.rocker.third }",
        "}",
      ).replace(
        /(.*for twist.*\n)/,
        '$1#                    ^^^^^ error unknown-word: "twist" is not a mode that an element can be for here\n',
      ),
      sharedCar,
    );
  });
});

describe("unknown-name", () => {
  it("points at the part, and offers the one that is there", () => {
    const { context } = checkFindings(
      `use "shared.crank"
setup wet from wren {
  front.corner-bar.fit TB-102
#                      ^^^^^^ error unknown-name: There is no part called "TB-102" here, so this refers to nothing. Did you mean
}
`,
      sharedCar,
    );
    const after = afterFix(context, "unknown-name", "TB-120");
    expect(after.text).toContain("front.corner-bar.fit TB-120\n");
    expect(after.findings).toEqual([]);
  });

  it("replaces only the name in a path", () => {
    const context = contextOfSetup(
      "axle front {",
      "  damper extra for heave { fit V-22, between left.rocker.thrid and right.rocker.third }",
      "}",
    );
    const after = afterFix(context, "unknown-name");
    expect(after.text).toContain("between left.rocker.third and right.rocker.third");
    expect(after.findings).toEqual([]);
  });

  it("points at a base that is not there", () => {
    const context = contextOf({ "a.crank": "setup wet from wern {\n}\n" }, "a.crank");
    expect(runRules(context).map(({ rule, span }) => [rule, span])).toEqual([["unknown-name", { start: 15, end: 19 }]]);
    expect(runRules(context)[0]?.message).toContain("No car or set-up is declared");
  });
});

describe("reserved-name", () => {
  it("points at the name", () => {
    checkFindings(
      `use "shared.crank"
setup wet from wren {
  axle front {
    damper left for heave { fit V-22, between left.rocker.third and right.rocker.third }
#          ^^^^ error reserved-name: "left" is a word of the language here
  }
}
`,
      sharedCar,
    );
  });

  it("says nothing to a name with such a word inside", () => {
    const context = contextOfSetup(
      "axle front {",
      "  damper left-over for heave { fit V-22, between left.rocker.third and right.rocker.third }",
      "}",
    );
    expect(runRules(context)).toEqual([]);
  });
});

describe("override-without-target", () => {
  it("points at the step that finds nothing, and offers what is there", () => {
    const { context } = checkFindings(
      `use "shared.crank"
setup wet from wren {
  front.thrid.rate 48 N/mm
#       ^^^^^ error override-without-target: "front.thrid.rate" changes nothing: there is no "thrid" in what this derives from. Did you mean "third"?
}
`,
      sharedCar,
    );
    const after = afterFix(context, "override-without-target");
    expect(after.text).toContain("  front.third.rate 48 N/mm\n");
    expect(after.findings).toEqual([]);
  });

  it("knows what others in the trade say", () => {
    const context = contextOfSetup("front.tire-rate 150 N/mm");
    expect(fixesFor(context, "override-without-target")[0]?.title).toBe('Write "tyre-rate"');
  });

  it("speaks of an element to remove that is not there", () => {
    const context = contextOfSetup("remove front.rol-damper");
    const after = afterFix(context, "override-without-target");
    expect(after.text).toContain("remove front.roll-damper\n");
    expect(after.findings).toEqual([]);
  });
});
