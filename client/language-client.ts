/**
 * The connection to the language server: starts dist/server.cjs as a child process of the
 * extension host, over Node's own message channel. Nothing is downloaded and nothing else is run.
 */
import * as vscode from "vscode";
import {
  LanguageClient,
  type LanguageClientOptions,
  type ServerOptions,
  TransportKind,
} from "vscode-languageclient/node";
import type { InitializationOptions } from "../server/lsp/protocol.js";
import { explainInEditor } from "./finding-links.js";
import { SERVER_MEMORY_FLAGS } from "./server-flags.js";

export const LANGUAGE = "bellcrank";

/** Where the pages of the findings lie in the extension. */
export function findingsPage(context: vscode.ExtensionContext): vscode.Uri {
  return vscode.Uri.joinPath(context.extensionUri, "server", "findings", "PAGES.md");
}

export function createLanguageClient(
  context: vscode.ExtensionContext,
  output: vscode.LogOutputChannel,
): LanguageClient {
  return new LanguageClient(LANGUAGE, "Bellcrank", serverOptions(context), clientOptions(context, output));
}

function serverOptions(context: vscode.ExtensionContext): ServerOptions {
  const server = {
    module: context.asAbsolutePath("dist/server.cjs"),
    transport: TransportKind.ipc,
    options: { execArgv: [...SERVER_MEMORY_FLAGS] },
  };
  return { run: server, debug: server };
}

function clientOptions(context: vscode.ExtensionContext, output: vscode.LogOutputChannel): LanguageClientOptions {
  const initializationOptions = (): InitializationOptions => ({
    settings: vscode.workspace.getConfiguration(LANGUAGE),
    pages: findingsPage(context).toString(),
    commands: ["bellcrank.showRates"],
    readsText: true,
    drawsImages: true,
  });
  return {
    // No scheme: a file of a virtual workspace and an untitled one are checked like one on disk.
    documentSelector: [{ language: LANGUAGE }],
    synchronize: { configurationSection: LANGUAGE },
    diagnosticCollectionName: LANGUAGE,
    outputChannel: output,
    initializationOptions,
    middleware: {
      handleDiagnostics: (uri, diagnostics, next) => next(uri, diagnostics.map(explainInEditor)),
    },
  };
}
