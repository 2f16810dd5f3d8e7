/**
 * `Bellcrank: Show Rates of This Car`: a rendered page beside the text that follows every change.
 * The page is a read-only document; its address carries the file and the name that it is about.
 */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { RatesMethod, RatesPage, RatesParams, ShowRatesArguments } from "../../server/lsp/protocol.js";
import { LANGUAGE } from "../language.js";
import { textInView } from "../text-in-view.js";

const SCHEME = "bellcrank-rates";
const METHOD: RatesMethod = "bellcrank/rates";

export function registerShowRates(client: BaseLanguageClient): vscode.Disposable {
  const changed = new vscode.EventEmitter<vscode.Uri>();
  const shown = new Map<string, vscode.Uri>();
  const provider: vscode.TextDocumentContentProvider = {
    onDidChange: changed.event,
    provideTextDocumentContent: (page, cancel) => {
      shown.set(page.toString(), page);
      return render(client, page, cancel);
    },
  };
  return vscode.Disposable.from(
    changed,
    vscode.workspace.registerTextDocumentContentProvider(SCHEME, provider),
    vscode.workspace.onDidChangeTextDocument(({ document }) => {
      // Any page that is shown may rest on the changed file, through what it uses.
      if (document.languageId === LANGUAGE) for (const page of shown.values()) changed.fire(page);
    }),
    vscode.workspace.onDidCloseTextDocument(({ uri }) => shown.delete(uri.toString())),
    vscode.commands.registerCommand("bellcrank.showRates", (...given: unknown[]) => show(given)),
  );
}

async function show(given: readonly unknown[]): Promise<void> {
  const params = isFromLens(given) ? { uri: given[0], name: given[1] } : await paramsInView();
  if (params === undefined) return;
  const title = params.name ?? "rates";
  const page = vscode.Uri.from({ scheme: SCHEME, path: `${title}.md`, query: JSON.stringify(params) });
  await vscode.commands.executeCommand("markdown.showPreviewToSide", page);
}

/** The button on the editor's title passes the file's address, a lens two strings, the palette nothing. */
function isFromLens(given: readonly unknown[]): given is ShowRatesArguments {
  return typeof given[0] === "string" && typeof given[1] === "string";
}

async function paramsInView(): Promise<RatesParams | undefined> {
  const editor = await textInView("to see the rates of its car");
  return editor && { uri: editor.document.uri.toString() };
}

async function render(client: BaseLanguageClient, page: vscode.Uri, cancel: vscode.CancellationToken): Promise<string> {
  const params = JSON.parse(page.query) as RatesParams;
  const answer = await client.sendRequest<RatesPage | null>(METHOD, params, cancel);
  return answer?.markdown ?? `There is no car or set-up ${params.name ?? ""} in this file.`;
}
