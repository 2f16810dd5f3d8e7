/**
 * What a version of a file does to the cars that rest on it: for conflicts, so that whoever settles one sees figures, and
 * for merges without one, which may still put together what does not go together.
 *
 * In: texts that stand for a file of the work tree, whose neighbours are read as they lie there.
 */
import { dirname, resolve } from "node:path";
import { URI } from "vscode-uri";
import { Disk } from "../../host/disk.js";
import { createWorkspace } from "../../snapshot/create.js";
import type { FileView, Workspace } from "../../snapshot/workspace.js";
import { compare } from "../../views/comparison/compare.js";
import type { CheckedFinding } from "../checking/checked-file.js";
import { checkedFile } from "../checking/placed.js";

/** A shelf may carry many cars: as many are looked at for one that moves. */
const mostDependents = 40;

/** The file of that path as if it held this text. */
export function fileWith(path: string, text: string): FileView {
  const { workspace, uri } = worldWith(path, text);
  return workspace.file(uri);
}

function worldWith(path: string, text: string): { workspace: Workspace; disk: Disk; uri: string } {
  const disk = new Disk();
  disk.setRoots([URI.file(process.cwd()).toString()]);
  const workspace = createWorkspace(disk);
  const uri = URI.file(resolve(path)).toString();
  workspace.set(uri, text);
  return { workspace, disk, uri };
}

/** The file, and where it declares no car (a shelf of parts) the files beside and below it that rest on it. */
function filesOn(path: string, text: string): readonly FileView[] {
  const own = fileWith(path, text);
  if (own.cars.length > 0) return [own];
  const { workspace, disk } = worldWith(path, text);
  return disk
    .listBelow(dirname(resolve(path)))
    .slice(0, mostDependents)
    .map((uri) => workspace.file(uri))
    .filter(({ uses }) => uses.includes(own.uri));
}

/** "Front heave rate +5.8 %.", for the first car or set-up that moves; undefined where none does. */
export function effectWords(path: string, before: string, after: string): string | undefined {
  const old = filesOn(path, before);
  for (const file of filesOn(path, after)) {
    const base = old.find(({ uri }) => uri === file.uri);
    const words = base && effectIn(base, file, old.length > 1 || file.cars.length > 1);
    if (words !== undefined) return words;
  }
  return undefined;
}

function effectIn(base: FileView, now: FileView, named: boolean): string | undefined {
  for (const car of now.cars) {
    const name = car.model.setup ?? car.model.name;
    const old = base.cars.find(({ model }) => (model.setup ?? model.name) === name);
    if (old === undefined) continue;
    const { effects, verdicts, fresh, headline } = compare(
      { car: old, file: base, label: "base" },
      { car, file: now, label: "now" },
    );
    if (effects.length + verdicts.length + fresh.length > 0) return named ? `${name}: ${headline}` : headline;
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
