/** Versions of a text as resolved cars, for comparing them. */
import type { CheckedCar } from "../../../server/findings/context.js";
import { createWorkspace } from "../../../server/snapshot/create.js";
import type { FileView } from "../../../server/snapshot/workspace.js";
import type { Change } from "../../../server/views/comparison/change.js";
import { changesBetween } from "../../../server/views/comparison/changes.js";

export interface Version {
  readonly file: FileView;
  readonly car: CheckedCar;
}

/** The named car or set-up of a text, else its first; other files by their names beside it. */
export function carIn(text: string, name?: string, beside: Readonly<Record<string, string>> = {}): Version {
  const files = new Map(Object.entries(beside).map(([file, content]) => [`file:///club/${file}`, content]));
  const workspace = createWorkspace({
    read: (uri) => {
      const found = files.get(uri);
      return found === undefined ? { missing: "missing" } : { text: found };
    },
  });
  workspace.set("file:///club/car.crank", text);
  const file = workspace.file("file:///club/car.crank");
  const car = file.cars.find(({ model }) => name === undefined || (model.setup ?? model.name) === name);
  if (car === undefined) throw new Error(`no car in ${text}`);
  return { file, car };
}

export const changesOf = (old: Version, now: Version): readonly Change[] =>
  changesBetween(old.car.model, now.car.model);
