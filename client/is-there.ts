/** Whether something is at an address, in whatever file system the editor has for it. */
import * as vscode from "vscode";

export async function isThere(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(uri);
    return true;
  } catch {
    // Who asks wants to put something there, and will hear of any other trouble then.
    return false;
  }
}
