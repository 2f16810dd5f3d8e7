/** The commands of the comparison: with another set-up, with what it derives from, with the last commit, with a branch or a tag. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type {
  CompareChoices,
  CompareChoicesMethod,
  CompareChoicesParams,
  CompareWith,
  CompareWithBaseArguments,
} from "../../server/lsp/protocol-compare.js";
import { textInView } from "../text-in-view.js";
import { registerCommittedText } from "./committed-text.js";
import { restoreComparisons, showComparison } from "./view.js";

const CHOICES: CompareChoicesMethod = "bellcrank/compareChoices";

type Choose = (choices: CompareChoices) => Promise<CompareWith | undefined>;

export function registerCompare(client: BaseLanguageClient): vscode.Disposable {
  const command = (name: string, choose: Choose): vscode.Disposable =>
    vscode.commands.registerCommand(name, () => compare(client, choose));
  return vscode.Disposable.from(
    registerCommittedText(client),
    restoreComparisons(client),
    command("bellcrank.compareWithSetup", chooseSetup),
    vscode.commands.registerCommand("bellcrank.compareWithBase", (...given: unknown[]) => withBase(client, given)),
    command("bellcrank.compareWithLastCommit", lastCommit),
    command("bellcrank.compareWithBranch", chooseBranch),
  );
}

async function compare(client: BaseLanguageClient, choose: Choose): Promise<void> {
  const editor = await textInView("to compare its set-up");
  if (editor === undefined) return;
  const uri = editor.document.uri.toString();
  const offset = editor.document.offsetAt(editor.selection.active);
  const choices = await client.sendRequest<CompareChoices>(CHOICES, { uri, offset } satisfies CompareChoicesParams);
  if (choices.name === undefined) {
    void vscode.window.showInformationMessage("This file declares no car and no set-up that could be compared.");
    return;
  }
  const other = await choose(choices);
  if (other !== undefined) await showComparison(client, { uri, name: choices.name, with: other });
}

/** The lens above a set-up passes both; the palette passes nothing, and means the set-up at the cursor. */
async function withBase(client: BaseLanguageClient, given: readonly unknown[]): Promise<void> {
  if (!isFromLens(given)) return compare(client, nearestBase);
  const [uri, name, baseUri, baseName] = given;
  await showComparison(client, { uri, name, with: { kind: "setup", uri: baseUri, name: baseName } });
}

const isFromLens = (given: readonly unknown[]): given is CompareWithBaseArguments =>
  given.length === 4 && given.every((part) => typeof part === "string");

async function nearestBase({ name, setups }: CompareChoices): Promise<CompareWith | undefined> {
  const base = setups.find(({ isBase }) => isBase);
  if (base !== undefined) return { kind: "setup", uri: base.uri, name: base.name };
  void vscode.window.showInformationMessage(`${name ?? ""} derives from nothing that it could be compared with.`);
  return undefined;
}

async function chooseSetup({ name, setups }: CompareChoices): Promise<CompareWith | undefined> {
  if (setups.length === 0) {
    void vscode.window.showInformationMessage(`There is no other set-up of this car to compare ${name ?? ""} with.`);
    return undefined;
  }
  const items = setups.map((setup) => ({
    label: setup.name,
    description: setup.isBase ? "what it derives from" : "",
    detail: vscode.workspace.asRelativePath(vscode.Uri.parse(setup.uri)),
    setup,
  }));
  const placeHolder = `Compare ${name ?? ""} with`;
  const chosen = await vscode.window.showQuickPick(items, { placeHolder, matchOnDetail: true });
  return chosen && { kind: "setup", uri: chosen.setup.uri, name: chosen.setup.name };
}

async function lastCommit(choices: CompareChoices): Promise<CompareWith | undefined> {
  return hasGit(choices) ? { kind: "revision", revision: "HEAD" } : undefined;
}

async function chooseBranch(choices: CompareChoices): Promise<CompareWith | undefined> {
  if (!hasGit(choices)) return undefined;
  const { branches, tags } = choices.revisions;
  const items = [
    ...branches.map((label) => ({ label, description: "branch" })),
    ...tags.map((label) => ({ label, description: "tag" })),
  ];
  if (items.length === 0) {
    void vscode.window.showInformationMessage("This repository has no branches and no tags yet.");
    return undefined;
  }
  const chosen = await vscode.window.showQuickPick(items, { placeHolder: `Compare ${choices.name ?? ""} with` });
  return chosen && { kind: "revision", revision: chosen.label };
}

/** Says why where there is none: no repository, no git, or a browser. */
function hasGit(choices: CompareChoices): choices is CompareChoices & { readonly revisions: { readonly kind: "git" } } {
  if (choices.revisions.kind === "git") return true;
  void vscode.window.showInformationMessage(choices.revisions.why);
  return false;
}
