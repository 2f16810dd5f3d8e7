/** `bellcrank merge`: git's merge driver for set-ups. Two changes to different properties go together, whatever line they are on. */
import { readFileSync, writeFileSync } from "node:fs";
import { isUtf8 } from "node:buffer";
import type { Command } from "commander";
import { type Conflict, mergeSetups, type SetupMerge } from "../../views/merging/merge.js";
import type { Way } from "../../views/merging/print.js";
import { exitCodes } from "../exit-codes.js";
import type { Ends } from "../ends.js";
import { effectWords, fileWith, newTogether } from "../merging/merge-effects.js";
import { mergeByLines, type MergedFiles } from "../merging/git-merge-file.js";
import { UsageError } from "../usage-error.js";

/** More than these are told without what they do. */
const mostEffects = 8;

export function mergeCommand(root: Command, ends: Ends): void {
  root
    .command("merge")
    .description("Git's merge driver for set-ups: merges by property and writes the result to OURS.")
    .argument("<base>", "the version that both grew from (%O)")
    .argument("<ours>", "our version, which the result is written to (%A)")
    .argument("<theirs>", "their version (%B)")
    .argument("[path]", "the path that the versions stand for (%P)")
    .option("--marker-size <n>", "how long the marks of a conflict are (%L)", "7")
    .addHelpText(
      "after",
      `
The same property changed on both sides is a conflict: both lines stay between marks, each with what it does to the car,
and the exit code is 1. Where a version cannot be read as a set-up, git merges its lines.

Example, for git's configuration (samples/review has all of it):
  git config merge.bellcrank.driver "bellcrank merge --marker-size %L %O %A %B %P"`,
    )
    .action((base: string, ours: string, theirs: string, path: string | undefined, options: { markerSize: string }) => {
      const clean = mergeFiles({ base, ours, theirs }, path ?? ours, markSizeOf(options.markerSize));
      ends(clean ? exitCodes.fine : exitCodes.findings);
    });
}

function markSizeOf(text: string): number {
  const size = Number(text);
  if (!Number.isInteger(size) || size < 1 || size > 100)
    throw new UsageError(`--marker-size "${text}": a whole number from 1 to 100`);
  return size;
}

/** Whether it went without a conflict. */
function mergeFiles(files: MergedFiles, path: string, markSize: number): boolean {
  const base = textOf(files.base);
  const ours = textOf(files.ours);
  const theirs = textOf(files.theirs);
  if (base === undefined || ours === undefined || theirs === undefined) {
    note(`${path}: not all versions are UTF-8 text; git merges them`);
    return mergeByLines(files, markSize);
  }
  const merge = mergeSetups(base, ours, theirs);
  if ("unreadable" in merge) {
    note(`${path}: ${versionNames[merge.unreadable]} cannot be read whole, so it is merged by lines`);
    return mergeByLines(files, markSize);
  }
  if (merge.conflicts.length > 0) {
    writeFileSync(files.ours, withConflicts(merge, path, markSize));
    return false;
  }
  const text = merge.settled(() => "ours");
  writeFileSync(files.ours, text);
  if (merge.taken.length > 0) note(`${path}: taken over from theirs: ${merge.taken.join("; ")}`);
  return goesTogether(path, text, ours, theirs);
}

const versionNames: Readonly<Record<Way, string>> = {
  base: "the version before both",
  ours: "our version",
  theirs: "their version",
};

function textOf(path: string): string | undefined {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw new UsageError(`${path}: cannot be read (${(error as NodeJS.ErrnoException).code ?? "unknown error"})`);
  }
  return isUtf8(bytes) ? bytes.toString("utf8") : undefined;
}

function withConflicts(merge: SetupMerge, path: string, size: number): string {
  const effects = new Map(
    merge.conflicts.slice(0, mostEffects).map((conflict) => [conflict, effectsOf(merge, conflict, path)]),
  );
  for (const conflict of merge.conflicts) {
    note(`${path}: ${conflict.path.join(" > ")} is changed on both sides`);
    for (const way of ["base", "ours", "theirs"] as const) {
      const effect = way === "base" ? undefined : effects.get(conflict)?.[way];
      process.stderr.write(`  ${way.padEnd(6)}  ${labelOf(conflict[way]?.header, effect)}\n`);
    }
  }
  return merge.marked((conflict) => {
    const label = (way: "ours" | "theirs"): string => {
      const effect = effects.get(conflict)?.[way];
      const gone = conflict[way] === undefined ? " (taken out)" : "";
      return `${way}${gone}${effect === undefined ? "" : `: ${effect}`}`;
    };
    return { size, ours: label("ours"), theirs: label("theirs") };
  });
}

const labelOf = (header: string | undefined, effect: string | undefined): string =>
  `${header?.replace(/\s+/g, " ") ?? "not there"}${effect === undefined ? "" : `: ${effect}`}`;

/** What each side's way of this conflict does to the car, with all other conflicts as they were before both. */
function effectsOf(merge: SetupMerge, conflict: Conflict, path: string): Record<"ours" | "theirs", string | undefined> {
  const text = (way: Way): string => merge.settled((other) => (other === conflict ? way : "base"));
  const effect = (way: Way): string | undefined => effectWords(path, text("base"), text(way));
  return { ours: effect("ours"), theirs: effect("theirs") };
}

/** Merged without a conflict, but what each meant may not hold of both together. Errors stop the merge, missed wishes are told. */
function goesTogether(path: string, text: string, ours: string, theirs: string): boolean {
  const found = newTogether(fileWith(path, text), fileWith(path, ours), fileWith(path, theirs));
  for (const { severity, start, message } of found)
    note(`${path}:${start.line}: ${severity} that neither version has by itself: ${message}`);
  return found.every(({ severity }) => severity !== "error");
}

const note = (text: string): boolean => process.stderr.write(`bellcrank: ${text}\n`);
