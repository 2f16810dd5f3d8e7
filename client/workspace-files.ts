/**
 * The language's files and the tables beside them, in every folder of the workspace.
 *
 * The editor's own search is used where there is one: on disk, here or on another machine. For other file systems (a folder in the
 * browser's memory, most of those in a browser) it finds nothing and says nothing; there the folders are walked through.
 */
import * as vscode from "vscode";

/** Of texts in the language, and of the tables that they read. */
export const LANGUAGE_FILES = "**/*.crank";
export const LANGUAGE_AND_TABLES = "**/*.{crank,csv}";

const SEARCHED = new Set(["file", "vscode-remote"]);
const LEFT_OUT = "**/node_modules/**";
/** Enough for any club's season; a folder with more is not one of set-ups. */
const MOST = 20_000;

/** @param pattern one of the two above; @param most no more are looked for */
export async function workspaceFiles(pattern: string, most = MOST): Promise<readonly vscode.Uri[]> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  const found = await Promise.all(
    folders.map(async (folder) => {
      if (!SEARCHED.has(folder.uri.scheme)) return walk(folder.uri, pattern, most);
      return vscode.workspace.findFiles(new vscode.RelativePattern(folder, pattern), LEFT_OUT, most);
    }),
  );
  return found.flat();
}

async function walk(root: vscode.Uri, pattern: string, most: number): Promise<readonly vscode.Uri[]> {
  const isWanted = (name: string): boolean =>
    name.endsWith(".crank") || (pattern === LANGUAGE_AND_TABLES && name.endsWith(".csv"));
  const found: vscode.Uri[] = [];
  let folders: readonly vscode.Uri[] = [root];
  // All folders of one depth at once: each may be a question to a machine far away.
  while (folders.length > 0 && found.length < most) {
    const listed = (await Promise.all(folders.map(entriesOf))).flat();
    found.push(...listed.filter(({ name, type }) => isFile(type) && isWanted(name)).map(({ uri }) => uri));
    folders = listed.filter(({ name, type }) => isFolder(type) && isLookedInto(name)).map(({ uri }) => uri);
  }
  return found;
}

interface Entry {
  readonly name: string;
  readonly type: vscode.FileType;
  readonly uri: vscode.Uri;
}

async function entriesOf(folder: vscode.Uri): Promise<readonly Entry[]> {
  try {
    const entries = await vscode.workspace.fs.readDirectory(folder);
    return entries.map(([name, type]) => ({ name, type, uri: vscode.Uri.joinPath(folder, name) }));
  } catch {
    // A folder that is not there, or may not be read, holds nothing for us.
    return [];
  }
}

const isFile = (type: vscode.FileType): boolean => (type & vscode.FileType.File) !== 0;
/** A link to a folder may lead round in a circle. */
const isFolder = (type: vscode.FileType): boolean => type === vscode.FileType.Directory;
const isLookedInto = (name: string): boolean => name !== "node_modules" && !name.startsWith(".");
