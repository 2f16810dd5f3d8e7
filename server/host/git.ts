/**
 * Reads a git repository: revisions, files at a revision, what changed between two. Runs `git` itself, which knows every
 * form of repository; nothing in the work tree, the index or the references is touched.
 *
 * In: a path inside the repository. Out: plain data; what cannot be answered is a `GitTrouble` with a sentence for the user.
 */
import { type SpawnSyncReturns, spawnSync } from "node:child_process";
import { isUtf8 } from "node:buffer";
import { existsSync, realpathSync, statSync } from "node:fs";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { URI } from "vscode-uri";
import type { Host } from "../snapshot/workspace.js";
import { blobsIn, changesIn, commitsIn, type GitChange, type GitCommit, zeroParted } from "./git-output.js";

export type { GitChange, GitCommit } from "./git-output.js";

/** Something that git cannot answer, in a sentence without its full stop. */
export class GitTrouble extends Error {}

/** Larger texts are nobody's set-up; a file of 10,000 lines has half a megabyte. */
export const MOST_BYTES = 16 * 1024 * 1024;

const LANGUAGE_FILES = ["*.crank", "*.csv"] as const;

export class Repository {
  /** Absolute path of the work tree's top. */
  readonly top: string;

  private constructor(top: string) {
    this.top = top;
  }

  /** The repository around a file or folder, there or not. */
  static around(path: string): Repository {
    const folder = existingFolder(resolve(path));
    const found = run(folder, ["rev-parse", "--show-toplevel"]);
    if (found.status !== 0) throw new GitTrouble(whyNoRepository(folder, textOf(found.stderr)));
    return new Repository(realpathSync(textOf(found.stdout).replace(/\r?\n$/, "")));
  }

  /** The path of a file inside the repository, as git writes it. */
  pathOf(file: string): string {
    const way = relative(this.top, real(resolve(file)));
    if (way.startsWith("..") || isAbsolute(way))
      throw new GitTrouble(`${file} lies outside of the repository ${this.top}`);
    return way.split(sep).join("/");
  }

  pathOfUri(uri: string): string {
    return this.pathOf(URI.parse(uri).fsPath);
  }

  uriOf(path: string): string {
    return URI.file(join(this.top, ...path.split("/"))).toString();
  }

