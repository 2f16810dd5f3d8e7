/**
 * Reads files that no editor has open. A path never leaves the folders of the workspace; where
 * there is no folder, it never leaves the folder of the document that is open.
 */
import { readdirSync, readFileSync, realpathSync } from "node:fs";
import { isUtf8 } from "node:buffer";
import { dirname, isAbsolute, join, relative } from "node:path";
import { URI } from "vscode-uri";
import type { Host } from "../snapshot/workspace.js";
import type { WorkspaceFiles } from "./workspace-files.js";

export class Disk implements WorkspaceFiles {
  #roots: readonly string[] = [];

  reads(uri: string): boolean {
    return uri.startsWith("file:");
  }

  setRoots(folders: readonly string[]): void {
    this.#roots = folders
      .map((uri) => URI.parse(uri))
      .filter((uri) => uri.scheme === "file")
      .map((uri) => real(uri.fsPath));
  }

  get hasRoots(): boolean {
    return this.#roots.length > 0;
  }

  addFolderOf(document: string): void {
    const uri = URI.parse(document);
    if (uri.scheme !== "file") return;
    const folder = real(dirname(uri.fsPath));
    if (!this.#roots.includes(folder)) this.#roots = [...this.#roots, folder];
  }

  /** Folders that hold none of an engineer's texts are passed over. */
  list(): readonly string[] {
    return this.#roots.flatMap((root) => this.listBelow(root));
  }

  listBelow(folder: string): readonly string[] {
    return crankFilesBelow(folder).map((path) => URI.file(path).toString());
  }

  read(uri: string): ReturnType<Host["read"]> {
    const parsed = URI.parse(uri);
    if (parsed.scheme !== "file") return { missing: "missing" };
    if (!this.#allows(parsed.fsPath)) return { missing: "outside" };
    return readText(parsed.fsPath);
  }

  #allows(path: string): boolean {
    const target = real(path);
    return this.#roots.some((root) => {
      const way = relative(root, target);
      return way === "" || (!way.startsWith("..") && !isAbsolute(way));
    });
  }
}

/** Enough for any club's season; a folder with more is not one of set-ups. */
const mostFiles = 20_000;

function crankFilesBelow(root: string): readonly string[] {
  const found: string[] = [];
  const folders = [root];
  for (let folder = folders.pop(); folder !== undefined && found.length < mostFiles; folder = folders.pop()) {
    for (const entry of entriesOf(folder)) {
      const path = join(folder, entry.name);
      if (entry.isDirectory() && entry.name !== "node_modules" && !entry.name.startsWith(".")) folders.push(path);
      if (entry.isFile() && entry.name.endsWith(".crank")) found.push(path);
    }
  }
  return found;
}

function entriesOf(folder: string): ReturnType<typeof readFolder> {
  try {
    return readFolder(folder);
  } catch {
    // A folder that may not be read holds nothing for us.
    return [];
  }
}

const readFolder = (folder: string) => readdirSync(folder, { withFileTypes: true });

/** A link is followed before the folder is judged; what is not there yet is judged by its own path. */
function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

function readText(path: string): ReturnType<Host["read"]> {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch {
    // Not there, a folder, or not ours to read: for the text that names it, it is missing.
    return { missing: "missing" };
  }
  return isUtf8(bytes) ? { text: bytes.toString("utf8") } : { missing: "not-text" };
}
