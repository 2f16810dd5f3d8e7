/**
 * The connection to the language server: starts dist/server.cjs as a child process of the
 * extension host, over Node's own message channel. Nothing is downloaded and nothing else is run.
 */
import type * as vscode from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { clientOptions } from "./client-options.js";
import { LANGUAGE } from "./language.js";
import { SERVER_MEMORY_FLAGS } from "./server-flags.js";

export function createLanguageClient(
  context: vscode.ExtensionContext,
  output: vscode.LogOutputChannel,
): LanguageClient {
  const server = {
    module: context.asAbsolutePath("dist/server.cjs"),
    transport: TransportKind.ipc,
    options: { execArgv: [...SERVER_MEMORY_FLAGS] },
  };
  return new LanguageClient(LANGUAGE, "Bellcrank", { run: server, debug: server }, clientOptions(context, output));
}
