/** What is shipped: the extension's and the npm package's files, all of them, and how much they weigh. */
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync, statSync } from "node:fs";
import { isBuiltin } from "node:module";
import { listFiles, PackageManager } from "@vscode/vsce";
import { beforeAll, describe, expect, it } from "vitest";
import manifest from "../../package.json" with { type: "json" };

const MEGABYTE = 1e6;
const always = ["CHANGELOG.md", "LICENSE", "package.json"];
/** Written by hand for a person; comes with the first release. */
const readme = (files: readonly string[]): string[] => files.filter((file) => file !== "README.md");

describe("the extension", () => {
  const extension = [
    ...always,
    "client/icons/bellcrank.png",
    "client/icons/file-dark.svg",
    "client/icons/file-light.svg",
    "client/snippets.json",
    "dist/extension.cjs",
    "dist/server.cjs",
    "grammar/highlighting/bellcrank.tmLanguage.json",
    "grammar/highlighting/language-configuration.json",
    "server/findings/PAGES.md",
  ];

  let files: readonly string[] = [];
  // Looks through the whole folder, caches included.
  beforeAll(async () => {
    files = await listFiles({ cwd: process.cwd(), packageManager: PackageManager.None });
  }, 120_000);

  it("holds these files and no others", () => {
    expect(readme(files).sort()).toEqual(extension.sort());
  });

  it("weighs less than 3 MB, even before it is packed", () => {
    const weight = files.reduce((sum, file) => sum + statSync(file).size, 0);
    expect(weight).toBeLessThan(3 * MEGABYTE);
  });
});

describe("the npm package", () => {
  it("holds these files and no others", () => {
    const output = execFileSync("npm", ["pack", "--dry-run", "--json"], {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
      shell: process.platform === "win32",
    });
    const [packed] = JSON.parse(output) as { files: { path: string }[] }[];
    const schemas = readdirSync("server/cli/schema").map((name) => `server/cli/schema/${name}`);
    const expected = [...always, "dist/cli.js", "dist/server.cjs", ...schemas];
    expect(readme(packed?.files.map(({ path }) => path) ?? []).sort()).toEqual(expected.sort());
  });

  it("starts by its name", () => {
    expect(manifest.bin).toEqual({ bellcrank: "dist/cli.js" });
    expect(readFileSync("dist/cli.js", "utf8").startsWith("#!/usr/bin/env node\n")).toBe(true);
  });
});

describe.each(["dist/extension.cjs", "dist/server.cjs", "dist/cli.js"])("%s", (bundle) => {
  const text = readFileSync(bundle, "utf8");

  it("holds no path of the machine that it was built on", () => {
    expect(text).not.toContain(process.cwd());
    expect(text).not.toMatch(/sourceMappingURL|node_modules\//);
  });

  it("takes nothing from node_modules when it runs", () => {
    const required = [...text.matchAll(/\brequire\("([^"]+)"\)/g)];
    const imported = bundle.endsWith(".cjs")
      ? []
      : [...text.matchAll(/\bimport[^"'`;()]{0,300}?(?:\bfrom)?"([\w@:/.-]+)"/g)];
    const asked = [...required, ...imported].map(([, name]) => name ?? "");
    expect(asked.length).toBeGreaterThan(0);
    const foreign = asked.filter((name) => !isBuiltin(name) && !(bundle === "dist/extension.cjs" && name === "vscode"));
    expect(foreign).toEqual([]);
  });
});
