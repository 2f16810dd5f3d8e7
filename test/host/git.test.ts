import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CommitFiles } from "../../server/host/commit-files.js";
import { GitTrouble, Repository } from "../../server/host/git.js";
import { openRepository, type TestRepository } from "../support/git-repository.js";

describe("a git repository", () => {
  let made: TestRepository;
  let first: string;
  let second: string;
  let repository: Repository;
  beforeAll(() => {
    made = openRepository();
    made.write("hill cars/ärmel.crank", "car ärmel {\r\n}\r\n");
    made.write("parts.crank", "catalogue {\n}\n");
    made.write("notes.txt", "not a set-up");
    first = made.commit("Draw the car");
    made.git("mv", "hill cars/ärmel.crank", "ärmel.crank");
    made.write("new.crank", Buffer.from([0xff, 0xfe, 0x00]));
    made.git("rm", "--quiet", "parts.crank");
    second = made.commit("Move it up; a subject | with $signs");
    repository = Repository.around(join(made.folder, "ärmel.crank"));
  });
  afterAll(() => made.remove());

  it("is found from a file, a folder, and a file that is not there", () => {
    for (const path of ["ärmel.crank", "hill cars", "gone/entirely.crank", "."])
      expect(Repository.around(join(made.folder, path)).top).toBe(made.folder);
  });

  it("names commits, and says which it does not know", () => {
    expect(repository.commit("main")).toBe(second);
    expect(repository.commit("HEAD~1")).toBe(first);
    expect(() => repository.commit("no-such-branch")).toThrow(/no revision "no-such-branch"/);
    expect(() => repository.commit("--all")).toThrow(GitTrouble);
    expect(() => repository.commit("HEAD:ärmel.crank")).toThrow(GitTrouble);
  });

  it("reads files of a commit, and nothing outside of it", () => {
    expect(repository.read(first, "hill cars/ärmel.crank")).toEqual({ text: "car ärmel {\r\n}\r\n" });
    expect(repository.read(second, "hill cars/ärmel.crank")).toEqual({ missing: "missing" });
    expect(repository.read(second, "new.crank")).toEqual({ missing: "not-text" });
    const files = new CommitFiles(repository, first);
    expect(files.read(repository.uriOf("parts.crank"))).toEqual({ text: "catalogue {\n}\n" });
    expect(files.read("file:///etc/hostname")).toEqual({ missing: "outside" });
    expect(files.read("untitled:x.crank")).toEqual({ missing: "outside" });
  });

  it("tells what changed, renamed files under both names", () => {
    expect([...repository.changed(first, second)].sort((a, b) => a.path.localeCompare(b.path))).toEqual([
      { status: "renamed", path: "ärmel.crank", oldPath: "hill cars/ärmel.crank" },
      { status: "added", path: "new.crank", oldPath: "new.crank" },
      { status: "deleted", path: "parts.crank", oldPath: "parts.crank" },
    ]);
  });

  it("tells what the work tree has that was not committed, files that git does not know included", () => {
    made.write("ärmel.crank", "car ärmel {\n  mass 500 kg\n}\n");
    made.write("later/wet.crank", 'use "../ärmel.crank"\n');
    expect(repository.changed(second, undefined)).toEqual([
      { status: "changed", path: "ärmel.crank", oldPath: "ärmel.crank" },
      { status: "added", path: "later/wet.crank", oldPath: "later/wet.crank" },
    ]);
    made.git("checkout", "--quiet", "--", "ärmel.crank");
    rmSync(join(made.folder, "later"), { recursive: true });
  });

  it("follows a file through its renames", () => {
    const log = repository.history("ärmel.crank", undefined);
    expect(log.map(({ hash, parent, subject, path, oldPath }) => ({ hash, parent, subject, path, oldPath }))).toEqual([
      {
        hash: second,
        parent: first,
        subject: "Move it up; a subject | with $signs",
        path: "ärmel.crank",
        oldPath: "hill cars/ärmel.crank",
      },
      {
        hash: first,
        parent: undefined,
        subject: "Draw the car",
        path: "hill cars/ärmel.crank",
        oldPath: "hill cars/ärmel.crank",
      },
    ]);
    expect(log[1]).toMatchObject({ author: "Ada Fitter", date: "2026-03-14T09:00:00+00:00" });
    expect(log[0]?.touched).toContain("parts.crank");
    expect(repository.history("ärmel.crank", "HEAD~1")).toHaveLength(1);
  });

  it("finds the commit that two branches grew from", () => {
    made.git("branch", "wet", first);
    expect(repository.mergeBase(repository.commit("wet"), second)).toBe(first);
    made.git("checkout", "--quiet", "--orphan", "apart");
    const apart = made.commit("Begin anew");
    expect(() => repository.mergeBase(apart, second)).toThrow(/no commit in common/);
    made.git("checkout", "--quiet", "main");
  });

  it("says that a path lies outside", () => {
    expect(() => repository.pathOf(join(made.folder, "..", "other.crank"))).toThrow(/outside of the repository/);
  });

  it("says that a clone is shallow where a revision is missing", () => {
    const clone = mkdtempSync(join(tmpdir(), "shallow "));
    made.git("clone", "--quiet", "--depth=1", `file://${made.folder}`, clone);
    expect(() => Repository.around(clone).commit(first)).toThrow(/shallow/);
    rmSync(clone, { recursive: true });
  });
});

describe("what is no repository", () => {
  it("is said so", () => {
    const folder = mkdtempSync(join(tmpdir(), "bare ground "));
    expect(() => Repository.around(folder)).toThrow(/is in no git repository/);
    rmSync(folder, { recursive: true });
  });

  it("is told apart from one without commits", () => {
    const made = openRepository();
    expect(() => Repository.around(made.folder).commit("HEAD")).toThrow(/no commits yet/);
    expect(() => Repository.around(made.folder).history("a.crank", undefined)).toThrow(/no commits yet/);
    made.remove();
  });

  it("is no excuse where git is missing", () => {
    const { PATH } = process.env;
    process.env["PATH"] = "/nowhere";
    try {
      expect(() => Repository.around(tmpdir())).toThrow(/git is not installed/);
    } finally {
      process.env["PATH"] = PATH;
    }
  });
});
