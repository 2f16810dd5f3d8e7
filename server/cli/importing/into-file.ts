/** Imported lines written into a file, once what comes of it has been checked. */
import { writeFileSync } from "node:fs";
import { URI } from "vscode-uri";
import type { Variant } from "../../views/bench/bench.js";
import { withLines } from "../../views/bench/place-lines.js";
import { UsageError } from "../usage-error.js";
import { openPaths, shown } from "../workspace.js";

/** @throws UsageError, and leaves the file as it is, where it has no such element or would have errors that it has not now */
export function writeInto(path: string, element: string, variant: Variant, setup: string | undefined): void {
  const opened = openPaths([path]);
  const [file] = opened.files;
  if (file === undefined || opened.files.length > 1) throw new UsageError(`--into ${path}: not a file`);
  const text = withLines(file.text, element, variant, setup);
  if (text === undefined)
    throw new UsageError(
      `--element ${element}: ${shown(file.uri)} has no element or part of that name with a block, and no one set-up${setup === undefined ? "" : ` "${setup}"`}`,
    );
  const errorsOf = (): readonly string[] =>
    opened.workspace
      .file(file.uri)
      .findings()
      .filter(({ severity }) => severity === "error")
      .map(({ message }) => message);
  const before = new Set(errorsOf());
  opened.workspace.set(file.uri, text);
  const fresh = errorsOf().find((message) => !before.has(message));
  if (fresh !== undefined)
    throw new UsageError(`--element ${element}: nothing is written, since it would be wrong: ${fresh}`);
  writeFileSync(URI.parse(file.uri).fsPath, text);
}
