/** One side of a comparison: the files of the work tree or of a commit as a workspace of their own. */
import { realpathSync, statSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { URI } from "vscode-uri";
import { Disk } from "../../host/disk.js";
import { CommitFiles } from "../../host/commit-files.js";
import { MOST_BYTES, type Repository, short } from "../../host/git.js";
import { createWorkspace } from "../../snapshot/create.js";
import type { FileView, Host } from "../../snapshot/workspace.js";
import { nameOf } from "../../views/comparison/pairs.js";
import { UsageError } from "../usage-error.js";
import { shown } from "../workspace.js";

export interface World {
  /** "main (1a2b3c4d)", "work tree" */
  readonly label: string;
  /** Undefined where there is no such file; whatever else is wrong with it is a `Trouble`. */
  file(uri: string): FileView | undefined;
  /** The same for what is there for certain, or empty. */
  view(uri: string): FileView;
  /** Files of the language. */
  list(): readonly string[];
}

/** Why a file cannot be compared. */
export class Trouble extends UsageError {}

export function workTree(folders: readonly string[], label = "work tree"): World {
  const disk = new Disk();
  disk.setRoots(folders.map((path) => URI.file(resolve(path)).toString()));
  return worldOf(disk, label, () => disk.list(), checkSize);
}

export function commitWorld(repository: Repository, revision: string, commit: string): World {
  const files = new CommitFiles(repository, commit);
  const label = commit.startsWith(revision) ? short(commit) : `${revision} (${short(commit)})`;
  const list = (): readonly string[] => {
    const paths = repository.list(commit);
    files.prepare(paths);
    return paths.map((path) => repository.uriOf(path));
  };
  const tooLarge = (uri: string): void => {
    if ("text" in files.read(uri)) return;
    const read = repository.read(commit, repository.pathOf(URI.parse(uri).fsPath));
    if ("missing" in read && read.missing === "too-large") throw tooLargeTrouble(uri);
  };
  return worldOf(files, label, list, tooLarge);
}

/** A text that stands for a file of the work tree: what a merge driver was handed in a file of its own. */
export function standIn(world: string, text: string, path: string): World {
  const disk = new Disk();
  disk.setRoots([process.cwd(), dirname(path)].map((folder) => URI.file(folder).toString()));
  const own = URI.file(path).toString();
  return worldOf(
    { read: (uri) => (uri === own ? { text } : disk.read(uri)) },
    world,
    () => [],
    () => undefined,
  );
}

/** The file's address with links followed, so that it is the same on both sides. */
export function addressOf(path: string): string {
  const absolute = resolve(path);
  try {
    return URI.file(realpathSync(absolute)).toString();
  } catch {
    // Not there now, but it may be in a commit.
    return URI.file(absolute).toString();
  }
}

function worldOf(host: Host, label: string, list: () => readonly string[], checkFile: (uri: string) => void): World {
  const workspace = createWorkspace(host);
  return {
    label,
    list,
    view: (uri) => workspace.file(uri),
    file(uri) {
      const read = host.read(uri);
      if ("text" in read) {
        checkFile(uri);
        return parsed(workspace.file(uri), label);
      }
      if (read.missing === "missing") return undefined;
      checkFile(uri);
      const why = read.missing === "not-text" ? "is not UTF-8 text" : "lies outside of what may be read";
      throw new Trouble(`${shown(uri)} (${label}) ${why}`);
    },
  };
}

function checkSize(uri: string): void {
  if (statSync(URI.parse(uri).fsPath).size > MOST_BYTES) throw tooLargeTrouble(uri);
}

const tooLargeTrouble = (uri: string): Trouble =>
  new Trouble(`${shown(uri)} is larger than ${MOST_BYTES / 1024 / 1024} MB: that is no set-up`);

/** Neither it nor anything that it rests on may be half a text: what is left of it would be compared as if it were all. */
function parsed(file: FileView, label: string): FileView {
  for (const uri of file.uses) {
    const tree = file.parsedOf(uri);
    const [problem] = tree?.problems ?? [];
    if (tree !== undefined && problem !== undefined) {
      const line = tree.lines.position(problem.start).line + 1;
      throw new Trouble(`${shown(uri)} (${label}) does not parse: see line ${line}`);
    }
  }
  const [lost] = declared(file).filter((name) => !file.cars.some(({ model }) => nameOf(model) === name));
  if (lost === undefined) return file;
  throw new Trouble(
    `${shown(file.uri)} (${label}): what ${lost} derives from cannot be found; bellcrank check tells why`,
  );
}

/** Names of the cars and set-ups of the text. One without a car underneath is in the text, but no car. */
const declared = ({ parsed: { document } }: FileView): readonly string[] =>
  document.entries.flatMap((entry) => {
    if (entry.kind !== "statement" || !["car", "setup"].includes(entry.head.segments[0]?.text ?? "")) return [];
    const [name] = entry.items;
    return name?.kind === "path" ? [name.segments.map(({ text }) => text).join(".")] : [];
  });
