/**
 * `Bellcrank: Show the Setup Sheet`, beside the text, and `Bellcrank: Save the Setup Sheet`, to print it from a browser. The sheet is
 * the server's page as it is: paper, without scripts, under a policy that lets nothing in.
 */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { SheetMethod, SheetPage, SheetParams } from "../../server/lsp/protocol-start.js";
import { LANGUAGE } from "../language.js";

const METHOD: SheetMethod = "bellcrank/sheet";

export const registerSetupSheet = (client: BaseLanguageClient): vscode.Disposable =>
  vscode.Disposable.from(
    vscode.commands.registerCommand("bellcrank.showSheet", () => show(client)),
    vscode.commands.registerCommand("bellcrank.saveSheet", () => save(client)),
  );

async function sheetAtEditor(client: BaseLanguageClient): Promise<SheetPage | undefined> {
  const document = vscode.window.activeTextEditor?.document;
  if (document?.languageId !== LANGUAGE) {
    void vscode.window.showInformationMessage("Open a Bellcrank file to see the setup sheet of its car.");
    return undefined;
  }
  const params: SheetParams = { uri: document.uri.toString() };
  const page = await client.sendRequest<SheetPage | null>(METHOD, params);
  if (page === null) void vscode.window.showInformationMessage("This file declares no car and no set-up.");
  return page ?? undefined;
}

async function show(client: BaseLanguageClient): Promise<void> {
  const page = await sheetAtEditor(client);
  if (page === undefined) return;
  const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
  const panel = vscode.window.createWebviewPanel("bellcrank.sheet", `Sheet ${page.name}`, place, {
    enableScripts: false,
  });
  panel.webview.html = page.html;
}

async function save(client: BaseLanguageClient): Promise<void> {
  const page = await sheetAtEditor(client);
  const document = vscode.window.activeTextEditor?.document;
  if (page === undefined || document === undefined) return;
  const target = await vscode.window.showSaveDialog({
    defaultUri: vscode.Uri.joinPath(document.uri, "..", `${page.name}.html`),
    filters: { "Page to print": ["html"] },
  });
  if (target !== undefined) await vscode.workspace.fs.writeFile(target, new TextEncoder().encode(page.html));
}
