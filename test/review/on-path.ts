/** `bellcrank` as a command on the path: what is built here, as if it were installed. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { cpSync } from "node:fs";
import { openRepo, type Repo } from "./repository.js";

/** A script on the path of a repository. */
export function onPath(bin: string, name: string, script: string): void {
  mkdirSync(bin, { recursive: true });
  writeFileSync(join(bin, name), `#!/bin/sh\n${script}\n`, { mode: 0o755 });
}

/** A repository with the files of samples/review in it, taken over as its README says, and the sample cars named. */
export function openReviewed(...cars: readonly string[]): Repo {
  const repo = openRepo({ cars });
  cpSync("samples/review", repo.folder, { recursive: true });
  onPath(repo.bin, "bellcrank", `exec "${process.execPath}" "${resolve("dist/cli.js")}" "$@"`);
  repo.git("config", "--local", "include.path", "../.gitconfig");
  return repo;
}
