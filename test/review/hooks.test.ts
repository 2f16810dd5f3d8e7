/** The hooks of samples/review: as git runs them, and what the pre-commit framework would run. */
import { readFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { openReviewed } from "./on-path.js";
import type { Repo } from "./repository.js";

describe("the pre-commit hook", () => {
  let repo: Repo;
  beforeEach(() => {
    repo = openReviewed("quill");
    repo.commit("Bring the car");
  });
  afterEach(() => repo.remove());

  const commit = () => {
    repo.git("add", "--all");
    return repo.run("git", ["commit", "--quiet", "--message", "Change"]);
  };
  const edit = (from: string, to: string, name = "quill/wet.crank"): void => {
    expect(repo.read(name)).toContain(from);
    repo.write(name, repo.read(name).replace(from, to));
  };

  it("lets a sound change through, and commits without set-ups unlooked at", () => {
    edit("front.third.rate 45", "front.third.rate 46");
    expect(commit()).toMatchObject({ code: 0 });
    repo.write("notes & more.txt", "Bring chocks.\n");
    expect(commit()).toEqual({ code: 0, out: "", err: "" });
  });

  it("holds up another layout and an error, with what is wrong", () => {
    edit("front.third.rate 45", "front.third.rate    46");
    const layout = commit();
    expect(layout.code).toBe(1);
    expect(layout.err).toContain("would change quill/wet.crank");
    edit("front.third.rate    46", "front.thrid.rate 46");
    const error = commit();
    expect(error.code).toBe(1);
    expect(error.err).toContain("quill/wet.crank:6:9  error  override-without-target");
  });

  it("looks at what is staged, not at what lies in the folder", () => {
    edit("front.third.rate 45", "front.thrid.rate 45");
    repo.git("add", "--all");
    edit("front.thrid.rate 45", "front.third.rate 45");
    expect(repo.run("git", ["commit", "--quiet", "--message", "Staged"]).code).toBe(1);
    repo.git("add", "--all");
    edit("front.third.rate 45", "front.thrid.rate 45");
    repo.write("new é.txt", "x");
    repo.git("add", "new é.txt");
    expect(repo.run("git", ["commit", "--quiet", "--message", "Staged"]).code).toBe(0);
  });

  it("notices a set-up that breaks by what it rests on, also where that is taken away", () => {
    edit("torsion-bar TB-105", "torsion-bar TB-106", "quill/parts.crank");
    const { code, err } = commit();
    expect(code).toBe(1);
    expect(err).toContain("quill/wet.crank");
    repo.git("rm", "--quiet", "--force", "quill/parts.crank");
    expect(repo.run("git", ["commit", "--quiet", "--message", "Tidy up"]).code).toBe(1);
  });

  it("bears with what is known, works on the first commit and with names that need quotes", () => {
    const fresh = openReviewed("quill");
    fresh.write("quill/s 'n' é.crank", 'use "quill.crank"\n\nsetup odd from quill {\n  front.thrid.rate 46 N/mm\n}\n');
    fresh.git("add", "--all");
    expect(fresh.run("git", ["commit", "--quiet", "--message", "First"]).code).toBe(1);
    expect(fresh.bellcrank("check", "--baseline", "known-findings.json", "--write-baseline").code).toBe(0);
    fresh.git("add", "--all");
    expect(fresh.run("git", ["commit", "--quiet", "--message", "First"])).toMatchObject({ code: 0 });
    fresh.remove();
  });
});

describe("the pre-commit framework's configuration", () => {
  interface Hook {
    readonly id: string;
    readonly entry: string;
    readonly files: string;
    readonly language: string;
    readonly args?: readonly string[];
    readonly pass_filenames?: boolean;
  }
  const { repos } = parse(readFileSync("samples/review/.pre-commit-config.yaml", "utf8")) as {
    repos: { repo: string; hooks: Hook[] }[];
  };
  const hooks = repos.flatMap((one) => one.hooks);

  it("names what the framework asks of each hook, and files by a pattern that finds them", () => {
    expect(hooks.map(({ id }) => id)).toEqual(["bellcrank-format", "bellcrank-check"]);
    for (const { language, files } of hooks) {
      expect(language).toBe("system");
      expect(new RegExp(files).test("quill/wet é.crank")).toBe(true);
      expect(new RegExp(files).test("quill/wet.crank.orig")).toBe(false);
    }
  });

  it("has entries that end with 0 on a sound repository and with 1 on another", () => {
    const repo = openReviewed("quill");
    const outcome = (): readonly (number | null)[] =>
      hooks.map(({ entry, args = [], pass_filenames: passes = true }) => {
        const [command = "", ...rest] = entry.split(" ");
        return repo.run(command, [...rest, ...args, ...(passes ? ["quill/wet.crank"] : [])]).code;
      });
    expect(outcome()).toEqual([0, 0]);
    repo.write("quill/wet.crank", repo.read("quill/wet.crank").replace("front.third.rate 45", "front.thrid.rate   45"));
    expect(outcome()).toEqual([1, 1]);
    repo.remove();
  });
});
