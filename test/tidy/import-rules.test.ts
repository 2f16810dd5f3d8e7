/**
 * The rules of who may import whom (.dependency-cruiser.mjs): the tree keeps to them, and each of
 * them speaks up when it is broken. The proof is a small tree in which every file breaks its rules.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import { cruise, type IConfiguration, type ICruiseResult } from "dependency-cruiser";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const configurationFile = new URL("../../.dependency-cruiser.mjs", import.meta.url).href;
const { default: configuration } = (await import(configurationFile)) as { default: IConfiguration };
const { forbidden = [], options = {} } = configuration;
/** The ones here all have a name and a reason. */
const rules = forbidden.map(({ name = "", comment = "" }) => ({ name, comment }));

async function violations(folder: string, roots: readonly string[]): Promise<ICruiseResult["summary"]["violations"]> {
  const result = await cruise([...roots], { ...options, baseDir: folder, ruleSet: { forbidden }, validate: true });
  return (result.output as ICruiseResult).summary.violations;
}

/** Files of the proof tree: two in each place that a rule speaks of, so that one can import the other. */
const places = [
  "grammar",
  "grammar/vocabulary",
  "server/maths",
  "server/quantities",
  "server/model",
  "server/linkage",
  "server/elements",
  "server/assemble",
  "server/analyses",
  "server/findings",
  "server/findings/rules/words",
  "server/views",
  "server/refactorings",
  "server/snapshot",
  "server/host",
  "server/lsp",
  "server/lsp/features",
  "server/cli",
  "server/cli/commands",
  "client",
  "client/commands",
  "client/panel/page",
  "test",
  "samples",
];
const files = [...places.flatMap((place) => [`${place}/one.ts`, `${place}/two.ts`]), "server/elements/kinds.ts"];

/** Every file imports every other one, a package that no room lists, a file that is not there, and Node's file system. */
function importsOf(file: string): string {
  const others = files.filter((other) => other !== file).map((other) => `./${relative(dirname(file), other)}`);
  const all = [...others.map((path) => path.replace(/\.ts$/, ".js")), "unlisted", "./nowhere.js", "node:fs"];
  return all
    .map((path, index) => `import { a as a${index} } from "${path}";\nexport const b${index} = a${index};`)
    .join("\n");
}

describe("the import rules", () => {
  const folder = mkdtempSync(join(tmpdir(), "bellcrank-imports-"));
  let broken: ReadonlySet<string> = new Set();

  const write = (path: string, text: string): void => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  };

  beforeAll(async () => {
    for (const file of files) write(file, importsOf(file));
    write("node_modules/unlisted/package.json", '{ "name": "unlisted", "version": "1.0.0", "main": "index.js" }');
    write("node_modules/unlisted/index.js", "exports.a = 1;");
    const found = await violations(folder, ["grammar", "server", "client", "test", "samples"]);
    broken = new Set(found.map(({ rule }) => rule.name));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each(rules)("$name: is noticed when it is broken", ({ name }) => {
    expect([...broken]).toContain(name);
  });

  it.each(rules)("$name: says why", ({ comment }) => {
    expect(comment.length).toBeGreaterThan(30);
  });

  it("are kept by this tree", async () => {
    const found = await violations(process.cwd(), ["grammar", "server", "client", "test"]);
    expect(found.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`)).toEqual([]);
  });
});
