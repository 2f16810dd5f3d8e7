/**
 * What is kept from one version of a text to the next (trees, blocks, axles, geometry, mechanisms, equilibria) never shows: after
 * every number of a car has been typed over, one after the other in one workspace, each version has the figures and findings that a
 * workspace gives that has never seen another one.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import type { FileView } from "../../server/snapshot/workspace.js";

const FOLDER = "memory:///club/";

const workspaceOf = (folder: string) =>
  createWorkspace({
    read(uri) {
      try {
        return { text: readFileSync(`samples/${folder}/${uri.slice(FOLDER.length)}`, "utf8") };
      } catch {
        return { missing: "missing" };
      }
    },
  });

const plain = (_: string, value: unknown): unknown =>
  value instanceof Map || value instanceof Set ? [...(value as Iterable<unknown>)] : value;

const told = (file: FileView): string =>
  JSON.stringify(
    {
      cars: file.cars.map(({ analysis }) => analysis),
      findings: file.findings().map((finding) => ({ ...finding, data: undefined })),
    },
    plain,
  );

/** Each number of the text a hundredth larger, and as long as it was where that can be: what follows it stays in its place. */
function* typedOver(text: string): Generator<string> {
  for (const { 0: digits, index } of text.matchAll(/(?<![\w."#-])\d+(?:\.\d+)?(?= ?[a-z%),])/g)) {
    const decimals = digits.split(".")[1]?.length ?? 0;
    const next = (Number(digits) * 1.01 + 10 ** -decimals).toFixed(decimals);
    yield text.slice(0, index) + next + text.slice(index + digits.length);
  }
}

describe.each([
  ["quill", "quill.crank", 3],
  ["quill", "wet.crank", 1],
  ["tern", "tern.crank", 3],
  ["dunlin", "dunlin.crank", 7],
])("%s/%s, typed over", (folder, name, step) => {
  it("is what it would be anew", () => {
    const text = readFileSync(`samples/${folder}/${name}`, "utf8");
    const kept = workspaceOf(folder);
    let count = 0;
    let at = 0;
    for (const version of typedOver(text)) {
      at += 1;
      if (at % step !== 0) continue;
      count += 1;
      const fresh = workspaceOf(folder);
      for (const workspace of [kept, fresh]) workspace.set(`${FOLDER}${name}`, version);
      expect(told(kept.file(`${FOLDER}${name}`))).toBe(told(fresh.file(`${FOLDER}${name}`)));
    }
    expect(count).toBeGreaterThan(5);
  });
});
