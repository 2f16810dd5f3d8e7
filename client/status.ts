/**
 * The item in the status bar: whether the server runs, and how many findings the file in view has.
 * A click opens the list of problems, or the server's output where there is no server.
 */
import * as vscode from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import { LANGUAGE } from "./language.js";

export function createStatus(client: BaseLanguageClient): vscode.Disposable {
  const item = vscode.window.createStatusBarItem("bellcrank.findings", vscode.StatusBarAlignment.Right, 100);
  item.name = "Bellcrank findings";
  const update = (): void => show(item, client.state);
  update();
  return vscode.Disposable.from(
    item,
    client.onDidChangeState(update),
    vscode.window.onDidChangeActiveTextEditor(update),
    vscode.languages.onDidChangeDiagnostics(update),
  );
}

function show(item: vscode.StatusBarItem, state: State): void {
  const document = vscode.window.activeTextEditor?.document;
  if (document?.languageId !== LANGUAGE) {
    item.hide();
    return;
  }
  Object.assign(item, state === State.Running ? findings(document.uri) : absent(state));
  item.show();
}

type Shown = Pick<vscode.StatusBarItem, "text" | "tooltip" | "command" | "accessibilityInformation">;

function findings(uri: vscode.Uri): Shown {
  const all = vscode.languages.getDiagnostics(uri).filter((diagnostic) => diagnostic.source === LANGUAGE);
  const serious = all.filter((diagnostic) => diagnostic.severity <= vscode.DiagnosticSeverity.Warning);
  const words = all.length === 0 ? "no findings" : all.length === 1 ? "1 finding" : `${all.length} findings`;
  return {
    text: `$(${serious.length > 0 ? "warning" : "check"}) Bellcrank: ${words}`,
    tooltip: `${serious.length} of them errors or warnings. Click for the list.`,
    command: "workbench.actions.view.problems",
    accessibilityInformation: { label: `Bellcrank: ${words}, ${serious.length} of them errors or warnings` },
  };
}

function absent(state: State): Shown {
  const starting = state === State.Starting;
  const words = starting ? "starting" : "stopped";
  return {
    text: `$(${starting ? "sync~spin" : "error"}) Bellcrank: ${words}`,
    tooltip: `The language server is ${words}. Click for its output.`,
    command: "bellcrank.showOutput",
    accessibilityInformation: { label: `Bellcrank's language server is ${words}` },
  };
}
