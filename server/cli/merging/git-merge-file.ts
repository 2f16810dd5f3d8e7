/** Git's own merge by lines: for versions that cannot be read as set-ups. */
import { spawnSync } from "node:child_process";
import { UsageError } from "../usage-error.js";

export interface MergedFiles {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

/**
 * Puts the result into the file of ours.
 *
 * @returns whether it had no conflict; @throws UsageError where git cannot do it either, and then nothing was changed
 */
export function mergeByLines({ base, ours, theirs }: MergedFiles, markSize: number): boolean {
  const labels = ["-L", "ours", "-L", "base", "-L", "theirs"];
  const { status, stderr, error } = spawnSync(
    "git",
    ["merge-file", `--marker-size=${markSize}`, ...labels, "--", ours, base, theirs],
    { encoding: "utf8", env: { ...process.env, LC_ALL: "C" } },
  );
  if (error !== undefined) throw new UsageError(`git cannot be run: ${error.message}`);
  // Up to 127 it is the number of conflicts.
  if (status === null || status > 127) throw new UsageError(`git merge-file: ${stderr.trim().replace(/^error: /, "")}`);
  return status === 0;
}
