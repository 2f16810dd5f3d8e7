/**
 * Reads files of a workspace that is not on disk for the language server, through the editor's own file
 * system. Like on disk, nothing outside the folders of the workspace is read; where there is none, nothing outside the folders of
 * the open files.
 */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { ReadTextAnswer, ReadTextMethod, ReadTextParams } from "../server/lsp/protocol.js";

const METHOD: ReadTextMethod = "bellcrank/readText";

export function answerReadText(client: BaseLanguageClient): vscode.Disposable {
  return client.onRequest<ReadTextAnswer, Error>(METHOD, ({ uri }: ReadTextParams) => readText(vscode.Uri.parse(uri)));
}

async function readText(uri: vscode.Uri): Promise<ReadTextAnswer> {
  if (!isInside(uri)) return { missing: "outside" };
  let bytes: Uint8Array;
  try {
    bytes = await vscode.workspace.fs.readFile(uri);
  } catch {
    // Not there, a folder, or not ours to read: for the text that names it, it is missing.
    return { missing: "missing" };
  }
  return decoded(bytes);
}

function isInside(uri: vscode.Uri): boolean {
  const { workspaceFolders, textDocuments } = vscode.workspace;
  if ((workspaceFolders ?? []).length > 0) return vscode.workspace.getWorkspaceFolder(uri) !== undefined;
  return textDocuments.some(({ uri: open }) => {
    const folder = vscode.Uri.joinPath(open, "..");
    return folder.scheme === uri.scheme && folder.authority === uri.authority && uri.path.startsWith(`${folder.path}/`);
  });
}

function decoded(bytes: Uint8Array): ReadTextAnswer {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return { missing: "not-text" };
  }
}
