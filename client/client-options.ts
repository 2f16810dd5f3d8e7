/** What the editor tells the language client and the server, wherever the server runs. */
import * as vscode from "vscode";
import type { LanguageClientOptions } from "vscode-languageclient";
import type { InitializationOptions } from "../server/lsp/protocol.js";
import { explainInEditor } from "./finding-links.js";
import { LANGUAGE } from "./language.js";

/** Where the pages of the findings lie in the extension. */
export function findingsPage(context: vscode.ExtensionContext): vscode.Uri {
  return vscode.Uri.joinPath(context.extensionUri, "server", "findings", "PAGES.md");
}

const HOVER_COMMANDS = ["bellcrank.whereFrom", "bellcrank.showChangers"];

export function clientOptions(
  context: vscode.ExtensionContext,
  output: vscode.LogOutputChannel,
): LanguageClientOptions {
  const initializationOptions = (): InitializationOptions => ({
    settings: plainSettings(),
    pages: findingsPage(context).toString(),
    commands: ["bellcrank.showRates", "bellcrank.compareWithBase", "bellcrank.renameHere", ...HOVER_COMMANDS],
    readsText: true,
    namesFiles: true,
    drawsImages: true,
  });
  return {
    // No scheme: a file of a virtual workspace and an untitled one are checked like one on disk.
    documentSelector: [{ language: LANGUAGE }],
    synchronize: { configurationSection: LANGUAGE },
    diagnosticCollectionName: LANGUAGE,
    outputChannel: output,
    initializationOptions,
    // What a hover may link to: these and no others.
    markdown: { isTrusted: { enabledCommands: HOVER_COMMANDS } },
    middleware: {
      handleDiagnostics: (uri, diagnostics, next) => next(uri, diagnostics.map(explainInEditor)),
      provideWorkspaceDiagnostics: (known, token, report, next) =>
        next(known, token, (chunk) => {
          for (const item of chunk?.items ?? []) if ("items" in item) item.items.forEach(explainInEditor);
          report(chunk);
        }),
    },
  };
}

/** Without the editor's methods, which no channel takes along. */
const plainSettings = (): unknown => JSON.parse(JSON.stringify(vscode.workspace.getConfiguration(LANGUAGE)));
