/** What no tracked text may hold: paths of a machine, addresses of registries, work put off. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const tracked = execFileSync("git", ["ls-files"], { encoding: "utf8" })
  .split("\n")
  .filter((path) => path !== "");
/** Binary files, and this one, which has to spell out what it looks for. */
const texts = tracked.filter((path) => !/\.(png|vsix)$/.test(path) && path !== "test/tidy/tracked-text.test.ts");

const unwanted: readonly { readonly what: string; readonly pattern: RegExp; readonly except?: RegExp }[] = [
  { what: "a path of a machine", pattern: /(?<![\w.])\/(?:work|root|tmp|home|Users)\/\w/ },
  { what: "the address of a registry", pattern: /registry\.[a-z]+\.(?:org|com)|"resolved":/ },
  // The linter names these words in order to forbid them.
  { what: "work put off", pattern: /\b(?:TODO|FIXME|XXX)\b/i, except: /^\.oxlintrc\.json$/ },
];

describe("tracked files", () => {
  it.each(unwanted)("hold nowhere $what", ({ pattern, except }) => {
    const found = texts
      .filter((path) => except?.test(path) !== true)
      .filter((path) => pattern.test(readFileSync(path, "utf8")));
    expect(found).toEqual([]);
  });
});
