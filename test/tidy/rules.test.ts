/** Each check has its file, its page, its sample and a test that speaks of it. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rules } from "../../server/findings/registry.js";

const RULES = "server/findings/rules";
const ruleFiles = readdirSync(RULES, { recursive: true, encoding: "utf8" }).filter((path) => path.endsWith(".ts"));
const tests = readdirSync("test/findings", { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".test.ts"))
  .map((path) => readFileSync(`test/findings/${path}`, "utf8"));
const pages = readFileSync("server/findings/PAGES.md", "utf8");
/** What is said when a rule itself fails: not a rule, and no text can show it. */
const NO_RULE = "internal-error";

describe("the rules", () => {
  it("are all in the registry", () => {
    const named = ruleFiles.map((path) => path.replace(/^.*[\\/]|\.ts$/g, "")).filter((id) => id !== NO_RULE);
    expect(rules.map(({ meta }) => meta.id).sort()).toEqual(named.sort());
  });
});

describe.each(rules.map(({ meta }) => meta.id))("the rule %s", (id) => {
  it("has a page", () => {
    expect(pages).toContain(`\n## ${id}\n`);
  });

  it("has a sample", () => {
    expect(existsSync(`samples/broken/${id}.crank`)).toBe(true);
  });

  it("has a test that names it", () => {
    expect(tests.some((text) => text.includes(`"${id}"`) || text.includes(`: ${id}`))).toBe(true);
  });
});
