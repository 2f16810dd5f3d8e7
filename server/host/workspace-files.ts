/** Files of a workspace as a server reads them by itself: those on disk, or none where there is no disk. */
import type { Host } from "../snapshot/workspace.js";

export interface WorkspaceFiles extends Host {
  /** Whether files with such an address are read here; the client is asked for others. */
  reads(uri: string): boolean;
  /** Folders (or documents, whose folders count) that may be read below. */
  setRoots(folders: readonly string[]): void;
  readonly hasRoots: boolean;
  addFolderOf(document: string): void;
  /** The language's files below the roots. */
  list(): readonly string[];
}

/** A worker of a browser reads nothing by itself. */
export const NO_FILES: WorkspaceFiles = {
  reads: () => false,
  setRoots: () => undefined,
  hasRoots: false,
  addFolderOf: () => undefined,
  list: () => [],
  read: () => ({ missing: "missing" }),
};
