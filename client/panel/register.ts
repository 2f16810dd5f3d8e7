/** `Bellcrank: Show the Mechanism`, and the panel's return after the window was loaded anew. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { textInView } from "../text-in-view.js";
import { MechanismPanel, PANEL_TYPE } from "./panel.js";

export function registerMechanismPanel(
  context: vscode.ExtensionContext,
  client: BaseLanguageClient,
): vscode.Disposable {
  let shown: MechanismPanel | undefined;
  const take = (panel: vscode.WebviewPanel): void => {
    shown = new MechanismPanel(panel, client, context.extensionUri, () => {
      shown = undefined;
    });
  };
  const show = async (): Promise<void> => {
    const text = await textInView("to see its mechanism");
    if (text === undefined) return;
    if (shown !== undefined) shown.reveal();
    else {
      const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
      take(vscode.window.createWebviewPanel(PANEL_TYPE, "Mechanism", column));
    }
  };
  return vscode.Disposable.from(
    vscode.commands.registerCommand("bellcrank.showMechanism", show),
    vscode.window.registerWebviewPanelSerializer(PANEL_TYPE, {
      deserializeWebviewPanel: async (panel) => take(panel),
    }),
  );
}
