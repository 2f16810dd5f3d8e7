/** `Bellcrank: Restart the Language Server`: stops it, starts it anew, and hands it every open file again. */
import * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";

export function registerRestartServer(client: LanguageClient): vscode.Disposable {
  return vscode.commands.registerCommand("bellcrank.restartServer", async () => {
    // A server that never came up has nothing to stop.
    if (client.needsStart()) await client.start();
    else await client.restart();
  });
}
