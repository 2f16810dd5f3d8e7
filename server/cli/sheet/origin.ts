/** Where a sheet comes from: file, commit and time. */
import { readFileSync } from "node:fs";
import { URI } from "vscode-uri";
import { GitTrouble, Repository, short } from "../../host/git.js";
import type { FileView } from "../../snapshot/workspace.js";
import type { SheetOrigin } from "../../views/sheet/html.js";
import { localTime } from "../../views/sheet/local-time.js";
import { shown } from "../workspace.js";

/** @param now the clock's */
export function originOf(file: FileView, now: Date): SheetOrigin {
  return { file: shown(file.uri), commit: commitOf(file), time: localTime(now) };
}

/** Of the whole that the car rests on; undefined outside of a repository, or before its first commit. */
function commitOf({ uri, uses }: FileView): string | undefined {
  try {
    const repository = Repository.around(URI.parse(uri).fsPath);
    const commit = repository.commit("HEAD");
    const isChanged = uses.some((used) => !isAsCommitted(repository, commit, used));
    return `${short(commit)}${isChanged ? ", with changes that are not committed" : ""}`;
  } catch (trouble) {
    if (trouble instanceof GitTrouble) return undefined;
    throw trouble;
  }
}

function isAsCommitted(repository: Repository, commit: string, uri: string): boolean {
  const read = repository.read(commit, repository.pathOfUri(uri));
  return "text" in read && read.text === readFileSync(URI.parse(uri).fsPath, "utf8");
}
