/**
 * The grammar on paper: each case of `fixtures/*.txt` is a title, a source, the tree that it makes
 * and the problems that it tells. `UPDATE_FIXTURES=1` writes both anew; read the difference before committing it.
 */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/index.js";
import { showDocument, showProblems } from "./s-expression.js";

const folder = new URL("./fixtures/", import.meta.url);
const update = process.env["UPDATE_FIXTURES"] === "1";

interface Case {
  readonly title: string;
  readonly source: string;
  readonly outcome: string;
}

/** `=== title`, the source, `---`, the tree, then the problems, each behind a `!`. */
function readCases(text: string): readonly Case[] {
  return text
    .split(/^=== /m)
    .slice(1)
    .map((part) => {
      const [title = "", ...lines] = part.split("\n");
      const divider = lines.indexOf("---");
      const source = divider < 0 ? lines : lines.slice(0, divider);
      return {
        title,
        source: source.join("\n").trimEnd(),
        outcome:
          divider < 0
            ? ""
            : lines
                .slice(divider + 1)
                .join("\n")
                .trim(),
      };
    });
}

function outcomeOf(source: string): string {
  const parsed = parse(source);
  const problems = showProblems(parsed);
  return [showDocument(parsed.document), problems.replace(/^(?=.)/gm, "! ")].filter((text) => text !== "").join("\n");
}

function writeCases(cases: readonly Case[]): string {
  return cases.map(({ title, source }) => `=== ${title}\n${source}\n---\n${outcomeOf(source)}\n`).join("\n");
}

const read = (file: string) => readCases(readFileSync(new URL(file, folder), "utf8"));

for (const file of readdirSync(folder).sort()) {
  if (update) writeFileSync(new URL(file, folder), writeCases(read(file)));
  const cases = read(file);
  describe(`grammar: ${file}`, () => {
    it("has cases", () => expect(cases.length).toBeGreaterThan(0));
    it.each(cases.map((one) => [one.title, one] as const))("%s", (_, { source, outcome }) => {
      expect(outcomeOf(source)).toBe(outcome);
    });
  });
}
