/**
 * What a version of a file does to the cars that rest on it: for conflicts, so that whoever settles one sees figures, and
 * for merges without one, which may still put together what does not go together.
 *
 * In: texts that stand for a file of the work tree, whose neighbours are read as they lie there.
 */
import { resolve } from "node:path";
import { URI } from "vscode-uri";
import { Disk } from "../../host/disk.js";
import { createWorkspace } from "../../snapshot/create.js";
import type { FileView } from "../../snapshot/workspace.js";
import { compare } from "../../views/comparison/compare.js";
import type { CheckedFinding } from "../checking/checked-file.js";
import { checkedFile } from "../checking/placed.js";

/** The file of that path as if it held this text. */
export function fileWith(path: string, text: string): FileView {
  const disk = new Disk();
  disk.setRoots([URI.file(process.cwd()).toString()]);
  const workspace = createWorkspace(disk);
  const uri = URI.file(resolve(path)).toString();
  workspace.set(uri, text);
  return workspace.file(uri);
}

/** "Front heave rate 171 → 164 N/mm", for the first car or set-up of the file that moves; undefined where none does. */
export function effectWords(base: FileView, now: FileView): string | undefined {
  for (const car of now.cars) {
    const name = car.model.setup ?? car.model.name;
    const old = base.cars.find(({ model }) => (model.setup ?? model.name) === name);
    if (old === undefined) continue;
    const comparison = compare({ car: old, file: base, label: "base" }, { car, file: now, label: "now" });
    if (comparison.effects.length > 0 || comparison.verdicts.length > 0 || comparison.fresh.length > 0)
      return now.cars.length === 1 ? comparison.headline : `${name}: ${comparison.headline}`;
  }
  return undefined;
}

/** Errors and missed expectations that neither version has by itself. */
export function newTogether(merged: FileView, ours: FileView, theirs: FileView): readonly CheckedFinding[] {
  const known = new Set(
    [ours, theirs].flatMap((file) => checkedFile(file).findings.map(({ fingerprint }) => fingerprint)),
  );
  return checkedFile(merged).findings.filter(
    ({ severity, rule, fingerprint }) =>
      (severity === "error" || rule === "missed-expectation") && !known.has(fingerprint),
  );
}
