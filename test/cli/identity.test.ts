/** A finding stays the same one whatever stands around it: held over every sample with a mistake in it. */
import { readdirSync, readFileSync } from "node:fs";
import { isUtf8 } from "node:buffer";
import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { URI } from "vscode-uri";
import { checkedFile } from "../../server/cli/checking/placed.js";
import { fileWith } from "../../server/cli/merging/merge-effects.js";

const found = (path: string, text: string): readonly string[] =>
  checkedFile(fileWith(path, text)).findings.map(({ rule, fingerprint }) => `${rule} ${fingerprint}`);

/** Those that have findings of their own: the others are what these rest on. */
const samples = readdirSync("samples/broken")
  .filter((name) => name.endsWith(".crank") && isUtf8(readFileSync(`samples/broken/${name}`)))
  .map((name) => `samples/broken/${name}`)
  .filter((path) => found(path, readFileSync(path, "utf8")).length > 0);

describe("the identity of a finding", () => {
  it.each(samples)("%s: survives a comment above it, blank lines and Windows line ends", (path) => {
    const text = readFileSync(path, "utf8");
    const before = found(path, text);
    expect(found(path, `# Moved to another drawer.\n\n\n${text}`)).toEqual(before);
    expect(found(path, text.replace(/\r?\n/g, "\r\n"))).toEqual(before);
  });

  it("tells findings of one file apart, as far as they are told of different things", () => {
    const all = samples.map((path) => found(path, readFileSync(path, "utf8")));
    const distinct = all.map((list) => new Set(list).size).reduce((sum, count) => sum + count, 0);
    const counted = all.map((list) => list.length).reduce((sum, count) => sum + count, 0);
    expect(counted).toBeGreaterThan(45);
    expect(distinct / counted).toBeGreaterThan(0.95);
  });

  it("is in the words of the tree", () => {
    const path = "samples/broken/override-without-target.crank";
    const [finding] = checkedFile(fileWith(path, readFileSync(path, "utf8"))).findings;
    expect(finding?.place).toMatch(/^setup [\w-]+ from [\w-]+ > [\w.-]+$/);
    expect(fileWith(path, "").uri).toBe(URI.file(resolve(path)).toString());
  });
});
