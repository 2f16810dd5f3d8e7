import { describe, expect, it } from "vitest";
import { runRules, safeEdits } from "../../../server/findings/run.js";
import { contextOf } from "../../support/context.js";
import { checkFindings } from "../../support/check-findings.js";
import { afterFix, fixesFor } from "../../support/check-fixes.js";
import { setupWith, sharedCar } from "../../support/shared-car.js";

const idsIn = (text: string) => runRules(contextOf({ "a.crank": text }, "a.crank"), ["syntax"]).map(({ rule }) => rule);
const of = (text: string) => contextOf({ "a.crank": text }, "a.crank");
const bar = (inside: string) => `catalogue {\n  torsion-bar TB-110 {\n    ${inside}\n    length 360 mm\n  }\n}\n`;

describe("unreadable-line", () => {
  it("points at the sign that cannot stand there, and removes it", () => {
    const { context } = checkFindings(`catalogue {
  torsion-bar TB-110 {
    diameter = 11 mm
#            ^ error unreadable-line: "=" cannot stand here.
    length 360 mm
  }
}
`);
    expect(afterFix(context, "unreadable-line").text).toBe(bar("diameter 11 mm"));
    expect(afterFix(context, "unreadable-line").findings).toEqual([]);
  });

  it.each([
    ["a comment as elsewhere", "  // the softer one", "#", /A comment begins with "#"/],
    ["a semicolon", ";", "", /A line ends a statement/],
  ])("knows %s", (_, sign, right, words) => {
    const context = of(bar(`diameter 11 mm${sign}`));
    const found = runRules(context).filter(({ rule }) => rule === "unreadable-line");
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toMatch(words);
    const after = afterFix(context, "unreadable-line");
    expect(after.text).toBe(bar(`diameter 11 mm${sign.replace(/\/\/|;/, right)}`));
    expect(after.findings).toEqual([]);
  });

  it("points at a brace that closes nothing", () => {
    const { context } = checkFindings(`${bar("diameter 11 mm")}}
#^ error unreadable-line: This "}" closes nothing
`);
    expect(afterFix(context, "unreadable-line").findings).toEqual([]);
  });

  it("puts a pasted sign right", () => {
    const text =
      "let title-offset = 3 mm \u2212 1 mm\ncatalogue { torsion-bar TB-110 { diameter 11 mm, length 360 mm + title-offset } }\n";
    const { findings, text: after } = afterFix(of(text), "unreadable-line");
    expect(after).toBe(text.replace("\u2212", "-"));
    expect(findings).toEqual([]);
  });

  it("puts both marks of a pasted text right at once", () => {
    const text = "use \u201cparts.crank\u201d\n";
    const context = contextOf({ "a.crank": text, "parts.crank": "" }, "a.crank");
    const after = afterFix(context, "unreadable-line");
    expect(after.text).toBe('use "parts.crank"\n');
    expect(after.findings).toEqual([]);
  });

  it("does that in bulk only where the sign can be nothing else", () => {
    const safe = (text: string) => safeEdits(runRules(of(text)), of(text)).length;
    expect(safe("let a = 3 mm \u2212 1 mm\n")).toBe(1);
    expect(safe("let a = 3 mm \u2013 1 mm\n")).toBe(0);
  });

  it.each([["1.2.3 mm"], ["12 mm £"], ["(1, 2"]])("says something to %s", (value) => {
    expect(idsIn(bar(`diameter ${value}`)).length).toBeGreaterThan(0);
  });
});

