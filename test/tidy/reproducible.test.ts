/** The same sources give the same bytes: the bundles, the extension and the npm package. */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";

describe("two builds", () => {
  const folder = mkdtempSync(join(tmpdir(), "bellcrank builds "));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const run = (command: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): void => {
    execFileSync(command, args, { stdio: "pipe", env: { ...process.env, ...env } });
  };
  const place = (name: string): string => {
    const path = join(folder, name);
    mkdirSync(path, { recursive: true });
    return path;
  };

  it("give the same bundles, wherever they are put", () => {
    const [one, other] = [place("one"), place("deeper/two")];
    for (const path of [one, other]) run(process.execPath, ["esbuild.mjs", path]);
    const names = readdirSync(one).sort();
    expect(names).toContain("cli.js");
    expect(readdirSync(other).sort()).toEqual(names);
    const differing = names.filter((name) => !readFileSync(join(one, name)).equals(readFileSync(join(other, name))));
    expect(differing).toEqual([]);
    expect(names.filter((name) => readFileSync(join(one, name)).includes(folder))).toEqual([]);
  }, 60_000);

  it("give the same extension, in any time zone", () => {
    const files = ["UTC", "Asia/Tokyo"].map((zone, index) => {
      const file = join(folder, `${index}.vsix`);
      run(process.execPath, ["test/support/package.mjs", file], { TZ: zone });
      return readFileSync(file);
    });
    expect(files[0]?.length).toBeGreaterThan(100_000);
    expect(files[1]?.equals(files[0] ?? Buffer.alloc(0))).toBe(true);
  }, 180_000);

  it("give the same npm package", () => {
    const files = ["first", "second"].map((name) => {
      const path = place(name);
      run("npm", ["pack", "--silent", "--pack-destination", path]);
      return readFileSync(join(path, readdirSync(path)[0] ?? ""));
    });
    expect(files[1]?.equals(files[0] ?? Buffer.alloc(0))).toBe(true);
  }, 60_000);
});
