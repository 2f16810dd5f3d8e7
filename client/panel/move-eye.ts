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

/** How often the text is asked to undo: the focus may still be on its way to it, and the first call then goes to the page. */
const MOST_TRIES = 10;
const BETWEEN_TRIES_MS = 50;

/** The page has the focus, and the editor undoes only where the text has it. */
export async function undoIn(uri: vscode.Uri, panel: vscode.WebviewPanel): Promise<void> {
  const shown = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
  const viewColumn = shown?.viewColumn ?? vscode.ViewColumn.One;
  const { document } = await vscode.window.showTextDocument(uri, { viewColumn });
  const before = document.version;
  for (let tries = 0; document.version === before && tries < MOST_TRIES; tries++) {
    if (tries > 0) await new Promise((resolve) => setTimeout(resolve, BETWEEN_TRIES_MS));
    await vscode.commands.executeCommand("undo");
  }
  panel.reveal();
}
