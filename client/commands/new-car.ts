/** `Bellcrank: New Car`: asks a few questions and writes a starting car, its parts and a first set-up, never over what is there. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type {
  NewCarAnswer,
  NewCarMethod,
  NewCarQuestions,
  NewCarQuestionsMethod,
} from "../../server/lsp/protocol-start.js";
import { isThere } from "../is-there.js";

const ASKING: NewCarQuestionsMethod = "bellcrank/newCarQuestions";
const MAKING: NewCarMethod = "bellcrank/newCar";

export const registerNewCar = (client: BaseLanguageClient): vscode.Disposable =>
  vscode.commands.registerCommand("bellcrank.newCar", () => newCar(client));

async function newCar(client: BaseLanguageClient): Promise<void> {
  const name = await vscode.window.showInputBox({
    title: "New car (1)",
    prompt: "What set-ups call the car: letters, digits and hyphens",
    value: "swift-2",
  });
  if (name === undefined) return;
  const answers = await answered(await client.sendRequest<NewCarQuestions>(ASKING));
  if (answers === undefined) return;
  const made = await client.sendRequest<NewCarAnswer>(MAKING, { name, title: name, answers });
  if (made.why !== undefined) {
    void vscode.window.showErrorMessage(`${name}: ${made.why}`);
    return;
  }
  const folder = await targetFolder();
  if (folder !== undefined) await write(folder, made.files);
}

type Answers = Record<string, string | boolean>;

/** Undefined where somebody thought better of it. */
async function answered({ choices, yesOrNo }: NewCarQuestions): Promise<Answers | undefined> {
  const answers: Answers = {};
  for (const { of, asks, options, notFor } of choices) {
    if (notFor.includes(String(answers["corner"]))) continue;
    const picked = await vscode.window.showQuickPick(
      options.map(({ value, label }) => ({ label, value })),
      { title: asks },
    );
    if (picked === undefined) return undefined;
    answers[of] = picked.value;
  }
  for (const { of, asks, usual } of yesOrNo) {
    const order = usual ? ["Yes", "No"] : ["No", "Yes"];
    const picked = await vscode.window.showQuickPick(order, { title: asks });
    if (picked === undefined) return undefined;
    answers[of] = picked === "Yes";
  }
  return answers;
}

/** The only folder of the workspace, else one that is chosen. */
async function targetFolder(): Promise<vscode.Uri | undefined> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  if (folders.length === 1) return folders[0]?.uri;
  if (folders.length > 1) return (await vscode.window.showWorkspaceFolderPick())?.uri;
  const chosen = await vscode.window.showOpenDialog({
    canSelectFolders: true,
    canSelectFiles: false,
    openLabel: "Put the car here",
  });
  return chosen?.[0];
}

async function write(folder: vscode.Uri, files: NewCarAnswer["files"]): Promise<void> {
  const targets = files.map(({ name, text }) => ({ uri: vscode.Uri.joinPath(folder, name), text }));
  for (const { uri } of targets) {
    if (await isThere(uri)) {
      void vscode.window.showErrorMessage(
        `${vscode.workspace.asRelativePath(uri)} is there already; nothing was written.`,
      );
      return;
    }
  }
  for (const { uri, text } of targets) await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  const [car] = targets;
  if (car !== undefined) await vscode.window.showTextDocument(car.uri);
}
