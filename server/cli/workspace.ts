/** Files and folders of the command line as a workspace; shared by all commands that read set-ups. */
import { existsSync, statSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { URI } from "vscode-uri";
import { Disk } from "../host/disk.js";
import type { CheckedCar } from "../findings/context.js";
import { createWorkspace } from "../snapshot/create.js";
import type { FileView, Workspace } from "../snapshot/workspace.js";
import { UsageError } from "./usage-error.js";

export interface Opened {
  readonly workspace: Workspace;
  /** In order. */
  readonly uris: readonly string[];
  /** All of them, read and resolved when they are first asked for. */
  readonly files: readonly FileView[];
}

/** Opens every `.crank` file named or below a named folder. A path may `use` whatever lies below the current folder or its own. */
export function openPaths(paths: readonly string[]): Opened {
  const named = paths.map((path) => existing(path));
  const disk = new Disk();
  disk.setRoots([process.cwd(), ...named.map(folderOf)].map((path) => URI.file(path).toString()));
  const workspace = createWorkspace(disk);
  const uris = new Set(
    named.flatMap((path) => (statSync(path).isDirectory() ? disk.listBelow(path) : [URI.file(path).toString()])),
  );
  if (uris.size === 0) throw new UsageError(`no .crank file below ${paths.join(", ")}`);
  for (const uri of uris) readable(disk, uri);
  const inOrder = [...uris].sort();
  let files: readonly FileView[] | undefined;
  return {
    workspace,
    uris: inOrder,
    get files() {
      return (files ??= inOrder.map((uri) => workspace.file(uri)));
    },
  };
}

/** The one file that a command answers about. */
export function openFile(path: string): { readonly workspace: Workspace; readonly file: FileView } {
  if (statSync(existing(path)).isDirectory())
    throw new UsageError(`${path} is a folder: name the file that declares the car or set-up`);
  const { workspace, files } = openPaths([path]);
  const [file] = files;
  if (file === undefined) throw new UsageError(`${path}: not a file`);
  return { workspace, file };
}

/** The car or set-up of one file that the figures are asked of: the named one, else the file's only or last one. */
export function carOf(file: FileView, setup: string | undefined): CheckedCar {
  const nameOf = (car: CheckedCar): string => car.model.setup ?? car.model.name;
  const names = file.cars.map(nameOf);
  if (setup === undefined) {
    const [only, more] = file.cars;
    if (only === undefined) throw new UsageError(`${shown(file.uri)} declares no car and no set-up`);
    if (more !== undefined)
      throw new UsageError(`${shown(file.uri)} declares ${names.join(", ")}: choose one with --setup`);
    return only;
  }
  const found = file.cars.find((car) => nameOf(car) === setup);
  if (found === undefined)
    throw new UsageError(`${shown(file.uri)} has no set-up "${setup}"; it declares ${names.join(", ") || "none"}`);
  return found;
}

/** An address as the user would write it: relative to where the command was called. */
export const shown = (uri: string): string => shownPath(URI.parse(uri).fsPath);

export function shownPath(path: string): string {
  const way = relative(process.cwd(), path);
  return way === "" ? path : way.startsWith("..") ? path : way.replaceAll("\\", "/");
}

function existing(path: string): string {
  const absolute = resolve(path);
  if (!existsSync(absolute)) throw new UsageError(`${path}: there is no such file or folder`);
  return absolute;
}

function folderOf(path: string): string {
  return statSync(path).isDirectory() ? path : dirname(path);
}

function readable(disk: Disk, uri: string): void {
  const read = disk.read(uri);
  if (!("text" in read))
    throw new UsageError(`${shown(uri)}: ${read.missing === "not-text" ? "is not UTF-8 text" : "cannot be read"}`);
}
