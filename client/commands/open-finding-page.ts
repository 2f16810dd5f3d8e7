/**
 * `Bellcrank: Explain the Finding at the Cursor`: the finding's page, rendered beside the text.
 * With an argument (the link on a finding's code) it is that finding, wherever the cursor is.
 */
import * as vscode from "vscode";
import { OPEN_FINDING_PAGE, ruleOf } from "../finding-links.js";
import { LANGUAGE } from "../language.js";

export function registerOpenFindingPage(page: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand(OPEN_FINDING_PAGE, async (given?: unknown) => {
    const rule = typeof given === "string" ? given : ruleAtCursor();
    if (rule === undefined) {
      void vscode.window.showInformationMessage("There is no Bellcrank finding at the cursor.");
      return;
    }
    await vscode.commands.executeCommand("markdown.showPreviewToSide", page.with({ fragment: rule }));
  });
}

function ruleAtCursor(): string | undefined {
  const editor = vscode.window.activeTextEditor;
  if (editor === undefined) return undefined;
  const found = vscode.languages
    .getDiagnostics(editor.document.uri)
    .find((diagnostic) => diagnostic.source === LANGUAGE && diagnostic.range.contains(editor.selection.active));
  return found === undefined ? undefined : ruleOf(found);
}
