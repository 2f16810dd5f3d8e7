import { describe, expect, it } from "vitest";
import { runRules, safeEdits } from "../../../server/findings/run.js";
import { contextOf, isFormatted } from "../../support/context.js";
import { checkFindings } from "../../support/check-findings.js";
import { afterFix, fixesFor } from "../../support/check-fixes.js";
import { contextOfSetup, sharedCar } from "../../support/shared-car.js";

const catalogue = (inside: string) => contextOf({ "a.crank": `catalogue {\n${inside}\n}\n` }, "a.crank");

describe("missing-property", () => {
  it("points at the part, and puts the property where it usually stands", () => {
    const { context } = checkFindings(`catalogue {
  torsion-bar TB-115 { length 360 mm }
# ^^^^^^^^^^^^^^^^^^ error missing-property: torsion-bar TB-115 has no "diameter" (
}
`);
    const after = afterFix(context, "missing-property");
    expect(after.text).toMatch(/torsion-bar TB-115 \{ diameter \S+ mm, length 360 mm \}/);
    expect(after.findings).toEqual([]);
    expect(isFormatted(after.text)).toBe(true);
  });

  it("gives it a line of its own in a block of several lines", () => {
    const after = afterFix(
      catalogue("  torsion-bar TB-115 {\n    diameter 11.5 mm\n    stock 2\n  }"),
      "missing-property",
    );
    expect(after.text).toMatch(/diameter 11.5 mm\n {4}length \S+ mm\n {4}stock 2\n/);
    expect(after.findings).toEqual([]);
  });

  it("leads from an empty car to one that checks clean, fix by fix", () => {
    let context = contextOf({ "a.crank": 'car lark "Lark" {\n  axle front {\n  }\n}\n' }, "a.crank");
    let steps = 0;
    while (runRules(context).some(({ rule }) => rule === "missing-property") && steps < 60) {
      context = afterFix(context, "missing-property").context;
      steps++;
    }
    expect(runRules(context).filter(({ severity }) => severity === "error")).toEqual([]);
    expect(steps).toBeGreaterThan(5);
    expect(steps).toBeLessThan(60);
  });

  it("tells once that an element is joined to nothing", () => {
    const spring = "car lark {\n  axle front {\n    spring third for heave { rate 50 N/mm }\n  }\n}\n";
    const found = runRules(contextOf({ "a.crank": spring }, "a.crank"));
    expect(found.filter(({ message }) => message.startsWith('spring third has no "between"'))).toHaveLength(1);
  });

  it("says nothing where an unreadable line of the block may be the missing one", () => {
    const found = runRules(catalogue("  torsion-bar TB-115 { = 11.5 mm, length 360 mm }"));
    expect(found.map(({ rule }) => rule)).toEqual(["unreadable-line"]);
  });
});

describe("duplicate-property", () => {
  const twice = (a: string, b: string) => catalogue(`  torsion-bar TB-115 { diameter 11.5 mm, ${a}, ${b} }`);

  it("points at the second, tells of the first, and lets one choose", () => {
    const { context, findings } = checkFindings(`catalogue {
  torsion-bar TB-115 { diameter 11.5 mm, length 360 mm, length 372 mm }
#                                                       ^^^^^^^^^^^^^ error duplicate-property: "length" is given twice
}
`);
    expect(findings[0]?.related).toHaveLength(1);
    expect(fixesFor(context, "duplicate-property").map(({ title, safe }) => [title, safe])).toEqual([
      ['Keep "length 360 mm"', false],
      ['Keep "length 372 mm"', false],
    ]);
    for (const [kept, gone] of [
      ["360", "372"],
      ["372", "360"],
    ] as const) {
      const after = afterFix(context, "duplicate-property", kept);
      expect(after.findings).toEqual([]);
      expect(after.text).toContain(`length ${kept} mm }`);
      expect(after.text).not.toContain(gone);
    }
  });

  it("drops the second in bulk where both say the same", () => {
    const context = twice("length 360 mm", "length 360 mm");
    const edits = safeEdits(runRules(context), context);
    expect(edits).toHaveLength(1);
    expect(runRules(context.retry(edits.map(({ uri, span, newText }) => ({ uri, ...span, newText }))))).toEqual([]);
  });
});

describe("duplicate-name", () => {
  it("points at the second, tells of the first, and offers a free name", () => {
    const { context, findings } = checkFindings(`catalogue {
  torsion-bar TB-115 { diameter 11.5 mm, length 360 mm }
  torsion-bar TB-115 { diameter 12.5 mm, length 360 mm }
#             ^^^^^^ error duplicate-name: "TB-115" is the name of something else already
}
`);
    expect(findings[0]?.related).toHaveLength(1);
    const after = afterFix(context, "duplicate-name", "TB-115-2");
    expect(after.findings).toEqual([]);
  });
});

