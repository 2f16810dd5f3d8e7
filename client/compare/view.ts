/**
 * A comparison beside the text: what is said and what it does in two columns, each line leading to where it is written. It
 * follows what is typed, and comes back after a reload of the window.
 *
 * Invariant: at most one question to the server is on its way a view; a newer one waits for it and replaces older ones.
 */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { CompareAnswer, CompareMethod, CompareParams } from "../../server/lsp/protocol-compare.js";
import { LANGUAGE } from "../language.js";
import { committedUri } from "./committed-text.js";
import { comparePage } from "./page.js";

export const VIEW = "bellcrank.comparison";
const METHOD: CompareMethod = "bellcrank/compare";

type Page = Extract<CompareAnswer, { kind: "page" }>;

/** Asks first, so that nothing opens where there is nothing to show. */
export async function showComparison(client: BaseLanguageClient, params: CompareParams): Promise<void> {
  const answer = await client.sendRequest<CompareAnswer>(METHOD, params);
  if (answer.kind === "none") {
    void vscode.window.showInformationMessage(answer.why);
    return;
  }
  const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
  const panel = vscode.window.createWebviewPanel(VIEW, titleOf(answer), place, { enableScripts: true });
  // From now on by its name: the cursor may wander to another set-up of the file.
  new ComparisonView(client, panel, { ...params, name: answer.name }).begin(answer);
}

/** Brings a view back; one whose set-up is gone says so. */
export function restoreComparisons(client: BaseLanguageClient): vscode.Disposable {
  return vscode.window.registerWebviewPanelSerializer(VIEW, {
    async deserializeWebviewPanel(panel, params: CompareParams) {
      panel.webview.options = { enableScripts: true };
      const answer = await client.sendRequest<CompareAnswer>(METHOD, params);
      if (answer.kind === "page") new ComparisonView(client, panel, params).begin(answer);
      else panel.webview.html = comparePage({ body: `<p>${plain(answer.why)}</p>`, style: "" }, params);
    },
  });
}

const titleOf = ({ name }: Page): string => `Compare ${name}`;
const plain = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");

class ComparisonView {
  readonly #client: BaseLanguageClient;
  readonly #panel: vscode.WebviewPanel;
  readonly #params: CompareParams;
  #uses: ReadonlySet<string> = new Set();
  #isAsking = false;
  #isStale = false;
  /** Whether all that is waiting to be asked comes from typing. */
  #isAgain = true;

  constructor(client: BaseLanguageClient, panel: vscode.WebviewPanel, params: CompareParams) {
    this.#client = client;
    this.#panel = panel;
    this.#params = params;
    const listeners = vscode.Disposable.from(
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId === LANGUAGE && this.#restsOn(document.uri)) void this.#refresh(true);
      }),
      // A commit made meanwhile is not seen otherwise.
      panel.onDidChangeViewState(() => {
        if (panel.visible) void this.#refresh(false);
      }),
      panel.webview.onDidReceiveMessage((message: unknown) => this.#open(message)),
    );
    panel.onDidDispose(() => listeners.dispose());
  }

  begin(page: Page): void {
    this.#uses = new Set(page.uses);
    this.#panel.webview.html = comparePage(page, this.#params);
  }

  #restsOn(uri: vscode.Uri): boolean {
    return this.#uses.has(uri.toString()) || [...this.#uses].some((one) => vscode.Uri.parse(one).fsPath === uri.fsPath);
  }

  /** @param again only a text was changed */
  async #refresh(again: boolean): Promise<void> {
    this.#isStale = true;
    this.#isAgain &&= again;
    if (this.#isAsking) return;
    this.#isAsking = true;
    try {
      while (this.#isStale) {
        this.#isStale = false;
        const params: CompareParams = { ...this.#params, again: this.#isAgain };
        this.#isAgain = true;
        const answer = await this.#client.sendRequest<CompareAnswer>(METHOD, params);
        if (answer.kind === "page") this.#uses = new Set(answer.uses);
        const body = answer.kind === "page" ? answer.body : `<p>${plain(answer.why)}</p>`;
        // oxlint-disable-next-line unicorn/require-post-message-target-origin -- to a frame of our own, which has no other origin
        await this.#panel.webview.postMessage({ body });
      }
    } finally {
      this.#isAsking = false;
    }
  }

  #open(message: unknown): void {
    if (!isPlace(message)) return;
    const { with: other } = this.#params;
    const uri = vscode.Uri.parse(message.uri);
    const isCommitted = message.side === "old" && other.kind === "revision";
    const at = new vscode.Position(Math.max(0, message.line - 1), 0);
    void vscode.window.showTextDocument(isCommitted ? committedUri(uri, other.revision) : uri, {
      viewColumn: vscode.ViewColumn.One,
      selection: new vscode.Range(at, at),
    });
  }
}

interface Place {
  readonly uri: string;
  readonly line: number;
  readonly side: string;
}

function isPlace(message: unknown): message is Place {
  const { uri, line, side } = (message ?? {}) as Partial<Record<string, unknown>>;
  return typeof uri === "string" && typeof line === "number" && typeof side === "string";
}
