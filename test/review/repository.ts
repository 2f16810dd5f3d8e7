/** A real git repository in a folder of its own, whose path has blanks and an accent; git knows nothing of the machine's settings. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Repo {
  readonly folder: string;
  /** In front of the other folders on the path. */
  readonly bin: string;
  /** Without a terminal, in the repository's folder or one below it. */
  run(command: string, args: readonly string[], more?: { readonly env?: NodeJS.ProcessEnv; readonly at?: string }): Ran;
  /** @throws if git does not end well */
  git(...args: string[]): string;
  bellcrank(...args: string[]): Ran;
  write(name: string, content: string | Buffer): void;
  read(name: string): string;
  /** Everything as it lies there, past all hooks. */
  commit(subject: string): void;
  remove(): void;
}

/** @param options `cars`: the sample cars to begin with */
export function openRepo(options: { readonly cars?: readonly string[] } = {}): Repo {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "club garage é ")));
  const home = join(folder, ".git", "home");
  const bin = join(folder, ".git", "bin");
  const environment: NodeJS.ProcessEnv = {
    PATH: [bin, process.env["PATH"]].join(":"),
    HOME: home,
    GIT_CONFIG_NOSYSTEM: "1",
    GIT_TERMINAL_PROMPT: "0",
    LC_ALL: "C",
  };
  const run: Repo["run"] = (command, args, { env = {}, at = "." } = {}) => {
    const { status, stdout, stderr, error } = spawnSync(command, args, {
      cwd: join(folder, at),
      encoding: "utf8",
      env: { ...environment, ...env },
      input: "",
    });
    if (error !== undefined) throw error;
    return { code: status, out: stdout, err: stderr };
  };
  const git: Repo["git"] = (...args) => {
    const { code, out, err } = run("git", args);
    if (code !== 0) throw new Error(`git ${args.join(" ")} ended with ${code}: ${out}${err}`);
    return out;
  };
  git("init", "--quiet", "--initial-branch=main");
  mkdirSync(home);
  git("config", "user.name", "Mechanic");
  git("config", "user.email", "mechanic@example.invalid");
  for (const car of options.cars ?? []) cpSync(join("samples", car), join(folder, car), { recursive: true });
  return {
    folder,
    bin,
    run,
    git,
    bellcrank: (...args) => run(process.execPath, [resolve("dist/cli.js"), ...args]),
    write(name, content) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), content);
    },
    read: (name) => readFileSync(join(folder, name), "utf8"),
    commit(subject) {
      git("add", "--all");
      git("commit", "--quiet", "--no-verify", "--message", subject);
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
