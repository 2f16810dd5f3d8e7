/**
 * Names the language's files of the workspace to the server, as far as it cannot list them by itself: whoever renames a part or
 * looks for the set-ups of a car must not miss a file that nobody has open.
 */
import * as vscode from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import type { FilesMethod, FilesParams } from "../server/lsp/protocol.js";

const METHOD: FilesMethod = "bellcrank/files";
const PATTERN = "**/*.crank";
const LEFT_OUT = "**/node_modules/**";

export function nameFiles(client: BaseLanguageClient, serverReads: (uri: vscode.Uri) => boolean): vscode.Disposable {
  const watcher = vscode.workspace.createFileSystemWatcher(PATTERN, false, true, false);
  const name = async (): Promise<void> => {
    const folders = vscode.workspace.workspaceFolders ?? [];
    if (client.state !== State.Running || folders.every(({ uri }) => serverReads(uri))) return;
    const found = await vscode.workspace.findFiles(PATTERN, LEFT_OUT);
    const params: FilesParams = { uris: found.filter((uri) => !serverReads(uri)).map(String) };
    await client.sendNotification(METHOD, params);
  };
  const again = (): void => void name();
  return vscode.Disposable.from(
    watcher,
    watcher.onDidCreate(again),
    watcher.onDidDelete(again),
    vscode.workspace.onDidChangeWorkspaceFolders(again),
    client.onDidChangeState(again),
  );
}
