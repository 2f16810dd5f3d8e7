/** Tells the editor whether the workspace holds a file of the language; where it holds none, hints of the explorer offer a start. */
import * as vscode from "vscode";

const FILES = "**/*.crank";
/** Read by `when` in the manifest. */
const KEY = "bellcrank.hasFiles";

export function followEmptyState(): vscode.Disposable {
  const watcher = vscode.workspace.createFileSystemWatcher(FILES, false, true, false);
  const look = async (): Promise<void> => {
    const [first] = await vscode.workspace.findFiles(FILES, undefined, 1);
    await vscode.commands.executeCommand("setContext", KEY, first !== undefined);
  };
  void look();
  return vscode.Disposable.from(
    watcher,
    watcher.onDidCreate(look),
    watcher.onDidDelete(look),
    vscode.workspace.onDidChangeWorkspaceFolders(look),
  );
}
