import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { examplesIn, pageOf, pagesPath, renderPages, ruleUrl } from "../../server/findings/pages.js";
import { rules } from "../../server/findings/registry.js";
import { runRules } from "../../server/findings/run.js";
import { contextOf, isFormatted } from "../support/context.js";
import { brokenSamples } from "../support/shared-car.js";
import { rulePages, ruleSources } from "../support/rule-sources.js";

/** Rules whose mistake cannot be shown in a few lines of text; they have a sample all the same. */
const withoutExample = new Set(["beyond-limits", "not-text", "measured-table", "internal-error"]);

const pages = rulePages();

describe("the pages", () => {
  it("are fresh (update with vitest -u)", async () => {
    await expect(renderPages(pages)).toMatchFileSnapshot(`../../${pagesPath}`);
  });

  it("are one for each rule file, which is named as its rule", () => {
    expect([...ruleSources().keys()].sort()).toEqual(pages.map(({ id }) => id).sort());
  });

  it("have an anchor that the finding's code points at", () => {
    for (const { id } of pages) expect(renderPages(pages)).toContain(`\n## ${id}\n`);
    expect(pageOf("cycle")).toBe("server/findings/PAGES.md#cycle");
  });

  it("have an address only if the package names a home page", () => {
    const { homepage } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
    if (homepage === undefined) expect(ruleUrl("cycle")).toBeUndefined();
    else expect(ruleUrl("cycle")).toContain(homepage);
  });
});

describe.each(pages.filter(({ id }) => !withoutExample.has(id)))("the page of $id", (page) => {
  const examples = examplesIn(page);
  const rule = rules.find(({ meta }) => meta.id === page.id);

  const ruleIdsIn = (text: string) => {
    const context = contextOf({ ...brokenSamples, "example.crank": text }, "example.crank");
    return [...new Set(runRules(context).map((finding) => finding.rule))];
  };

  it("shows what is wrong, and that only", () => {
    const wrong = examples.filter(({ verdict }) => verdict === "wrong");
    expect(wrong.length).toBeGreaterThan(0);
    for (const { text } of wrong) expect(ruleIdsIn(text)).toEqual([rule?.meta.id]);
  });

  it("shows what is right, in canonical layout", () => {
    const right = examples.filter(({ verdict }) => verdict === "right");
    expect(right.length).toBeGreaterThan(0);
    for (const { text } of right) {
      expect(ruleIdsIn(text)).toEqual([]);
      expect(isFormatted(text)).toBe(true);
    }
  });
});
