/** What mends a missed expectation: each change is held against the check on the changed text. */
import { describe, expect, it } from "vitest";
import { contextOf } from "../../../support/context.js";
import { afterFix, fixesFor } from "../../../support/check-fixes.js";
import { quillParts, quillText } from "../../../support/quill.js";

const missed = (findings: readonly { readonly rule: string }[]) =>
  findings.filter(({ rule }) => rule === "missed-expectation");

const carWith = (from: string, to: string) =>
  contextOf({ ...quillParts, "quill.crank": quillText.replace(from, to) }, "quill.crank");

const setupWith = (...lines: readonly string[]) =>
  contextOf(
    {
      ...quillParts,
      "quill.crank": quillText,
      "day.crank": `use "quill.crank"\n\nsetup day from quill {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`,
    },
    "day.crank",
  );

describe("the changes that meet a missed expectation", () => {
  it("are the nearest part first, then values, and each meets it in the car's own text", () => {
    const context = carWith("between 150 and 190 N/mm", "between 182 and 190 N/mm");
    const fixes = fixesFor(context, "missed-expectation");
    expect(fixes[0]).toMatchObject({ title: expect.stringMatching(/^Set front\.\S+\.fit to /), preferred: true });
    expect(fixes.some(({ title }) => title.startsWith("Set front.third.rate to "))).toBe(true);
    for (const { title } of fixes) {
      const { findings, text } = afterFix(context, "missed-expectation", title);
      expect(missed(findings)).toEqual([]);
      expect(text).toContain(title.replace(/^Set \S+ to /, ""));
    }
  });

  it("come as lines of the set-up where the car's own text is not to be changed, in few digits", () => {
    const context = setupWith("expect front.heave-rate between 182 and 190 N/mm");
    const { text, findings, fix } = afterFix(context, "missed-expectation", "front.third.rate");
    expect(missed(findings)).toEqual([]);
    expect(fix.title).toMatch(/^Set front\.third\.rate to \d{2}(\.\d)? N\/mm$/);
    expect(text).toMatch(/\n {2}front\.third\.rate \d+(\.\d)? N\/mm\n/);
  });

  it("change the set-up's own line where it has one", () => {
    const context = setupWith("front.third.rate 30 N/mm", "expect front.heave-rate between 160 and 170 N/mm");
    const { text } = afterFix(context, "missed-expectation", "front.third.rate");
    expect(text.match(/front\.third\.rate/g)).toHaveLength(1);
  });

  it("meet what is expected in a case", () => {
    const context = setupWith("expect load-transfer-front at hairpin between 47.5 and 48 %");
    const fixes = fixesFor(context, "missed-expectation");
    expect(fixes.length).toBeGreaterThan(0);
    for (const { title } of fixes) expect(missed(afterFix(context, "missed-expectation", title).findings)).toEqual([]);
  });

  it("are none where no single one meets it", () => {
    expect(fixesFor(setupWith("expect front.heave-rate above 90000 N/mm"), "missed-expectation")).toEqual([]);
  });
});
