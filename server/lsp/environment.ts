/** What differs between a server that is a process of its own and one that is a worker in a browser. */
import type { Revisions } from "../host/revisions.js";
import type { WorkspaceFiles } from "../host/workspace-files.js";

/** Calls back once the messages that are already here have been read; the answer takes that back. */
export type NextTurn = (run: () => void) => () => void;

export interface Environment {
  readonly files: WorkspaceFiles;
  readonly nextTurn: NextTurn;
  /** Undefined where no git can be run. */
  readonly revisions: Revisions | undefined;
}
