/**
 * The mechanism panel in the editor: one at most, beside the text. It follows the Bellcrank file whose text has the cursor, asks
 * the server after every change, and hands the answers to its page.
 *
 * Invariant: at most one question of a kind is on its way. A text that changes meanwhile is asked about once more when the answer is
 * here; so the page always ends up with the newest, and nothing waits on a timer.
 */
import * as vscode from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import type {
  MechanismAnswer,
  MechanismMethod,
  MechanismParams,
  PanelCurvesAnswer,
  PanelCurvesMethod,
} from "../../server/lsp/protocol-panel.js";
import { LANGUAGE } from "../language.js";
import { Asked } from "./asked.js";
import type { Cursor, Followed, FromPage, ToPage } from "./messages.js";
import { moveEye, undoIn } from "./move-eye.js";
import { newNonce, panelHtml } from "./panel-html.js";
import { savePicture } from "./save-picture.js";
import { textShown } from "../text-in-view.js";
import { showPlace } from "./show-place.js";

export const PANEL_TYPE = "bellcrank.mechanism";

const MECHANISM: MechanismMethod = "bellcrank/mechanism";
const CURVES: PanelCurvesMethod = "bellcrank/panelCurves";

export class MechanismPanel {
  readonly #panel: vscode.WebviewPanel;
  readonly #client: BaseLanguageClient;
  readonly #mechanism: Asked;
  readonly #curves: Asked;
  readonly #ends: vscode.Disposable[] = [];
  #followed: Followed | undefined;
  /** The car that the cursor is in, where none is chosen. */
  #atCursor: string | undefined;
  #answer: MechanismAnswer | undefined;
  #wantsCurves = false;

  constructor(panel: vscode.WebviewPanel, client: BaseLanguageClient, extension: vscode.Uri, closed: () => void) {
    this.#panel = panel;
    this.#client = client;
    this.#mechanism = new Asked(() => this.#askMechanism());
    this.#curves = new Asked(() => this.#askCurves());
    panel.iconPath = vscode.Uri.joinPath(extension, "client", "icons", "bellcrank.svg");
    panel.webview.options = { enableScripts: true, localResourceRoots: [vscode.Uri.joinPath(extension, "dist")] };
    this.#ends.push(
      panel.webview.onDidReceiveMessage((message: FromPage) => void this.#hear(message)),
      panel.onDidDispose(() => {
        for (const end of this.#ends) end.dispose();
        closed();
      }),
      vscode.window.onDidChangeActiveTextEditor((editor) => this.#follow(editor)),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.#follow(textEditor)),
      vscode.workspace.onDidChangeTextDocument(({ document }) => {
        // What is shown may rest on any file of the language, through what it uses.
        if (document.languageId === LANGUAGE) this.#ask();
      }),
      client.onDidChangeState(({ newState }) => newState === State.Running && this.#ask()),
    );
    this.#follow(textShown());
    panel.webview.html = pageOf(panel.webview, extension);
  }

  reveal(): void {
    this.#panel.reveal(undefined, true);
  }

  #post(message: ToPage): void {
    void this.#panel.webview.postMessage(message);
  }

  #ask(): void {
    this.#mechanism.again();
    if (this.#wantsCurves) this.#curves.again();
  }

  #follow(editor: vscode.TextEditor | undefined): void {
    if (editor?.document.languageId !== LANGUAGE) return;
    const uri = editor.document.uri.toString();
    const moved = this.#followed?.uri !== uri;
    if (moved) {
      this.#followed = { uri, name: undefined };
      this.#answer = undefined;
    }
    const { line, character } = editor.selection.active;
    const cursor: Cursor = { uri, line, character };
    const before = this.#atCursor;
    this.#atCursor = carAt(this.#answer, cursor);
    if (moved || (this.#followed?.name === undefined && before !== this.#atCursor)) this.#ask();
    this.#post({ kind: "cursor", cursor });
  }

  async #askMechanism(): Promise<void> {
    const params = this.#params();
    if (params === undefined) {
      this.#post({ kind: "nothing", reason: "Open a Bellcrank file, and its mechanism is shown here." });
      return;
    }
    if (this.#client.state !== State.Running) {
      this.#post({ kind: "nothing", reason: "The language server does not run, so nothing new can be drawn." });
      return;
    }
    const answer = await this.#client.sendRequest<MechanismAnswer>(MECHANISM, params);
    this.#answer = answer;
    this.#post({ kind: "mechanism", answer });
    this.#follow(vscode.window.activeTextEditor);
  }

  async #askCurves(): Promise<void> {
    const params = this.#params();
    if (params === undefined || this.#client.state !== State.Running) return;
    this.#post({ kind: "curves", answer: await this.#client.sendRequest<PanelCurvesAnswer>(CURVES, params) });
  }

  #params(): MechanismParams | undefined {
    if (this.#followed === undefined) return undefined;
    const name = this.#followed.name ?? this.#atCursor;
    return name === undefined ? { uri: this.#followed.uri } : { uri: this.#followed.uri, name };
  }

  async #hear(message: FromPage): Promise<void> {
    switch (message.kind) {
      case "ready":
        // After a reload there may be no text with the cursor: then what the page showed last.
        this.#followed ??= message.state;
        this.#ask();
        return;
      case "choose":
        if (this.#followed !== undefined) this.#followed = { ...this.#followed, name: message.name };
        this.#ask();
        return;
      case "wants-curves":
        this.#wantsCurves = message.wanted;
        if (message.wanted) this.#curves.again();
        return;
      case "go-to":
        await showPlace(message.place);
        return;
      case "move-eye":
        this.#post({ kind: "eye", request: message.request, answer: await moveEye(this.#client, message) });
        // Also where nothing was written: the page then draws what stands in the text again.
        if (message.write) this.#ask();
        return;
      case "undo":
        if (this.#followed !== undefined) await undoIn(vscode.Uri.parse(this.#followed.uri), this.#panel);
        return;
      case "save":
        await savePicture(message, this.#followed?.uri);
    }
  }
}

function carAt(answer: MechanismAnswer | undefined, { line }: Cursor): string | undefined {
  return answer?.cars.find(({ range }) => line >= range.start.line && line <= range.end.line)?.name;
}

function pageOf(webview: vscode.Webview, extension: vscode.Uri): string {
  const part = (name: string): string => webview.asWebviewUri(vscode.Uri.joinPath(extension, "dist", name)).toString();
  return panelHtml({
    script: part("panel.js"),
    style: part("panel.css"),
    source: webview.cspSource,
    nonce: newNonce(),
  });
}
