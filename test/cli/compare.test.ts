/** The comparison as a user gets it, on real repositories: with commits, branches, renames, and everything that can be wrong. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openRepository, type TestRepository } from "../support/git-repository.js";
import { problemsAgainst } from "./schema.js";

const cli = resolve("dist/cli.js");

const compareIn =
  (folder: string) =>
  (...args: readonly string[]) => {
    const { CI: _, ...environment } = process.env;
    const { status, stdout, stderr } = spawnSync(process.execPath, [cli, "compare", ...args], {
      cwd: folder,
      encoding: "utf8",
      env: environment,
    });
    return { code: status, out: stdout, err: stderr };
  };

const wet = `use "quill.crank"

setup wet from quill {
  front.third.rate 45 N/mm
  front.ride-height by +2 mm
}
`;

describe("bellcrank compare, between files", () => {
  let made: TestRepository;
  let compare: ReturnType<typeof compareIn>;
  beforeAll(() => {
    made = openRepository();
    for (const car of ["quill", "tern"]) cpSync(join("samples", car), join(made.folder, car), { recursive: true });
    made.write("quill/a wet dáy.crank", wet);
    compare = compareIn(made.folder);
  });
  afterAll(() => made.remove());

  it("tells a set-up against its base, and ends with 3 only where it is asked to", () => {
    const { code, out } = compare("quill/a wet dáy.crank");
    expect(code).toBe(0);
    expect(out).toMatch(/^Front heave rate -9\.6 %, front 2 mm higher\.$/m);
    expect(out).toMatch(/front\.third\.rate +55 N\/mm +45 N\/mm +-10 N\/mm, -18\.2 % +a wet dáy\.crank:4/);
    expect(out).toMatch(/\d+ further figures moved less than 0\.5 %/);
    expect(out).toContain("competent person");
    expect(compare("quill/a wet dáy.crank", "--detailed-exit-code").code).toBe(3);
    expect(compare("quill/wet.crank", "quill/wet.crank", "--detailed-exit-code")).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Nothing differs\./),
    });
  });

  it("tells two set-ups of one car, and chooses among several by name", () => {
    made.write(
      "two.crank",
      `use "quill/quill.crank"\nsetup soft from quill { front.third.rate 40 N/mm }\nsetup firm from quill { front.third.rate 70 N/mm }\n`,
    );
    expect(compare("two.crank#soft", "two.crank#firm").out).toMatch(/front\.third\.rate +40 N\/mm +70 N\/mm/);
    expect(compare("two.crank", "--setup", "soft").out).toMatch(/front\.third\.rate +55 N\/mm +40 N\/mm/);
    expect(compare("quill/quill.crank", "two.crank")).toMatchObject({
      code: 2,
      err: expect.stringContaining("soft, firm"),
    });
    expect(compare("two.crank#other", "two.crank#firm")).toMatchObject({
      code: 2,
      err: expect.stringContaining('no car or set-up "other"'),
    });
  });

  it("gives JSON that its schema describes, in the author's units", () => {
    for (const args of [["quill/wet.crank"], ["tern/primrose.crank"], ["quill/dry.crank", "quill/wet.crank"]]) {
      const { out, code } = compare(...args, "--format", "json");
      expect(code).toBe(0);
      expect(problemsAgainst("compare", out)).toEqual([]);
    }
    const { cars } = JSON.parse(compare("quill/a wet dáy.crank", "--format", "json").out);
    const [{ comparison }] = cars;
    const rate = comparison.changes.find(({ path }: { path: string }) => path === "front.third.rate");
    expect(rate).toMatchObject({
      kind: "changed",
      axle: "front",
      topic: "heave",
      new: { file: "quill/a wet dáy.crank", line: 4 },
    });
    const heave = comparison.effects.find(
      ({ figure, axle, at }: { figure: string; axle: string; at: string | null }) =>
        figure === "heave rate (both wheels)" && axle === "front" && at === null,
    );
    expect(heave.new.value - heave.old.value).toBeLessThan(-10);
    expect(heave.relative).toBeCloseTo(heave.new.value / heave.old.value - 1, 9);
  });

  it("counts more where the threshold is higher", () => {
    const still = (threshold: string): number =>
      JSON.parse(compare("quill/wet.crank", "--format", "json", "--threshold", threshold).out).cars[0].comparison.still;
    expect(still("20%")).toBeGreaterThan(still("0.5%"));
    expect(still("0.5%")).toBeGreaterThan(still("0%"));
    expect(compare("quill/wet.crank", "--threshold", "lots").code).toBe(2);
  });

  it("writes a page that fetches nothing, and Markdown with the mark in front", () => {
    const target = join(made.folder, "page.html");
    expect(compare("quill/wet.crank", "--format", "html", "--output", target)).toMatchObject({ code: 0, out: "" });
    const page = readFileSync(target, "utf8");
    expect(page).toMatch(/^<!doctype html>/);
    expect(page).not.toMatch(/https?:\/\/(?!www\.w3\.org)|<script|<link|@import/);
    expect(page).toContain("Effects in the load cases");
    const { out } = compare("quill/wet.crank", "--format", "markdown");
    expect(out).toMatch(/^<!-- bellcrank compare -->\n\n\*\*Rear roll damping/);
    expect(out).toContain("<details><summary>Elements and wheels at rest");
    expect(out).toContain("N\\*m/deg");
  });

  it("takes two texts of elsewhere for versions of one file, as a merge driver hands them over", () => {
    made.write("tmp/a1b2", wet);
    made.write("tmp/c3d4", wet.replace("45 N/mm", "48 N/mm"));
    const names = ["--name", "quill/wet of ours.crank", "--label-old", "ours", "--label-new", "theirs"];
    const { code, out } = compare("tmp/a1b2", "tmp/c3d4", ...names);
    expect(code).toBe(0);
    expect(out).toMatch(/was: ours\nis: {2}theirs/);
    expect(out).toMatch(/front\.third\.rate +45 N\/mm +48 N\/mm/);
  });

  it("says what is wrong, with exit code 2", () => {
    made.write("broken.crank", 'use "quill/quill.crank"\nsetup broken from quill {\n  front.third.rate 45 N/mm\n');
    made.write("bytes.crank", Buffer.from([0xff, 0xfe, 0x00, 0x41]));
    made.write("shelf.crank", "catalogue {\n}\n");
    made.write("huge.crank", Buffer.alloc(17 * 1024 * 1024, "# a long story\n"));
    const wrong: readonly (readonly [args: readonly string[], says: RegExp])[] = [
      [[], /nothing to compare/],
      [["missing.crank"], /no such file/],
      [["quill/wet.crank", "missing.crank"], /no such file/],
      [["broken.crank", "quill/wet.crank"], /broken\.crank .*does not parse: see line/],
      [["quill/wet.crank", "broken.crank"], /broken\.crank .*does not parse: see line/],
      [["bytes.crank", "quill/wet.crank"], /is not UTF-8 text/],
      [["huge.crank"], /larger than 16 MB/],
      [["shelf.crank"], /declares no car/],
      [["quill/quill.crank"], /derives from nothing/],
      [["quill/quill.crank", "tern/tern.crank"], /not the same car/],
      [["a", "b", "c"], /two operands at most/],
      [["HEAD:quill/wet.crank"], /no commits yet/],
      [["quill/wet.crank", "--output", "no/such/folder/x.html"], /cannot be written/],
    ];
    for (const [args, says] of wrong) {
      const { code, err } = compare(...args);
      expect({ args, code, err }).toEqual({ args, code: 2, err: expect.stringMatching(says) });
    }
    expect(compare("quill/quill.crank", "tern/tern.crank", "--across-cars").code).toBe(0);
  });
});

describe("bellcrank compare --git", () => {
  let made: TestRepository;
  let compare: ReturnType<typeof compareIn>;
  const quill = (change: (text: string) => string = (text) => text): string =>
    change(readFileSync("samples/quill/quill.crank", "utf8"));
  beforeAll(() => {
    made = openRepository();
    cpSync("samples/quill", join(made.folder, "hill cars"), { recursive: true });
    made.commit("Bring the car");
    made.git("tag", "start");
    made.git("checkout", "--quiet", "-b", "wet-work");
    made.write(
      "hill cars/quill.crank",
      quill((text) => text.replace("rate 55 N/mm", "rate 65 N/mm")),
    );
    made.write("hill cars/oxlea.crank", wet.replace("setup wet", "setup oxlea"));
    made.git("rm", "--quiet", "hill cars/dry.crank");
    made.git("mv", "hill cars/wet.crank", "hill cars/rain.crank");
    made.commit("Stiffen the third spring; a set-up for Oxlea");
    made.git("checkout", "--quiet", "main");
    made.write(
      "hill cars/quill.crank",
      quill((text) => text.replace("mass 540 kg", "mass 545 kg")),
    );
    made.commit("Weigh it again");
    made.git("checkout", "--quiet", "wet-work");
    compare = compareIn(made.folder);
  });
  afterAll(() => made.remove());

  it("tells changed, added, deleted, moved and following cars", () => {
    const { code, out } = compare("--git", "start", "wet-work", "--format", "json", "--detailed-exit-code");
    expect(code).toBe(3);
    expect(problemsAgainst("compare", out)).toEqual([]);
    const found = JSON.parse(out);
    const short = found.cars.map(({ name, status, follows }: Record<string, unknown>) => [name, status, follows]);
    expect(short).toEqual([
      ["quill", "changed", null],
      ["oxlea", "added", null],
      ["quarrow-dry", "deleted", null],
      // Its own rate stands in the set-up, so that the car's new one does not reach it.
      ["quarrow-wet", "same", null],
    ]);
    expect(found.cars[0].comparison.changes.map(({ path }: { path: string }) => path)).toEqual(["front.third.rate"]);
    expect(found.cars[1].comparison.old.name).toBe("quill");
    expect(found.headline).toMatch(/^quill differs; new: oxlea; deleted: quarrow-dry\./);
  });

  it("starts from the merge base where it is asked to, so that the other branch's work is none of ours", () => {
    const paths = (...args: string[]): string[] =>
      JSON.parse(compare(...args, "--format", "json").out).cars[0].comparison.changes.map(
        ({ path }: { path: string }) => path,
      );
    expect(paths("--git", "main", "wet-work")).toEqual(["mass", "front.third.rate"]);
    expect(paths("--git", "main", "wet-work", "--merge-base")).toEqual(["front.third.rate"]);
    expect(paths("--git", "main...wet-work")).toEqual(["front.third.rate"]);
    expect(paths("--git", "main..wet-work")).toEqual(["mass", "front.third.rate"]);
  });

  it("starts from the merge base where a CI runs it, unless it is told not to", () => {
    const inCi = (...args: string[]): string =>
      spawnSync(process.execPath, [cli, "compare", ...args], {
        cwd: made.folder,
        encoding: "utf8",
        env: { ...process.env, CI: "true" },
      }).stdout;
    expect(inCi("--git", "main", "wet-work")).not.toMatch(/^ *car +mass /m);
    expect(inCi("--git", "main", "wet-work")).toMatch(/^was: .*the merge base with main$/m);
    expect(inCi("--git", "main", "wet-work", "--no-merge-base")).toMatch(/^car +mass +545 kg +540 kg/m);
  });

  it("tells a set-up that was renamed, or moved to another file, as the same one", () => {
    const text = readFileSync(join(made.folder, "hill cars/oxlea.crank"), "utf8");
    made.write("hill cars/oxlea.crank", text.replace("setup oxlea", "setup oxlea-morning"));
    expect(compare("--git", "HEAD").out).toMatch(/^oxlea is called oxlea-morning now\./);
    rmSync(join(made.folder, "hill cars/oxlea.crank"));
    made.write(
      "hill cars/rain.crank",
      `${readFileSync(join(made.folder, "hill cars/rain.crank"), "utf8")}\n${text.slice(text.indexOf("setup oxlea"))}`,
    );
    expect(compare("--git", "HEAD").out).toMatch(/^oxlea moved to another file\./);
    made.git("checkout", "--quiet", "--", ".");
  });

  it("compares with the work tree, and leaves it and the index alone", () => {
    made.write("hill cars/oxlea.crank", wet.replace("setup wet", "setup oxlea").replace("+2 mm", "+3 mm"));
    made.write("hill cars/kiln.crank", wet.replace("setup wet", "setup kiln"));
    const before = made.git("status", "--porcelain");
    const { out } = compare("--git", "HEAD");
    expect(out).toMatch(/oxlea differs; new: kiln\./);
    expect(out).toMatch(/front\.ride-height +34 mm +35 mm/);
    expect(compare("--git", "HEAD", "--", "hill cars/oxlea.crank").out).not.toContain("kiln");
    expect(compare("HEAD:hill cars/oxlea.crank", "hill cars/oxlea.crank").out).toMatch(
      /front\.ride-height +34 mm +35 mm/,
    );
    expect(made.git("status", "--porcelain")).toBe(before);
    rmSync(join(made.folder, "hill cars/kiln.crank"));
    made.git("checkout", "--quiet", "--", ".");
  });

  it("reads what a file uses at the same revision, from any folder", () => {
    const inside = compareIn(join(made.folder, "hill cars"));
    const { out, code } = inside("start:quill.crank", "wet-work:quill.crank");
    expect(code).toBe(0);
    expect(out).toMatch(/front\.third\.rate +55 N\/mm +65 N\/mm/);
    expect(inside("start:hill cars/quill.crank", "wet-work:./quill.crank").out).toBe(out);
  });

  it("follows a set-up into the file that it moved to, and a catalogue to the cars that are fitted from it", () => {
    made.write(
      "hill cars/parts.crank",
      readFileSync("samples/quill/parts.crank", "utf8").replace("diameter 11 mm", "diameter 11.2 mm"),
    );
    const found = JSON.parse(compare("--git", "HEAD", "--format", "json").out);
    const changed = found.cars.filter(({ status }: { status: string }) => status === "changed");
    expect(changed.map(({ name }: { name: string }) => name)).toContain("quill");
    expect(changed.find(({ name }: { name: string }) => name === "oxlea").follows).toBe("quill");
    expect(found.headline).toMatch(/ So do(es)? .*oxlea/);
    expect(found.headline).not.toMatch(/oxlea.* differ/);
    expect(compare("--git", "HEAD").out).toContain("Only what quill changes.");
    expect(compare("--git", "HEAD", "--format", "markdown").out).toMatch(/- \*\*oxlea\*\* .*Only what quill changes\./);
    expect(compare("--git", "HEAD", "--format", "html").out).toContain("<p>Only what quill changes.");
    const [change] = changed[0].comparison.changes;
    expect(change).toMatchObject({
      path: "front.corner-bar.torsion-bar.diameter",
      new: { file: "hill cars/parts.crank" },
    });
    made.git("checkout", "--quiet", "--", ".");
  });

  it("annotates changed lines and no others", () => {
    const { out } = compare("--git", "start", "wet-work", "--format", "github");
    expect(out).toContain(
      "::notice file=hill cars/quill.crank,line=66,title=front.third.rate::55 N/mm → 65 N/mm; +10 N/mm, +18.2 %25",
    );
    const unchanged = out.split("\n").filter((line) => line.includes("quill.crank") && !line.includes("line=66,"));
    expect(unchanged).toEqual([]);
  });

  it("takes a set-up with other line ends for the same", () => {
    const text = readFileSync(join(made.folder, "hill cars/rain.crank"), "utf8");
    made.write("hill cars/rain.crank", text.replaceAll("\n", "\r\n"));
    expect(compare("--git", "HEAD", "--detailed-exit-code")).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Nothing differs\./),
    });
    made.git("checkout", "--quiet", "--", ".");
  });

  it("tells the rest where one file does not parse, and ends with 2", () => {
    made.write("hill cars/rain.crank", 'use "quill.crank"\nsetup quarrow-wet from quill {\n');
    made.write("hill cars/oxlea.crank", wet.replace("setup wet", "setup oxlea").replace("+2 mm", "+4 mm"));
    made.write("hill cars/bytes.crank", Buffer.from([0xff, 0xfe, 0x00]));
    made.write("hill cars/lost.crank", 'use "no-such.crank"\nsetup lost from nobody {\n}\n');
    const { code, out, err } = compare("--git", "HEAD");
    expect(code).toBe(2);
    expect(err).toMatch(/hill cars\/rain\.crank \(work tree\) does not parse/);
    expect(err).toMatch(/hill cars\/bytes\.crank \(work tree\) is not UTF-8 text/);
    expect(err).toMatch(/hill cars\/lost\.crank \(work tree\): what lost derives from cannot be found/);
    expect(out).toMatch(/front\.ride-height +34 mm +36 mm/);
    made.git("clean", "--quiet", "--force");
    made.git("checkout", "--quiet", "--", ".");
  });

  it("says what is wrong, with exit code 2", () => {
    const wrong: readonly (readonly [args: readonly string[], says: RegExp])[] = [
      [["--git", "no-such-branch"], /no revision "no-such-branch"/],
      [["--git", "a", "b", "c"], /one revision or two/],
      [["--git", "main", "--", "missing.crank"], /no such file or folder on either side/],
      [["--git", "main", "--", "../elsewhere.crank"], /outside of the repository/],
      [["start:missing.crank", "hill cars/quill.crank"], /is not in start/],
      [["--git", "--help-me"], /no revision|unknown option|argument missing/],
    ];
    for (const [args, says] of wrong) {
      const { code, err } = compare(...args);
      expect({ args, code, err }).toEqual({ args, code: 2, err: expect.stringMatching(says) });
    }
    const bare = mkdtempSync(join(tmpdir(), "no repository "));
    expect(compareIn(bare)("--git", "main")).toMatchObject({
      code: 2,
      err: expect.stringContaining("in no git repository"),
    });
    rmSync(bare, { recursive: true });
  });
});
