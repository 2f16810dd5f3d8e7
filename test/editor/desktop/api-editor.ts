/**
 * The editor under test, asked through the programming interface of VS Code from inside its extension host.
 * Runs only where a desktop VS Code can be downloaded and shown; elsewhere it is type-checked.
 */
import { setTimeout as delay } from "node:timers/promises";
import * as vscode from "vscode";
import type { EditorUnderTest, Place, ShownFinding } from "../editor-under-test.js";

const SEVERITIES = ["error", "warning", "info", "hint"] as const;
const MOST_LENSES = 100;

function position({ line, column }: Place): vscode.Position {
  return new vscode.Position(line - 1, column - 1);
}

function editor(): vscode.TextEditor {
  const active = vscode.window.activeTextEditor;
  if (active === undefined) throw new Error("No file is open.");
  return active;
}

export class ApiEditor implements EditorUnderTest {
  async open(path: string): Promise<void> {
    await this.close();
    await vscode.window.showTextDocument(vscode.Uri.file(path));
  }

  async close(): Promise<void> {
    await vscode.commands.executeCommand("workbench.action.closeAllEditors");
  }

  async save(): Promise<void> {
    await editor().document.save();
  }

  async type(from: Place, length: number, text: string): Promise<void> {
    const start = position(from);
    editor().selection = new vscode.Selection(start, start.translate(0, length));
    for (const key of text) {
      await vscode.commands.executeCommand("type", { text: key });
      await delay(30);
    }
  }

  async findings(): Promise<readonly ShownFinding[]> {
    const all = vscode.languages.getDiagnostics().flatMap(([, found]) => found);
    return all.filter(({ source }) => source === "bellcrank").map(shown);
  }

  async hover(at: Place): Promise<string> {
    const { uri } = editor().document;
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      "vscode.executeHoverProvider",
      uri,
      position(at),
    );
    const texts = hovers.flatMap(({ contents }) =>
      contents.map((content) => (typeof content === "string" ? content : content.value)),
    );
    // As it would be rendered: without the strokes that keep a star a star.
    return texts.join("\n").replace(/\\([*_])/g, "$1");
  }

  async inlays(at: Place): Promise<readonly string[]> {
    const { uri } = editor().document;
    const line = new vscode.Range(at.line - 1, 0, at.line, 0);
    const hints = await vscode.commands.executeCommand<vscode.InlayHint[]>(
      "vscode.executeInlayHintProvider",
      uri,
      line,
    );
    return hints.map(({ label }) => (typeof label === "string" ? label : label.map(({ value }) => value).join("")));
  }

  async lenses(at: Place): Promise<readonly string[]> {
    const { uri } = editor().document;
    const all = await vscode.commands.executeCommand<vscode.CodeLens[]>(
      "vscode.executeCodeLensProvider",
      uri,
      MOST_LENSES,
    );
    const near = all.filter(({ range }) => Math.abs(range.start.line + 1 - at.line) <= 1);
    return near.map(({ command }) => command?.title ?? "");
  }

  async fixes(at: Place): Promise<readonly string[]> {
    return (await this.#actions(at)).map(({ title }) => title);
  }

  async applyFix(at: Place, title: string): Promise<void> {
    const action = (await this.#actions(at)).find((offered) => offered.title === title);
    if (action?.edit === undefined) throw new Error(`There is no fix "${title}" here.`);
    await vscode.workspace.applyEdit(action.edit);
  }

  async completions(at: Place): Promise<readonly string[]> {
    const { uri } = editor().document;
    const command = "vscode.executeCompletionItemProvider";
    const list = await vscode.commands.executeCommand<vscode.CompletionList>(command, uri, position(at));
    return list.items.map(({ label }) => (typeof label === "string" ? label : label.label));
  }

  async definition(at: Place): Promise<Place> {
    editor().selection = new vscode.Selection(position(at), position(at));
    await vscode.commands.executeCommand("editor.action.revealDefinition");
    const { line, character } = editor().selection.active;
    return { line: line + 1, column: character + 1 };
  }

  async format(): Promise<void> {
    await vscode.commands.executeCommand("editor.action.formatDocument");
  }

  /** Pictures come from the served editor: an extension cannot take one of its own window. */
  async picture(): Promise<void> {}

  async #actions(at: Place): Promise<readonly vscode.CodeAction[]> {
    const { uri } = editor().document;
    const range = new vscode.Range(position(at), position(at));
    const command = "vscode.executeCodeActionProvider";
    return vscode.commands.executeCommand<vscode.CodeAction[]>(
      command,
      uri,
      range,
      vscode.CodeActionKind.QuickFix.value,
    );
  }
}

function shown({ severity, message, code, range }: vscode.Diagnostic): ShownFinding {
  const rule = String(typeof code === "object" ? code.value : code);
  return { severity: SEVERITIES[severity], message, rule, line: range.start.line + 1 };
}
