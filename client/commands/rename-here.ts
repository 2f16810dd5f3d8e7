/** `bellcrank.renameHere`: a refactoring has made up a name; the editor's rename starts on it, so that the author gives a better one. */
import * as vscode from "vscode";
import type { RenameHereArguments, RenameHereCommand } from "../../server/lsp/protocol-refactor.js";

const RENAME_HERE: RenameHereCommand = "bellcrank.renameHere";

export function registerRenameHere(): vscode.Disposable {
  return vscode.commands.registerCommand(RENAME_HERE, async (...[uri, position]: RenameHereArguments) => {
    const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri));
    const at = new vscode.Position(position.line, position.character);
    const editor = await vscode.window.showTextDocument(document);
    editor.selection = new vscode.Selection(at, at);
    editor.revealRange(new vscode.Range(at, at));
    await untilRenamable(document.uri, at);
    await vscode.commands.executeCommand("editor.action.rename", [document.uri, at]);
  });
}

const TRIES = 30;
const BETWEEN_MS = 100;

/** A file that was made by the same edit may still be on its way to the server: until it is there, a part has no name to change. */
async function untilRenamable(uri: vscode.Uri, at: vscode.Position): Promise<void> {
  for (let tried = 0; tried < TRIES && !(await isRenamable(uri, at)); tried++)
    await new Promise((resolve) => {
      setTimeout(resolve, BETWEEN_MS);
    });
}

async function isRenamable(uri: vscode.Uri, at: vscode.Position): Promise<boolean> {
  try {
    return (await vscode.commands.executeCommand("vscode.prepareRename", uri, at)) !== undefined;
  } catch {
    // The editor's way of saying that nothing here can be renamed.
    return false;
  }
}
