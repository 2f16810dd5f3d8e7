/** What is committed is what the vocabulary makes. Where this fails: `npm run generate`. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { generatedFiles } from "../../grammar/highlighting/generate.js";
import { figures, words } from "../../grammar/vocabulary/index.js";
import { parse } from "../../grammar/index.js";
import { showQuantity } from "../../server/quantities/index.js";

const files = generatedFiles(showQuantity);
const textOf = (path: string): string => files.get(path) ?? "";

describe("generated files", () => {
  it.each([...files])("%s is fresh", (path, text) => {
    expect(readFileSync(new URL(`../../${path}`, import.meta.url), "utf8")).toBe(text);
  });

  it("tell every word and figure in the reference", () => {
    const page = textOf("grammar/REFERENCE.md");
    const headings = words.map(({ word }) => `#### \`${word}\``);
    const helps = [...words, ...figures].map(({ help }) => help);
    expect([...headings, ...helps].filter((text) => !page.includes(text))).toEqual([]);
    expect(page).not.toMatch(/undefined|NaN|\[object/);
  });

  it("hold only examples that parse in the reference", () => {
    const examples = [...textOf("grammar/REFERENCE.md").matchAll(/```crank\n(.*?)\n```/gs)].map(
      (match) => match[1] ?? "",
    );
    expect(examples.length).toBeGreaterThan(words.length - 1);
    expect(examples.filter((example) => parse(example).problems.length > 0)).toEqual([]);
  });

  it("hold snippets that parse when their stops are filled as proposed", () => {
    const snippets = JSON.parse(textOf("client/snippets.json")) as Record<string, { prefix: string; body: string[] }>;
    expect(Object.keys(snippets).length).toBeGreaterThan(30);
    const wrong: string[] = [];
    for (const [title, { prefix, body }] of Object.entries(snippets)) {
      const filled = body.join("\n").replace(/\$\{\d+:((?:\\.|[^}\\])*)\}|\$0/g, "$1");
      const isGood = filled.startsWith(prefix) && !filled.includes("$") && parse(filled).problems.length === 0;
      if (!isGood) wrong.push(`${title}: ${filled}`);
    }
    expect(wrong).toEqual([]);
  });
});
