/** `bellcrank format`: the canonical layout, written back, or only checked for CI. */
import { writeFileSync } from "node:fs";
import type { Command } from "commander";
import { URI } from "vscode-uri";
import { format } from "../../../grammar/index.js";
import { exitCodes } from "../exit-codes.js";
import type { Ends } from "../ends.js";
import { openPaths, shown } from "../workspace.js";

export function formatCommand(root: Command, ends: Ends): void {
  root
    .command("format")
    .description("Lay files out in the one canonical way; numbers, names and comments stay as they are.")
    .argument("[paths...]", "files, or folders that are searched for .crank files", ["."])
    .option("--check", "write nothing; end with exit code 1 if a file would change")
    .option("--stdout", "write the layout of one file to the terminal instead of the file")
    .addHelpText("after", "\nExample:\n  bellcrank format --check samples/quill")
    .action((paths: string[], options: { check?: boolean; stdout?: boolean }) => {
      const { files } = openPaths(paths);
      const changed = files
        .map(({ uri, text }) => ({ uri, text, laidOut: format(text) }))
        .filter(({ text, laidOut }) => text !== laidOut);
      if (options.stdout === true) {
        for (const { text } of files) process.stdout.write(format(text));
        return;
      }
      for (const { uri, laidOut } of changed) {
        if (options.check !== true) writeFileSync(URI.parse(uri).fsPath, laidOut);
        process.stdout.write(`${options.check === true ? "would change" : "laid out"} ${shown(uri)}\n`);
      }
      process.stdout.write(`${summary(files.length, changed.length, options.check === true)}\n`);
      ends(options.check === true && changed.length > 0 ? exitCodes.findings : exitCodes.fine);
    });
}

function summary(all: number, changed: number, check: boolean): string {
  const files = all === 1 ? "1 file" : `${all} files`;
  if (changed === 0) return `${files}, all in canonical layout`;
  return `${changed} of ${files} ${check ? "not in canonical layout" : "changed"}`;
}
