/** `Bellcrank: Open Example`: a copy of the sample car to play with, in the workspace or in a folder that is chosen. */
import * as vscode from "vscode";
import { isThere } from "../is-there.js";

const FOLDER = "quill-example";
const CAR = "quill.crank";
/** By name, since a folder that lies on a web server cannot be listed. A test holds them against the folder. */
const FILES = [CAR, "parts.crank", "dry.crank", "wet.crank"];

export const registerOpenExample = ({ extensionUri }: vscode.ExtensionContext): vscode.Disposable =>
  vscode.commands.registerCommand("bellcrank.openExample", () => openExample(extensionUri));

async function openExample(extension: vscode.Uri): Promise<void> {
  const parent = vscode.workspace.workspaceFolders?.[0]?.uri ?? (await chosenFolder());
  if (parent === undefined) return;
  const target = vscode.Uri.joinPath(parent, FOLDER);
  try {
    // What was changed in a copy that is there stays as it is.
    if (!(await isThere(target))) await copy(vscode.Uri.joinPath(extension, "samples", "quill"), target);
  } catch (error) {
    void vscode.window.showErrorMessage(`The example could not be copied: ${String(error)}`);
    return;
  }
  // To stay, not for a preview whose tab the walkthrough would take.
  await vscode.window.showTextDocument(vscode.Uri.joinPath(target, CAR), { preview: false });
}

async function copy(from: vscode.Uri, to: vscode.Uri): Promise<void> {
  const { fs } = vscode.workspace;
  await fs.createDirectory(to);
  for (const name of FILES)
    await fs.writeFile(vscode.Uri.joinPath(to, name), await fs.readFile(vscode.Uri.joinPath(from, name)));
}

async function chosenFolder(): Promise<vscode.Uri | undefined> {
  const chosen = await vscode.window.showOpenDialog({
    canSelectFolders: true,
    canSelectFiles: false,
    openLabel: "Put the example here",
  });
  return chosen?.[0];
}
