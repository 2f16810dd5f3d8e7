/** Moves an eye as the page asks: the server says what would be written, the editor writes it as one step that can be undone. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { MoveEyeAnswer, MoveEyeMethod } from "../../server/lsp/protocol-panel.js";
import type { FromPage } from "./messages.js";

const METHOD: MoveEyeMethod = "bellcrank/moveEye";

export async function moveEye(
  client: BaseLanguageClient,
  { params, write }: Extract<FromPage, { kind: "move-eye" }>,
): Promise<MoveEyeAnswer> {
  const answer = await client.sendRequest<MoveEyeAnswer>(METHOD, params);
  if (!write || answer.edit === undefined) return answer;
  const written = await apply(answer.edit);
  return written ? answer : { ...answer, reason: "The text has changed meanwhile or cannot be written to." };
}

async function apply({ uri, range, newText }: NonNullable<MoveEyeAnswer["edit"]>): Promise<boolean> {
  const { start, end } = range;
  const edit = new vscode.WorkspaceEdit();
  edit.replace(vscode.Uri.parse(uri), new vscode.Range(start.line, start.character, end.line, end.character), newText);
  return vscode.workspace.applyEdit(edit);
}

/** The page has the focus, and the editor undoes only where the text has it. */
export async function undoIn(uri: vscode.Uri, panel: vscode.WebviewPanel): Promise<void> {
  const shown = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
  await vscode.window.showTextDocument(uri, { viewColumn: shown?.viewColumn ?? vscode.ViewColumn.One });
  await vscode.commands.executeCommand("undo");
  panel.reveal();
}
