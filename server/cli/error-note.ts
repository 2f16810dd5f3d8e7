/** Figures of a file with errors are told with a word on standard error, and the command ends accordingly. */
import type { FileView } from "../snapshot/workspace.js";
import type { Ends } from "./ends.js";
import { exitCodes } from "./exit-codes.js";
import { shown } from "./workspace.js";

export function noteErrors(file: FileView, ends: Ends): void {
  const errors = file.findings().filter(({ severity }) => severity === "error").length;
  if (errors === 0) return;
  process.stderr.write(
    `bellcrank: ${shown(file.uri)} has ${errors === 1 ? "an error" : `${errors} errors`}; see bellcrank check\n`,
  );
  ends(exitCodes.findings);
}