  /** The commit that a revision names. */
  commit(revision: string): string {
    const found = this.#run("rev-parse", "--verify", "--quiet", "--end-of-options", `${revision}^{commit}`);
    if (found.status === 0) return textOf(found.stdout).trim();
    if (this.#run("rev-parse", "--verify", "--quiet", "HEAD^{commit}").status !== 0 && this.#hasNoCommits())
      throw new GitTrouble(`the repository ${this.top} has no commits yet`);
    throw new GitTrouble(`there is no revision "${revision}" in ${this.top}${this.#shallowHint()}`);
  }

  /** The commit that both grew from. */
  mergeBase(one: string, other: string): string {
    const found = this.#run("merge-base", "--end-of-options", one, other);
    if (found.status === 0) return textOf(found.stdout).trim();
    throw new GitTrouble(`${short(one)} and ${short(other)} have no commit in common${this.#shallowHint()}`);
  }

  /** A file of a commit; symbolic links and folders are no texts. */
  read(commit: string, path: string): ReturnType<Host["read"]> | { readonly missing: "too-large" } {
    const listed = textOf(this.#run("ls-tree", "-l", "-z", "--full-tree", commit, "--", path).stdout);
    const [, mode, size] = /^(\d+) blob \S+ +(\d+)\t/.exec(listed) ?? [];
    if (mode === undefined || mode === "120000") return { missing: "missing" };
    if (Number(size) > MOST_BYTES) return { missing: "too-large" };
    const { status, stdout } = this.#run("cat-file", "blob", `${commit}:${path}`);
    if (status !== 0) return { missing: "missing" };
    return isUtf8(stdout) ? { text: stdout.toString("utf8") } : { missing: "not-text" };
  }

  /** Texts of a commit in one go; what is no text is left out. */
  readAll(commit: string, paths: readonly string[]): ReadonlyMap<string, string> {
    const asked = paths.filter((path) => !path.includes("\n"));
    const input = asked.map((path) => `${commit}:${path}\n`).join("");
    const { status, stdout } = run(this.top, ["cat-file", "--batch"], input);
    return status === 0 ? blobsIn(stdout, asked, MOST_BYTES) : new Map();
  }

  /** The language's files of a commit. */
  list(commit: string): readonly string[] {
    return zeroParted(this.#must("ls-tree", "-r", "-z", "--name-only", "--full-tree", commit)).filter((path) =>
      path.endsWith(".crank"),
    );
  }

  /** Files of the language and tables that differ between two commits, or between a commit and the work tree. */
  changed(from: string, to: string | undefined): readonly GitChange[] {
    const range = to === undefined ? [from] : [from, to];
    const options = ["--name-status", "--no-ext-diff", "--find-renames", "-z", "--no-relative"];
    const tokens = zeroParted(this.#must("diff", ...options, ...range, "--", ...LANGUAGE_FILES.map(anywhere)));
    return [...changesIn(tokens), ...(to === undefined ? this.#untracked() : [])];
  }

  /** Commits that touched any of the language's files, newest first; one of them is followed through its renames. */
  history(path: string, since: string | undefined): readonly GitCommit[] {
    const range = since === undefined ? [this.commit("HEAD")] : [`${this.commit(since)}..${this.commit("HEAD")}`];
    const format = "--format=%x01%H%x00%P%x00%aI%x00%an%x00%s%x00";
    const flags = ["--name-status", "--find-renames", "-z", "--no-ext-diff", "--no-relative", "--date-order", format];
    return commitsIn(this.#must("log", ...flags, ...range, "--", ...LANGUAGE_FILES.map(anywhere)), path);
  }

  /** Branches, those of other repositories included, and tags; the latest first. */
  names(): { readonly branches: readonly string[]; readonly tags: readonly string[] } {
    const list = (...patterns: readonly string[]): readonly string[] =>
      this.#must("for-each-ref", "--sort=-committerdate", "--format=%(refname:short)", ...patterns)
        .split("\n")
        .filter((name) => name !== "" && !name.endsWith("/HEAD"));
    return { branches: list("refs/heads", "refs/remotes"), tags: list("refs/tags") };
  }

  #untracked(): readonly GitChange[] {
    const listed = this.#must(
      "ls-files",
      "--others",
      "--exclude-standard",
      "-z",
      "--full-name",
      "--",
      ...LANGUAGE_FILES.map(anywhere),
    );
    return zeroParted(listed).map((path) => ({ status: "added", path, oldPath: path }));
  }

  #hasNoCommits(): boolean {
    return textOf(this.#run("rev-list", "--all", "--max-count=1").stdout).trim() === "";
  }

  #shallowHint(): string {
    const found = this.#run("rev-parse", "--is-shallow-repository");
    return textOf(found.stdout).trim() === "true"
      ? "; this clone is shallow: fetch with --unshallow, or a greater depth"
      : "";
  }

  #must(...args: readonly string[]): string {
    const { status, stdout, stderr } = this.#run(...args);
    if (status !== 0) throw new GitTrouble(`git ${args[0] ?? ""} failed: ${firstLine(textOf(stderr))}`);
    return textOf(stdout);
  }

  #run(...args: readonly string[]): SpawnSyncReturns<Buffer> {
    return run(this.top, args);
  }
}

export const short = (commit: string): string => commit.slice(0, 8);

/** At any depth below the top. */
const anywhere = (pattern: string): string => `:(top,glob)**/${pattern}`;

function run(folder: string, args: readonly string[], input?: string): SpawnSyncReturns<Buffer> {
  const found = spawnSync("git", ["--no-pager", ...args], {
    cwd: folder,
    env: { ...process.env, LC_ALL: "C", GIT_OPTIONAL_LOCKS: "0", GIT_TERMINAL_PROMPT: "0" },
    maxBuffer: 8 * MOST_BYTES,
    stdio: [input === undefined ? "ignore" : "pipe", "pipe", "pipe"],
    ...(input === undefined ? {} : { input }),
  });
  const { error } = found as { readonly error?: NodeJS.ErrnoException };
  if (error?.code === "ENOENT") throw new GitTrouble("git is not installed, or not on the path");
  if (error !== undefined) throw new GitTrouble(`git cannot be run: ${error.message}`);
  return found;
}

function existingFolder(path: string): string {
  let here = path;
  while (!existsSync(here)) {
    const up = dirname(here);
    if (up === here) return process.cwd();
    here = up;
  }
  return statSync(here).isDirectory() ? here : dirname(here);
}

/** Links are followed as far as the path is there. */
function real(path: string): string {
  if (existsSync(path)) return realpathSync(path);
  const up = dirname(path);
  return up === path ? path : join(real(up), path.slice(up.length));
}

function whyNoRepository(folder: string, message: string): string {
  if (message.includes("dubious ownership")) return `git does not trust ${folder}, which belongs to another user`;
  if (message.includes("work tree")) return `${folder} is a repository without a work tree`;
  return `${folder} is in no git repository`;
}

const textOf = (bytes: Buffer): string => bytes.toString("utf8");
const firstLine = (text: string): string =>
  text
    .trim()
    .split("\n")[0]
    ?.replace(/^fatal: /, "") ?? "";
