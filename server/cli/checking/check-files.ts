/**
 * Files checked on all cores where there are many.
 *
 * Invariant: what comes out, and its order, is the same for any number of workers.
 */
import { SingleBar } from "cli-progress";
import type { Workspace } from "../../snapshot/workspace.js";
import { onWorkers } from "../crew.js";
import type { checkRun } from "./check-run.js";
import type { CheckedFile } from "./checked-file.js";
import { checkedFile } from "./placed.js";

/** Files of one errand of a worker. */
const chunk = 16;
/** Fewer are checked before workers would have started. */
const fewest = 100;

/** @param paths as on the command line, for workers; @param uris those of the files below them that are asked for */
export async function checkFiles(
  paths: readonly string[],
  workspace: Workspace,
  uris: readonly string[],
  workers: number,
): Promise<readonly CheckedFile[]> {
  if (workers === 1 || uris.length < fewest) return uris.map((uri) => checkedFile(workspace.file(uri)));
  const bar = process.stderr.isTTY
    ? new SingleBar({ format: "{bar} {value}/{total} files, {eta_formatted} left" })
    : undefined;
  bar?.start(uris.length, 0);
  const checked: CheckedFile[] = [];
  const runs = Array.from({ length: Math.ceil(uris.length / chunk) }, (_, i) => uris.slice(i * chunk, (i + 1) * chunk));
  const take = (some: ReturnType<typeof checkRun>): void => {
    checked.push(...some);
    bar?.update(checked.length);
  };
  await onWorkers(runs, workers, (exec, run) => exec<typeof checkRun>("checkRun", [paths, run]), take);
  bar?.stop();
  return checked;
}
