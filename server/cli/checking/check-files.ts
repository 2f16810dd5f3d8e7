/**
 * Files checked on all cores where there are many.
 *
 * Invariant: what comes out, and its order, is the same for any number of workers.
 */
import { SingleBar } from "cli-progress";
import type { FileView } from "../../snapshot/workspace.js";
import { onWorkers } from "../crew.js";
import type { checkRun } from "./check-run.js";
import type { CheckedFile } from "./checked-file.js";
import { checkedFile } from "./placed.js";

/** Files of one errand of a worker. */
const chunk = 16;
/** Fewer are checked before workers would have started. */
const fewest = 100;

/** @param paths as on the command line, for workers; @param files those below them that are asked for */
export async function checkFiles(
  paths: readonly string[],
  files: readonly FileView[],
  workers: number,
): Promise<readonly CheckedFile[]> {
  if (workers === 1 || files.length < fewest) return files.map(checkedFile);
  const bar = process.stderr.isTTY
    ? new SingleBar({ format: "{bar} {value}/{total} files, {eta_formatted} left" })
    : undefined;
  bar?.start(files.length, 0);
  const checked: CheckedFile[] = [];
  const runs = Array.from({ length: Math.ceil(files.length / chunk) }, (_, i) =>
    files.slice(i * chunk, (i + 1) * chunk).map(({ uri }) => uri),
  );
  const take = (some: ReturnType<typeof checkRun>): void => {
    checked.push(...some);
    bar?.update(checked.length);
  };
  await onWorkers(runs, workers, (exec, uris) => exec<typeof checkRun>("checkRun", [paths, uris]), take);
  bar?.stop();
  return checked;
}