describe("wrong-form", () => {
  it("points at the line, and shows how it is written", () => {
    checkFindings(
      `use "shared.crank"
setup wet from wren {
  front.camber (-2.2, -2.4) deg
#              ^^^^^^^^^^^^^^^^ error wrong-form: "camber" cannot be read in this form, so the line is left out.
}
`,
      sharedCar,
    );
  });

  it("tells of a half-typed element once, with its block", () => {
    for (const typed of ["spring", "spring extra", "spring extra for"]) {
      const [found, ...more] = runRules(
        contextOf({ "a.crank": `car lark {\n  axle front {\n    ${typed}\n  }\n}\n` }, "a.crank"),
      ).filter(({ rule }) => rule !== "missing-property" && rule !== "unserved-mode");
      expect(found?.rule).toBe("wrong-form");
      expect(found?.message).toContain("Something is missing at the end");
      expect(found?.message).toContain("`spring NAME for MODE { … }`");
      expect(more).toEqual([]);
    }
  });

  it("asks what of an element changes where an override only names it", () => {
    const found = runRules(contextOfSetup("front.third")).filter(({ rule }) => rule === "wrong-form");
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toMatch(
      /^Nothing is said of front\.third yet: .* Write `front\.third\.[a-z-]+ VALUE`\.$/,
    );
  });

  it("names the forms first that what is written gets furthest in, and not all eight", () => {
    const inCar = (line: string) => contextOf({ "a.crank": `car lark {\n  ${line}\n}\n` }, "a.crank");
    const messageOf = (line: string) => runRules(inCar(line)).find(({ rule }) => rule === "wrong-form")?.message ?? "";
    expect(messageOf("expect front.heave-rate")).toMatch(
      /Write `expect FIGURE between VALUE and VALUE`, .* 5 more forms/,
    );
    expect(messageOf("expect front.heave-rate at")).toMatch(/Write `expect FIGURE at CASE between VALUE and VALUE`,/);
    expect(messageOf("expect front.heave-rate at hairpin 5 mm")).toMatch(
      /Write `expect FIGURE at CASE VALUE within VALUE`,/,
    );
  });

  it("turns a range round that falls", () => {
    const after = afterFix(contextOfSetup("front.travel 25 .. -30 mm"), "wrong-form");
    expect(after.text).toContain("front.travel -30 .. 25 mm\n");
    expect(after.findings.filter(({ rule }) => rule === "wrong-form")).toEqual([]);
  });

  it("knows a colon as other languages have it, and takes it out", () => {
    const context = catalogue("  torsion-bar TB-115 { diameter: 11.5 mm, length 360 mm }");
    const found = runRules(context);
    expect(found.map(({ rule }) => rule)).toEqual(["wrong-form"]);
    expect(found[0]?.message).toMatch(/^A value follows its word without a colon\./);
    const after = afterFix(context, "wrong-form");
    expect(after.text).toContain("{ diameter 11.5 mm, length 360 mm }");
    expect(after.findings).toEqual([]);
  });

  it("speaks of a value that is missing", () => {
    const found = runRules(catalogue("  torsion-bar TB-115 { diameter, length 360 mm }"));
    expect(found.map(({ rule }) => rule)).toEqual(["wrong-form"]);
  });
});

describe("table-order", () => {
  const valving = (rows: string) =>
    catalogue(`  valving V-16 {\n    bump { ${rows} }\n    rebound { 50 mm/s: 160 N }\n  }`);

  it("points at the row that falls back, and sorts", () => {
    const { context } = checkFindings(`catalogue {
  valving V-16 {
    bump { 50 mm/s: 130 N, 200 mm/s: 300 N, 100 mm/s: 200 N }
#                                           ^^^^^^^^ error table-order: do not rise
    rebound { 50 mm/s: 160 N }
  }
}
`);
    const after = afterFix(context, "table-order");
    expect(after.text).toContain("bump { 50 mm/s: 130 N, 100 mm/s: 200 N, 200 mm/s: 300 N }");
    expect(after.findings).toEqual([]);
  });

  it("compares keys, not digits", () => {
    const after = afterFix(valving("0.2 m/s: 300 N, 100 mm/s: 200 N"), "table-order");
    expect(after.text).toContain("bump { 100 mm/s: 200 N, 0.2 m/s: 300 N }");
    expect(after.findings).toEqual([]);
  });

  it("has no fix for a key that comes twice", () => {
    expect(fixesFor(valving("50 mm/s: 130 N, 50 mm/s: 140 N"), "table-order")).toEqual([]);
  });
});
