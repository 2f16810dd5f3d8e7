/** A few files as a workspace, a cursor in one of them, and what each refactoring offered there would make of all files. */
import { applyEdits } from "../../server/findings/edits.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import type { Workspace } from "../../server/snapshot/workspace.js";
import type { Refactored, Refactoring } from "../../server/refactorings/refactoring.js";
import { areSameCars } from "../../server/refactorings/same-cars.js";
import { type Files, isFormatted, uriOf } from "../support/context.js";

export interface Outcome {
  readonly title: string;
  readonly kind: Refactoring["kind"];
  readonly named: string | undefined;
  readonly files: Files;
}

export function workspaceOf(files: Files): Workspace {
  return createWorkspace({
    read: (uri) => {
      const text = files[nameOf(uri)];
      return text === undefined ? { missing: "missing" } : { text };
    },
  });
}

const nameOf = (uri: string): string => decodeURIComponent(uri.slice(uriOf("").length));

/** With a cursor in the named file. */
export function cursorIn(files: Files, name: string, offset: number, workspace = kept(files)): Refactored {
  const all = Object.keys(files).filter((other) => other.endsWith(".crank"));
  const file = workspace.file(uriOf(name));
  return {
    file,
    offset,
    resting: (uris) =>
      all
        .map((other) => workspace.file(uriOf(other)))
        .filter(({ uri, uses }) => uri === file.uri || uses.some((one) => uris.includes(one))),
    exists: (uri) => files[nameOf(uri)] !== undefined,
    changed: (texts) => workspace.changed(texts),
  };
}

/** The cursor inside of `part`, within the first `marker`. */
export function cursorAt(files: Files, name: string, marker: string, part = marker): Refactored {
  const start = (files[name] ?? "").indexOf(marker);
  if (start < 0) throw new Error(`${name} does not say ${marker}`);
  return cursorIn(files, name, start + marker.indexOf(part) + 1);
}

export function outcomeOf(files: Files, { title, kind, edits, creates, named }: Refactoring): Outcome {
  const after: Record<string, string> = { ...files };
  for (const uri of new Set(edits.map((edit) => edit.uri))) {
    const name = nameOf(uri);
    after[name] = applyEdits(
      files[name] ?? "",
      edits.filter((edit) => edit.uri === uri),
    );
  }
  if (creates !== undefined) after[nameOf(creates.uri)] = creates.text;
  return { title, kind, named: named?.name, files: after };
}

/** What is wrong with an outcome: a car that is another one, a comment that is lost, a text that is not laid out any more. */
export function faultsOf(before: Files, { files }: Outcome): readonly string[] {
  const [was, is] = [kept(before), workspaceOf(files)];
  const changed = Object.keys(files).filter((name) => files[name] !== before[name]);
  const laidOut = changed.filter((name) => isFormatted(before[name] ?? "") && !isFormatted(files[name] ?? ""));
  const resting = Object.keys(before)
    .filter((name) => name.endsWith(".crank"))
    .map((name) => was.file(uriOf(name)))
    .filter(({ uses }) => changed.some((name) => uses.includes(uriOf(name))));
  const others = resting.filter(({ uri, cars }) => !areSameCars(cars, is.file(uri).cars));
  return [
    ...laidOut.map((name) => `${name} is not laid out`),
    ...others.map(({ uri }) => `the cars of ${uri} are others`),
  ];
}

const workspaces = new WeakMap<Files, Workspace>();

function kept(files: Files): Workspace {
  const known = workspaces.get(files) ?? workspaceOf(files);
  workspaces.set(files, known);
  return known;
}

/** Every comment and note of a set of files, whatever its number of signs. */
export const commentsOf = (files: Files): readonly string[] =>
  Object.values(files)
    .flatMap((text) => text.match(/#+[^\n]*/g) ?? [])
    .map((comment) => comment.replace(/^#+\s*/, "").trim())
    .sort();
