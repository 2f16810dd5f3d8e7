/** `Bellcrank: Show the Output of the Language Server`. */
import * as vscode from "vscode";

export function registerShowOutput(output: vscode.LogOutputChannel): vscode.Disposable {
  return vscode.commands.registerCommand("bellcrank.showOutput", () => output.show(true));
}
