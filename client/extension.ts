/** The extension on a machine: its server is a process beside it, which reads the machine's files by itself. */
import type * as vscode from "vscode";
import { activateWith } from "./activate.js";
import { createLanguageClient } from "./language-client.js";

export const activate = (context: vscode.ExtensionContext): void =>
  activateWith(context, { createClient: createLanguageClient, serverReads: ({ scheme }) => scheme === "file" });
