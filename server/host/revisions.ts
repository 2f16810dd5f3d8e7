/** Files of the work tree as they were committed, for a face that knows them by their addresses. */
import { URI } from "vscode-uri";
import type { Host } from "../snapshot/workspace.js";
import { CommitFiles } from "./commit-files.js";
import { GitTrouble, Repository, short } from "./git.js";

export interface CommittedFile {
  /** Reads whatever the file uses at the same revision. */
  readonly host: Host;
  /** Its address then: it may have been renamed since. */
  readonly uri: string;
  /** "main (1a2b3c4d)" */
  readonly label: string;
}

export interface Names {
  readonly branches: readonly string[];
  readonly tags: readonly string[];
}

/** A sentence for the user. */
export interface NoRevision {
  readonly why: string;
}

export interface Revisions {
  file(uri: string, revision: string): CommittedFile | NoRevision;
  names(uri: string): Names | NoRevision;
}

export const gitRevisions: Revisions = {
  file: (uri, revision) =>
    answered(uri, (repository, path) => {
      const commit = repository.commit(revision);
      const renamed = repository.changed(commit, undefined).find((one) => one.path === path);
      const label = commit.startsWith(revision) ? short(commit) : `${revision} (${short(commit)})`;
      const old = renamed?.oldPath ?? path;
      if (renamed?.status === "added" || "missing" in repository.read(commit, old))
        throw new GitTrouble(`${path} is not in ${label}`);
      return { host: new CommitFiles(repository, commit), uri: repository.uriOf(old), label };
    }),
  names: (uri) => answered(uri, (repository) => repository.names()),
};

function answered<T>(uri: string, find: (repository: Repository, path: string) => T): T | NoRevision {
  const { scheme, fsPath } = URI.parse(uri);
  if (scheme !== "file") return { why: "The file is not on this machine's disk, so that there is no git to ask." };
  try {
    const repository = Repository.around(fsPath);
    return find(repository, repository.pathOf(fsPath));
  } catch (error) {
    if (error instanceof GitTrouble)
      return { why: `${error.message.charAt(0).toUpperCase()}${error.message.slice(1)}.` };
    throw error;
  }
}
