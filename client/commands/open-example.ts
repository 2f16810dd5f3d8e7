/** `Bellcrank: Open Example`: a copy of the sample car to play with, in the workspace or in a folder that is chosen. */
import * as vscode from "vscode";

const FOLDER = "quill-example";
const CAR = "quill.crank";

export const registerOpenExample = ({ extensionUri }: vscode.ExtensionContext): vscode.Disposable =>
  vscode.commands.registerCommand("bellcrank.openExample", () => openExample(extensionUri));

async function openExample(extension: vscode.Uri): Promise<void> {
  const parent = vscode.workspace.workspaceFolders?.[0]?.uri ?? (await chosenFolder());
  if (parent === undefined) return;
  const target = vscode.Uri.joinPath(parent, FOLDER);
  try {
    // What was changed in a copy that is there stays as it is.
    await vscode.workspace.fs.copy(vscode.Uri.joinPath(extension, "samples", "quill"), target, { overwrite: false });
  } catch (error) {
    if (!(error instanceof vscode.FileSystemError) || error.code !== "FileExists") {
      void vscode.window.showErrorMessage(`The example could not be copied: ${String(error)}`);
      return;
    }
  }
  await vscode.window.showTextDocument(vscode.Uri.joinPath(target, CAR));
}

async function chosenFolder(): Promise<vscode.Uri | undefined> {
  const chosen = await vscode.window.showOpenDialog({
    canSelectFolders: true,
    canSelectFiles: false,
    openLabel: "Put the example here",
  });
  return chosen?.[0];
}
