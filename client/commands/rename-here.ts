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
    await vscode.commands.executeCommand("editor.action.rename", [document.uri, at]);
  });
}
