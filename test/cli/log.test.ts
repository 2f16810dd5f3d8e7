/** The history of one value, on a real repository with renames, a parts file of its own, and a version that does not parse. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openRepository, type TestRepository } from "../support/git-repository.js";
import { problemsAgainst } from "./schema.js";

const cli = resolve("dist/cli.js");

describe("bellcrank log", () => {
  let made: TestRepository;
  const log = (...args: readonly string[]) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [cli, "log", ...args], {
      cwd: made.folder,
      encoding: "utf8",
    });
    return { code: status, out: stdout, err: stderr };
  };
  const rows = (...args: readonly string[]) => {
    const { out } = log(...args, "--format", "json");
    expect(problemsAgainst("log", out)).toEqual([]);
    return JSON.parse(out).rows.map(({ subject, old, new: now, file }: Record<string, Record<string, unknown>>) => [
      subject,
      old?.["value"] ?? old?.["text"] ?? null,
      now?.["value"] ?? now?.["text"] ?? null,
      file,
    ]);
  };
  const quill = (): string => readFileSync("samples/quill/quill.crank", "utf8");
  const parts = (): string => readFileSync("samples/quill/parts.crank", "utf8");
  beforeAll(() => {
    made = openRepository();
    cpSync("samples/quill", join(made.folder, "old yard"), { recursive: true });
    made.commit("Bring the car");
    made.write("old yard/quill.crank", quill().replace("rate 55 N/mm", "rate 60 N/mm"));
    made.commit("Stiffen the third spring");
    made.write("old yard/quill.crank", `${quill().replace("rate 55 N/mm", "rate 62 N/mm")}\ncar half {\n`);
    made.commit("Save in a hurry");
    made.write(
      "old yard/quill.crank",
      quill().replace("rate 55 N/mm", "rate 62 N/mm").replace("mass 540 kg", "mass 541 kg"),
    );
    made.commit("Finish the sentence");
    made.git("mv", "old yard", "ärmel yard");
    made.commit("Give the folder a better name");
    made.write("ärmel yard/parts.crank", parts().replace("diameter 11 mm", "diameter 11.4 mm"));
    made.commit("Measure the bars");
  });
  afterAll(() => made.remove());

  it("tells each commit that gave a property another value, through a rename", () => {
    expect(rows("ärmel yard/quill.crank", "front.third.rate")).toEqual([
      ["Finish the sentence", null, 62, "old yard/quill.crank"],
      ["Save in a hurry", 60, null, "old yard/quill.crank"],
      ["Stiffen the third spring", 55, 60, "old yard/quill.crank"],
      ["Bring the car", null, 55, "old yard/quill.crank"],
    ]);
  });

  it("tells what a figure came to, whichever file made it so", () => {
    const found = rows("ärmel yard/quill.crank", "front.heave-rate");
    expect(found.map(([subject]: readonly unknown[]) => subject)).toEqual([
      "Measure the bars",
      "Finish the sentence",
      "Save in a hurry",
      "Stiffen the third spring",
      "Bring the car",
    ]);
    expect(found[0][2]).toBeGreaterThan(found[0][1]);
    expect(rows("ärmel yard/wet.crank#quarrow-wet", "front.ride-height", "at", "top-speed").length).toBeGreaterThan(1);
  });

  it("draws numbers, and tells parts, points and positions", () => {
    const { out, code } = log("ärmel yard/quill.crank", "front.third.rate");
    expect(code).toBe(0);
    expect(out).toMatch(/front\.third\.rate of quill/);
    expect(out).toMatch(/2026-03-14 +Ada Fitter +55 N\/mm +60 N\/mm +Stiffen the third spring/);
    expect(out).toMatch(/N\/mm, oldest to newest\n[^]*[┤┼┏━┗┛]/);
    expect(rows("ärmel yard/quill.crank", "front.corner-bar.fit").at(-1)[2]).toBe("TB-110");
    expect(rows("ärmel yard/quill.crank", "front.rocker.third").at(-1)[2]).toBe("(0, 192, 456) mm");
    expect(rows("ärmel yard/quill.crank", "front.bar.blade.position").at(-1)[2]).toBe(3);
  });

  it("tells what is not committed yet, as many changes as asked for, and only since a revision", () => {
    const path = "ärmel yard/quill.crank";
    const committed = readFileSync(join(made.folder, path), "utf8");
    made.write(path, committed.replace("rate 62 N/mm", "rate 70 N/mm"));
    expect(log(path, "front.third.rate", "--max", "2").out).toMatch(/work tree .*62 N\/mm +70 N\/mm +not committed/);
    expect(log(path, "front.third.rate", "--max", "2").out).toContain("--max tells more");
    made.write(path, committed);
    expect(rows(path, "front.third.rate", "--since", "HEAD~4")).toHaveLength(2);
    expect(log(path, "mass", "--format", "csv").out.split("\n")[1]).toMatch(
      /,Ada Fitter,Finish the sentence,old yard\/quill.crank,,541,kg$/,
    );
  });

  it("says what is wrong, with exit code 2", () => {
    const path = "ärmel yard/quill.crank";
    const bare = mkdtempSync(join(tmpdir(), "no repository "));
    cpSync("samples/quill", bare, { recursive: true });
    const wrong: readonly (readonly [args: readonly string[], says: RegExp])[] = [
      [[path, "front.third.nope"], /neither a property that is written nor a figure/],
      [[path, "front.nope.rate"], /is no figure that is computed/],
      [["missing.crank", "mass"], /no such file/],
      [[path, "mass", "--setup", "other"], /no car or set-up "other"/],
      [[path, "mass", "--max", "none"], /a whole number/],
      [[path, "mass", "--since", "nowhere"], /no revision "nowhere"/],
      [[`HEAD:${path}`, "mass"], /leave the revision out/],
      [[join(bare, "quill.crank"), "mass"], /in no git repository/],
    ];
    for (const [args, says] of wrong) {
      const { code, err } = log(...args);
      expect({ args, code, err }).toEqual({ args, code: 2, err: expect.stringMatching(says) });
    }
    rmSync(bare, { recursive: true });
  });
});