describe("unclosed", () => {
  it("points at the brace that opens, and closes the block below its last line", () => {
    const { context } = checkFindings(`catalogue {
#         ^ error unclosed: This block is never closed
  torsion-bar TB-110 { diameter 11 mm, length 360 mm }
`);
    const after = afterFix(context, "unclosed");
    expect(after.text).toBe("catalogue {\n  torsion-bar TB-110 { diameter 11 mm, length 360 mm }\n}\n");
    expect(after.findings).toEqual([]);
  });

  it("points at the line whose opening brace is missing, and at nothing below it", () => {
    const { context } = checkFindings(`catalogue {
  torsion-bar TB-110  # the softer one
# ^^^^^^^^^^^^^^^^^^ error unclosed: A "{" is missing behind this line
    diameter 11 mm
    length 360 mm
  }
}
`);
    const after = afterFix(context, "unclosed");
    expect(after.text).toContain("  torsion-bar TB-110 {  # the softer one\n");
    expect(after.findings).toEqual([]);
  });

  it("points at the bracket that opens, and closes it behind its last number", () => {
    const { context } = checkFindings(`let reach = 12 mm + (3 mm - 1 mm
#                   ^ error unclosed: This bracket is never closed
catalogue { torsion-bar TB-110 { diameter 11 mm, length 340 mm + reach } }
`);
    const after = afterFix(context, "unclosed");
    expect(after.text).toContain("let reach = 12 mm + (3 mm - 1 mm)\n");
    expect(after.findings).toEqual([]);
  });

  it("closes a point before the unit, which is meant for all of its numbers", () => {
    const text = setupWith("front.rocker.eye spare (30, 160, 400 mm");
    const after = afterFix(contextOf({ ...sharedCar, "a.crank": text }, "a.crank"), "unclosed");
    expect(after.text).toContain("front.rocker.eye spare (30, 160, 400) mm\n");
    expect(after.findings).toEqual([]);
  });

  it("points at a text without its second quotation mark, and writes it", () => {
    const text = 'use "shared.crank\n';
    const files = { "a.crank": text, "shared.crank": "" };
    const after = afterFix(contextOf(files, "a.crank"), "unclosed");
    expect(after.text).toBe('use "shared.crank"\n');
    expect(after.findings).toEqual([]);
  });
});

describe("decimal-comma", () => {
  it("points at the number, and writes a point", () => {
    const { context } = checkFindings(`catalogue {
  torsion-bar TB-110 {
    diameter 11,5 mm
#            ^^^^ error decimal-comma: "11.5"
    length 360 mm
  }
}
`);
    const after = afterFix(context, "decimal-comma");
    expect(after.text).toBe(bar("diameter 11.5 mm"));
    expect(after.findings).toEqual([]);
    expect(after.fix.safe).toBe(true);
  });

  it("leaves it to a person where the comma may part thousands", () => {
    expect(afterFix(of(bar("diameter 1,250 mm")), "decimal-comma").fix.safe).toBe(false);
  });

  it("says nothing to a comma between statements or in a point", () => {
    expect(idsIn("catalogue { torsion-bar TB-110 { diameter 11 mm, length 360 mm } }\n")).toEqual([]);
    expect(idsIn("let a = (1, 2, 3) mm\n")).toEqual([]);
  });
});

describe("tight-minus", () => {
  it("points at the minus, and gives it blanks", () => {
    const { context } = checkFindings(`let reach = 12 mm -3 mm
#                 ^ error tight-minus: Between two values "-" has a blank on each side
catalogue { torsion-bar TB-110 { diameter 11 mm, length 340 mm + reach } }
`);
    const after = afterFix(context, "tight-minus");
    expect(after.text).toContain("let reach = 12 mm - 3 mm\n");
    expect(after.findings).toEqual([]);
  });

  it("says nothing to a minus with blanks, a sign or a hyphen", () => {
    expect(idsIn("let a-b = -3 mm\nlet c = a-b - 3 mm\n")).toEqual([]);
  });
});

describe("beyond-limits", () => {
  it("speaks of a name that is too long and of brackets that are too deep, without a fix", () => {
    expect(idsIn(`let ${"a".repeat(20_000)} = 1 mm\n`)).toEqual(["beyond-limits"]);
    expect(new Set(idsIn(`let a = ${"(".repeat(300)}1 mm${")".repeat(300)}\n`))).toEqual(new Set(["beyond-limits"]));
    expect(fixesFor(of(`let ${"a".repeat(20_000)} = 1 mm\n`), "beyond-limits")).toEqual([]);
  });

  it("says nothing to what is just long", () => {
    expect(idsIn(`let ${"a".repeat(200)} = ${"(".repeat(50)}1 mm${")".repeat(50)}\n`)).toEqual([]);
  });
});

describe("not-text", () => {
  it("points at the first letter that was lost", () => {
    const found = runRules(of("# a \ufffdnd b\nlet a = 1 mm\n"), ["syntax"]);
    expect(found.map(({ rule, span }) => [rule, span])).toEqual([["not-text", { start: 4, end: 5 }]]);
  });

  it("says nothing to letters of any alphabet", () => {
    expect(idsIn("# Größe, ∅, ширина\nlet größe = 1 mm\n")).toEqual([]);
  });
});
