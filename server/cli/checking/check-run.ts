/** A run of files checked: what a worker does, and the command itself where they are few. */
import type { FileView, Workspace } from "../../snapshot/workspace.js";
import { openPaths } from "../workspace.js";
import type { CheckedFile } from "./checked-file.js";
import { checkedFile } from "./placed.js";

let opened: { readonly key: string; readonly workspace: Workspace } | undefined;

/**
 * @param paths as on the command line: they say what may be read; opened once and kept
 * @param uris which of the files below them
 */
export function checkRun(paths: readonly string[], uris: readonly string[]): readonly CheckedFile[] {
  const key = paths.join("\0");
  if (opened?.key !== key) opened = { key, workspace: openPaths(paths).workspace };
  const { workspace } = opened;
  return uris.map((uri): FileView => workspace.file(uri)).map(checkedFile);
}
