/** `check --changed-since REV` on a real repository: what changed, and what rests on it. */
import { rmSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openRepo, type Repo } from "./repository.js";

describe("bellcrank check --changed-since", () => {
  let repo: Repo;
  beforeEach(() => {
    repo = openRepo({ cars: ["quill", "tern"] });
    repo.commit("Bring the cars");
    repo.git("branch", "season");
  });
  afterEach(() => repo.remove());

  const checked = (...more: string[]): readonly string[] => {
    const { code, out, err } = repo.bellcrank("check", "--format", "json", "--fail-on", "never", ...more);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    return JSON.parse(out).files;
  };
  const change = (name: string, from: string, to: string): void => {
    expect(repo.read(name)).toContain(from);
    repo.write(name, repo.read(name).replace(from, to));
  };

  it("looks at nothing where nothing changed", () => {
    expect(checked("--changed-since", "season")).toEqual([]);
    expect(repo.bellcrank("check", "--changed-since", "season")).toEqual({
      code: 0,
      out: "no findings in 0 files\n",
      err: "",
    });
  });

  it("looks at a changed set-up alone, committed or not, and at a new one", () => {
    change("quill/wet.crank", "front.third.rate 45", "front.third.rate 46");
    expect(checked("--changed-since", "season")).toEqual(["quill/wet.crank"]);
    repo.commit("Soften");
    expect(checked("--changed-since", "season")).toEqual(["quill/wet.crank"]);
    repo.write("quill/neu é.crank", 'use "quill.crank"\nsetup fresh from quill {\n}\n');
    expect(checked("--changed-since", "season")).toEqual(["quill/neu é.crank", "quill/wet.crank"]);
  });

  it("looks at every set-up that rests on a changed file", () => {
    change("quill/parts.crank", "stock 2", "stock 3");
    expect(checked("--changed-since", "season")).toEqual([
      "quill/dry.crank",
      "quill/parts.crank",
      "quill/quill.crank",
      "quill/wet.crank",
    ]);
  });

  it("and on a changed table", () => {
    change("tern/rear-ratio.csv", "1.25, 1.165", "1.25, 1.166");
    expect(checked("--changed-since", "season")).toContain("tern/primrose.crank");
    expect(checked("--changed-since", "season")).not.toContain("tern/parts.crank");
  });

  it("and on one that is gone", () => {
    rmSync(join(repo.folder, "quill/parts.crank"));
    const { code, out } = repo.bellcrank("check", "--changed-since", "season");
    expect(code).toBe(1);
    expect(out).toContain("quill/quill.crank");
    expect(out).toContain("file-not-found");
  });

  it("counts from the merge base: what the other side did since is not ours", () => {
    repo.git("switch", "--quiet", "season");
    change("tern/primrose.crank", "front.camber -1.1", "front.camber -1.2");
    repo.commit("Camber for the cold");
    repo.git("switch", "--quiet", "main");
    change("quill/dry.crank", "setup", "# warm\nsetup");
    repo.commit("Say that it is warm");
    expect(checked("--changed-since", "season")).toEqual(["quill/dry.crank"]);
  });

  it("works from a folder below, and goes together with a list of known findings", () => {
    change("quill/wet.crank", "front.third.rate 45", "front.thrid.rate 46");
    const at = { at: "quill" };
    const cli = (...args: string[]) => repo.run(process.execPath, [`${process.cwd()}/dist/cli.js`, ...args], at);
    expect(cli("check", "--changed-since", "season").out).toContain("wet.crank:");
    cli("check", "--baseline", "../known.json", "--write-baseline");
    expect(cli("check", "--changed-since", "season", "--baseline", "../known.json")).toMatchObject({ code: 0 });
  });

  it("works from anywhere, for the repository of the files that are named", () => {
    change("quill/wet.crank", "front.third.rate 45", "front.third.rate 46");
    const elsewhere = openRepo();
    const { code, out } = elsewhere.bellcrank("check", "--format", "json", "--changed-since", "season", repo.folder);
    expect(code).toBe(0);
    expect(JSON.parse(out).files).toEqual([`${repo.folder}/quill/wet.crank`]);
    elsewhere.remove();
  });

  it("says what it cannot find and ends with 2", () => {
    const unknown = repo.bellcrank("check", "--changed-since", "nowhere");
    expect(unknown.code).toBe(2);
    expect(unknown.err).toMatch(/^bellcrank: --changed-since nowhere: there is no revision "nowhere"/);
    // What looks like an option stays a revision.
    expect(repo.bellcrank("check", "--changed-since=--output=x")).toMatchObject({ code: 2 });
    const empty = openRepo({ cars: ["quill"] });
    expect(empty.bellcrank("check", "--changed-since", "HEAD")).toMatchObject({
      code: 2,
      err: expect.stringContaining("has no commits yet"),
    });
    rmSync(join(empty.folder, ".git"), { recursive: true });
    expect(
      empty.run(process.execPath, [`${process.cwd()}/dist/cli.js`, "check", "--changed-since", "HEAD"]),
    ).toMatchObject({
      code: 2,
      err: expect.stringContaining("is in no git repository"),
    });
    empty.remove();
  });
});
