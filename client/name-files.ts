/**
 * Names the language's files of the workspace to the server, as far as it cannot list them by itself: whoever renames a part or
 * looks for the set-ups of a car must not miss a file that nobody has open.
 */
import * as vscode from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import type { FilesMethod, FilesParams } from "../server/lsp/protocol.js";
import { LANGUAGE } from "./language.js";
import { LANGUAGE_AND_TABLES, workspaceFiles } from "./workspace-files.js";

const METHOD: FilesMethod = "bellcrank/files";

export function nameFiles(client: BaseLanguageClient, serverReads: (uri: vscode.Uri) => boolean): vscode.Disposable {
  const watcher = vscode.workspace.createFileSystemWatcher(LANGUAGE_AND_TABLES, false, true, false);
  let newest = 0;
  const name = async (): Promise<void> => {
    const folders = vscode.workspace.workspaceFolders ?? [];
    if (client.state !== State.Running || folders.every(({ uri }) => serverReads(uri))) return;
    newest += 1;
    const mine = newest;
    const found = await workspaceFiles(LANGUAGE_AND_TABLES);
    // Looked for again meanwhile: that list is newer.
    if (mine !== newest) return;
    const params: FilesParams = { uris: found.filter((uri) => !serverReads(uri)).map(String) };
    await client.sendNotification(METHOD, params);
  };
  const again = (): void => void name();
  return vscode.Disposable.from(
    watcher,
    watcher.onDidCreate(again),
    watcher.onDidDelete(again),
    // Of a folder, not every file system tells what was in it.
    vscode.workspace.onDidCreateFiles(again),
    vscode.workspace.onDidDeleteFiles(again),
    vscode.workspace.onDidRenameFiles(again),
    vscode.workspace.onDidChangeWorkspaceFolders(again),
    client.onDidChangeState(again),
    // What came where the editor did not look is found with the next file that is opened.
    vscode.workspace.onDidOpenTextDocument(({ languageId }) => {
      if (languageId === LANGUAGE) again();
    }),
  );
}
