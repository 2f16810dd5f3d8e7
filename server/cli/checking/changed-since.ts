/**
 * Which files a change touches: those that are other than at the merge base with a revision, committed or not, and every
 * set-up that rests on one of them (`use`, parts, curves in CSV files).
 */
import { existsSync, realpathSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { URI } from "vscode-uri";
import { GitTrouble, Repository } from "../../host/git.js";
import type { FileView } from "../../snapshot/workspace.js";
import { UsageError } from "../usage-error.js";

/**
 * @param near a file or folder of the repository
 * @throws UsageError where the revision or the repository is not there
 */
export function touchedSince(revision: string, near: string, files: readonly FileView[]): readonly FileView[] {
  const changed = changedSince(revision, near);
  return files.filter(({ uses, readsText }) => [...uses, ...readsText].some((uri) => changed.has(realPath(uri))));
}

function changedSince(revision: string, near: string): ReadonlySet<string> {
  try {
    const repository = Repository.around(near);
    const base = repository.mergeBase(repository.commit(revision), repository.commit("HEAD"));
    const paths = repository.changed(base, undefined).flatMap(({ path, oldPath }) => [path, oldPath]);
    return new Set(paths.map((path) => join(repository.top, path)));
  } catch (error) {
    if (error instanceof GitTrouble) throw new UsageError(`--changed-since ${revision}: ${error.message}`);
    throw error;
  }
}

/** As the repository's top is written: links followed, also of a file that is gone. */
function realPath(uri: string): string {
  const path = URI.parse(uri).fsPath;
  if (existsSync(path)) return realpathSync(path);
  const folder = dirname(path);
  return existsSync(folder) ? join(realpathSync(folder), basename(path)) : path;
}
