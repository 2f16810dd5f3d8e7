/**
 * The text that a command means when it is run from somewhere else than a text: from the walkthrough, the panel or a page. It is the
 * text at the cursor, else one beside, else one whose tab is behind; where there is none, the example is offered.
 */
import * as vscode from "vscode";
import { LANGUAGE } from "./language.js";

const OPEN_EXAMPLE = "bellcrank.openExample";

const isOurs = (editor: vscode.TextEditor | undefined): editor is vscode.TextEditor =>
  editor?.document.languageId === LANGUAGE;

/** At the cursor, else beside what has the focus. */
export function textShown(): vscode.TextEditor | undefined {
  const { activeTextEditor, visibleTextEditors } = vscode.window;
  return [activeTextEditor, ...visibleTextEditors].find(isOurs);
}

/** Brought to the front where it is hidden. `wanted` says what a text is needed for: "to see the rates of its car". */
export async function textInView(wanted: string): Promise<vscode.TextEditor | undefined> {
  return textShown() ?? (await behindAnotherTab()) ?? offerExample(wanted);
}

async function behindAnotherTab(): Promise<vscode.TextEditor | undefined> {
  const { activeTabGroup, all } = vscode.window.tabGroups;
  for (const { tabs, viewColumn } of [activeTabGroup, ...all]) {
    for (const { input } of tabs)
      if (input instanceof vscode.TabInputText && input.uri.path.endsWith(".crank"))
        return vscode.window.showTextDocument(input.uri, { viewColumn });
  }
  return undefined;
}

async function offerExample(wanted: string): Promise<undefined> {
  const open = "Open Example";
  const chosen = await vscode.window.showInformationMessage(`Open a Bellcrank file ${wanted}.`, open);
  if (chosen === open) await vscode.commands.executeCommand(OPEN_EXAMPLE);
}
