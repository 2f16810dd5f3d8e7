/** The extension in a browser: its server is a worker, which has every file from here. */
import type * as vscode from "vscode";
import { activateWith } from "../activate.js";
import { createLanguageClient } from "./language-client.js";

export const activate = (context: vscode.ExtensionContext): void =>
  activateWith(context, { createClient: createLanguageClient, serverReads: () => false });
