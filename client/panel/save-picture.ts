/** Saves the picture that the page has made, where the user says; through the editor's own files, so that it works remotely too. */
import * as vscode from "vscode";
import type { FromPage } from "./messages.js";

const KINDS = { svg: "SVG drawing", png: "PNG picture" } as const;

export async function savePicture(
  { format, name, base64 }: Extract<FromPage, { kind: "save" }>,
  beside: string | undefined,
): Promise<void> {
  const folder =
    beside === undefined
      ? vscode.workspace.workspaceFolders?.[0]?.uri
      : vscode.Uri.joinPath(vscode.Uri.parse(beside), "..");
  const target = await vscode.window.showSaveDialog({
    filters: { [KINDS[format]]: [format] },
    title: "Save the drawing of the mechanism",
    ...(folder === undefined ? {} : { defaultUri: vscode.Uri.joinPath(folder, `${name}.${format}`) }),
  });
  if (target === undefined) return;
  try {
    await vscode.workspace.fs.writeFile(target, bytesOf(base64));
  } catch (error) {
    void vscode.window.showErrorMessage(`The drawing could not be saved: ${String(error)}`);
  }
}

/** Both Node and a browser have `atob`. */
const bytesOf = (base64: string): Uint8Array => Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
