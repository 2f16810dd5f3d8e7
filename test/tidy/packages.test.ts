/** What is shipped: the extension's and the npm package's files, all of them, and how much they weigh. */
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { isBuiltin } from "node:module";
import { deflateRawSync } from "node:zlib";
import { listFiles, PackageManager } from "@vscode/vsce";
import { beforeAll, describe, expect, it } from "vitest";
import manifest from "../../package.json" with { type: "json" };

const MEGABYTE = 1e6;
const notices = "dist/THIRD-PARTY-NOTICES.txt";
const always = ["CHANGELOG.md", "LICENSE", "README.md", "package.json", notices];

describe("the extension", () => {
  const extension = [
    ...always,
    "client/icons/bellcrank.png",
    "client/icons/bellcrank.svg",
    "client/icons/file-dark.svg",
    "client/icons/file-light.svg",
    "client/icons/mechanism-dark.svg",
    "client/icons/mechanism-light.svg",
    "client/snippets.json",
    ...readdirSync("client/walkthrough").map((name) => `client/walkthrough/${name}`),
    ...readdirSync("samples/quill").map((name) => `samples/quill/${name}`),
    "dist/extension.cjs",
    "dist/extension-web.cjs",
    "dist/panel.css",
    "dist/panel.js",
    "dist/server.cjs",
    "dist/server-web.js",
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
    expect([...files].sort()).toEqual(extension.sort());
  });

  it("weighs less than 3 MB", () => {
    const weight = files.reduce((sum, file) => sum + deflateRawSync(readFileSync(file)).length, 0);
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
    const expected = [...always, "dist/cli.js", "dist/server.cjs", "grammar/REFERENCE.md", ...schemas];
    expect(packed?.files.map(({ path }) => path).sort()).toEqual(expected.sort());
  });

  it("is kept from being published by accident, and names all that a registry shows", () => {
    // What has to come before: see "Publishing" in DEVELOPERS.md.
    expect(manifest.private).toBe(true);
    expect(manifest.license).toBe("MIT");
    expect(readFileSync("LICENSE", "utf8")).toMatch(/^MIT License/);
    expect(readFileSync("CHANGELOG.md", "utf8")).toContain(`## ${manifest.version}`);
    expect(manifest).not.toHaveProperty("dependencies");
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
    expect(text).not.toMatch(/sourceMappingURL|node_modules\/(?!\*)/);
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

describe("the notices", () => {
  const text = readFileSync(notices, "utf8");

  it.each([
    ["chevrotain", "Apache License"],
    ["commander", "Permission is hereby granted, free of charge"],
    ["csv-parse", "MIT"],
    ["ml-matrix", "MIT"],
    ["picocolors", "ISC"],
    ["vscode-languageserver", "MIT"],
    ["workerpool", "Apache License"],
  ])("name %s with its version and its licence", (name, licence) => {
    const { version } = JSON.parse(readFileSync(`node_modules/${name}/package.json`, "utf8")) as { version: string };
    const at = text.indexOf(`\n${name} ${version} (`);
    expect(at).toBeGreaterThan(0);
    expect(
      text
        .slice(at)
        .split(`\n${"-".repeat(80)}\n`, 2)
        .join("\n"),
    ).toContain(licence);
  });

  it("name no package that only builds or tests", () => {
    expect(text).not.toMatch(/\n(?:esbuild|vitest|typescript|fast-check|@vscode\/vsce) \d/);
  });

  it("hold a text for every package", () => {
    expect(text).not.toContain("brings no text of it");
  });
});
