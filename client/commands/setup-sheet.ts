/**
 * `Bellcrank: Show the Setup Sheet`, beside the text, and `Bellcrank: Save the Setup Sheet`, to print it from a browser. The sheet is
 * the server's page as it is: paper, without scripts, under a policy that lets nothing in.
 */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { SheetMethod, SheetPage, SheetParams } from "../../server/lsp/protocol-start.js";
import { textInView } from "../text-in-view.js";

const METHOD: SheetMethod = "bellcrank/sheet";

export const registerSetupSheet = (client: BaseLanguageClient): vscode.Disposable =>
  vscode.Disposable.from(
    vscode.commands.registerCommand("bellcrank.showSheet", () => show(client)),
    vscode.commands.registerCommand("bellcrank.saveSheet", () => save(client)),
  );

interface Shown {
  readonly page: SheetPage;
  readonly beside: vscode.Uri;
}

async function sheetInView(client: BaseLanguageClient): Promise<Shown | undefined> {
  const editor = await textInView("to see the setup sheet of its car");
  if (editor === undefined) return undefined;
  const { uri } = editor.document;
  const params: SheetParams = { uri: uri.toString() };
  const page = await client.sendRequest<SheetPage | null>(METHOD, params);
  if (page !== null) return { page, beside: uri };
  void vscode.window.showInformationMessage("This file declares no car and no set-up.");
  return undefined;
}

async function show(client: BaseLanguageClient): Promise<void> {
  const shown = await sheetInView(client);
  if (shown === undefined) return;
  const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
  const panel = vscode.window.createWebviewPanel("bellcrank.sheet", `Sheet ${shown.page.name}`, place, {
    enableScripts: false,
  });
  panel.webview.html = shown.page.html;
}

async function save(client: BaseLanguageClient): Promise<void> {
  const shown = await sheetInView(client);
  if (shown === undefined) return;
  const { page, beside } = shown;
  const target = await vscode.window.showSaveDialog({
    defaultUri: vscode.Uri.joinPath(beside, "..", `${page.name}.html`),
    filters: { "Page to print": ["html"] },
    title: "Save the setup sheet",
  });
  if (target === undefined) return;
  try {
    await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(page.html));
  } catch (error) {
    void vscode.window.showErrorMessage(`The setup sheet could not be saved: ${String(error)}`);
  }
}
