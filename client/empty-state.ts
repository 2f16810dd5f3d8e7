/** Tells the editor whether the workspace holds a file of the language; where it holds none, hints of the explorer offer a start. */
import * as vscode from "vscode";
import { LANGUAGE } from "./language.js";
import { LANGUAGE_FILES, workspaceFiles } from "./workspace-files.js";

/** Read by `when` in the manifest. */
const KEY = "bellcrank.hasFiles";

export function followEmptyState(): vscode.Disposable {
  const watcher = vscode.workspace.createFileSystemWatcher(LANGUAGE_FILES, false, true, false);
  const look = async (): Promise<void> => {
    const [first] = await workspaceFiles(LANGUAGE_FILES, 1);
    await vscode.commands.executeCommand("setContext", KEY, first !== undefined);
  };
  void look();
  return vscode.Disposable.from(
    watcher,
    watcher.onDidCreate(look),
    watcher.onDidDelete(look),
    // A file that is opened is there before the watcher says so.
    vscode.workspace.onDidOpenTextDocument(({ languageId }) => languageId === LANGUAGE && void look()),
    vscode.workspace.onDidChangeWorkspaceFolders(look),
  );
}
