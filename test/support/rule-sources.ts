/** The rule files as text, for the tests of the pages and the tidy test. */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { pageIn, type RulePage } from "../../server/findings/pages.js";
import { rules } from "../../server/findings/registry.js";
import { internalErrorMeta } from "../../server/findings/rules/internal/internal-error.js";

const folder = new URL("../../server/findings/rules/", import.meta.url).pathname;

/** Source of each rule file by id, which is the file's name. */
export function ruleSources(): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".ts"));
  return new Map(files.map((name) => [basename(name, ".ts"), readFileSync(join(folder, name), "utf8")]));
}

/** Pages in the order of the registry, the one of the internal error last. */
export function rulePages(): readonly RulePage[] {
  const sources = ruleSources();
  return [...rules.map(({ meta }) => meta), internalErrorMeta].map(({ id, title }) => {
    const page = pageIn(id, title, sources.get(id) ?? "");
    if (page === undefined) throw new Error(`${id} has no page: its file does not begin with a doc comment`);
    return page;
  });
}
