/**
 * `Bellcrank: Explain the Finding at the Cursor`: the finding's page, rendered beside the text.
 * With an argument (the link on a finding's code) it is that finding, wherever the cursor is.
 */
import * as vscode from "vscode";
import { OPEN_FINDING_PAGE, ruleOf } from "../finding-links.js";
import { LANGUAGE } from "../language.js";
import { textInView } from "../text-in-view.js";

export function registerOpenFindingPage(page: vscode.Uri): vscode.Disposable {
  const show = async (anchor: Partial<{ readonly fragment: string }>): Promise<void> => {
    await vscode.commands.executeCommand("markdown.showPreviewToSide", page.with(anchor));
  };
  return vscode.commands.registerCommand(OPEN_FINDING_PAGE, async (given?: unknown) => {
    const rule = typeof given === "string" ? given : await ruleInView(() => show({}));
    if (rule !== undefined) await show({ fragment: rule });
  });
}

/** Of the finding at the cursor or about what stands there, else of the only one of the file, else of one that is chosen. */
async function ruleInView(showAll: () => Promise<void>): Promise<string | undefined> {
  const editor = await textInView("to have its findings explained");
  if (editor === undefined) return undefined;
  const all = vscode.languages.getDiagnostics(editor.document.uri).filter(({ source }) => source === LANGUAGE);
  const here = findingAt(all, editor);
  const rules = [...new Set((here === undefined ? all : [here]).map(ruleOf))];
  if (rules.length === 0) {
    const list = "Show All Checks";
    const name = vscode.workspace.asRelativePath(editor.document.uri);
    const chosen = await vscode.window.showInformationMessage(`There is no Bellcrank finding in ${name}.`, list);
    if (chosen === list) await showAll();
    return undefined;
  }
  return rules.length === 1 ? rules[0] : chosenOf(all);
}

function findingAt(all: readonly vscode.Diagnostic[], editor: vscode.TextEditor): vscode.Diagnostic | undefined {
  const { active } = editor.selection;
  const uri = editor.document.uri.toString();
  const isOnLine = ({ start, end }: vscode.Range): boolean => start.line <= active.line && active.line <= end.line;
  const isAbout = ({ relatedInformation = [] }: vscode.Diagnostic): boolean =>
    relatedInformation.some(({ location }) => location.uri.toString() === uri && isOnLine(location.range));
  return (
    all.find(({ range }) => range.contains(active)) ?? all.find(({ range }) => isOnLine(range)) ?? all.find(isAbout)
  );
}

async function chosenOf(all: readonly vscode.Diagnostic[]): Promise<string | undefined> {
  const items = all.map((found) => ({
    label: ruleOf(found) ?? "",
    description: `line ${found.range.start.line + 1}`,
    detail: found.message,
  }));
  const chosen = await vscode.window.showQuickPick(items, { placeHolder: "Which finding shall be explained?" });
  return chosen?.label;
}
