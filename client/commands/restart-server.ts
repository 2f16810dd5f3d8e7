/** `Bellcrank: Restart the Language Server`: stops it, starts it anew, and hands it every open file again. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";

export function registerRestartServer(client: BaseLanguageClient): vscode.Disposable {
  return vscode.commands.registerCommand("bellcrank.restartServer", async () => {
    // A server that never came up has nothing to stop.
    if (!client.needsStart()) await client.stop();
    await client.start();
  });
}
