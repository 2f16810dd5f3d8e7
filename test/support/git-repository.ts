/** Real git repositories for tests: made in a folder of their own, with a fixed identity and date, and removed again. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

export interface TestRepository {
  readonly folder: string;
  write(name: string, content: string | Buffer): void;
  /** Adds everything that is there and commits it; the hash. */
  commit(subject: string): string;
  git(...args: string[]): string;
  remove(): void;
}

/** A blank and a letter beyond ASCII are in the path, since they are in that of many a club. */
export function openRepository(): TestRepository {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "pit wall é ")));
  let minute = 0;
  const git = (...args: string[]): string => {
    const date = `2026-03-14T09:${String(minute).padStart(2, "0")}:00Z`;
    const who = { NAME: "Ada Fitter", EMAIL: "ada@club.example", DATE: date };
    const of = (role: string) => Object.entries(who).map(([key, value]) => [`GIT_${role}_${key}`, value]);
    const { status, stdout, stderr } = spawnSync("git", args, {
      cwd: folder,
      encoding: "utf8",
      env: {
        ...process.env,
        ...Object.fromEntries([...of("AUTHOR"), ...of("COMMITTER")]),
        GIT_CONFIG_GLOBAL: "/dev/null",
        GIT_CONFIG_SYSTEM: "/dev/null",
      },
    });
    if (status !== 0) throw new Error(`git ${args.join(" ")}: ${stderr}`);
    return stdout.trim();
  };
  git("init", "--quiet", "--initial-branch=main", ".");
  return {
    folder,
    git,
    write(name, content) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), content);
    },
    commit(subject) {
      git("add", "--all");
      git("commit", "--quiet", "--allow-empty", `--message=${subject}`);
      minute += 1;
      return git("rev-parse", "HEAD");
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
