/** Goes to a place in the text, in the column that shows its file already. */
import * as vscode from "vscode";
import type { PanelPlace } from "../../server/lsp/protocol-panel.js";

export async function showPlace({ uri, range }: PanelPlace): Promise<void> {
  const target = vscode.Uri.parse(uri);
  const shown = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri);
  const { start, end } = range;
  // A block is gone to by its first line: a selection of all of it would hide what it says.
  const last = start.line === end.line ? end : start;
  await vscode.window.showTextDocument(target, {
    viewColumn: shown?.viewColumn ?? vscode.ViewColumn.One,
    selection: new vscode.Range(start.line, start.character, last.line, last.character),
  });
}
