/**
 * `Bellcrank: Where Does This Value Come From` and `Bellcrank: Set-ups That Change This Value`: at the cursor, or for what a link of a
 * hover names. Where the cursor is on a block, the value is chosen from a list first.
 */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type {
  ChangersAnswer,
  ChangersMethod,
  ValueAsked,
  ValueChoices,
  ValueLinkArguments,
  WhereFromAnswer,
  WhereFromMethod,
} from "../../server/lsp/protocol-provenance.js";
import { LANGUAGE } from "../language.js";
import { showToldPlaces } from "../told-places.js";

const WHERE_FROM: WhereFromMethod = "bellcrank/whereFrom";
const CHANGERS: ChangersMethod = "bellcrank/changers";

export const registerWhereFrom = (client: BaseLanguageClient): vscode.Disposable =>
  vscode.Disposable.from(
    vscode.commands.registerCommand("bellcrank.whereFrom", (...given: unknown[]) =>
      about(given, (asked) => whereFrom(client, asked)),
    ),
    vscode.commands.registerCommand("bellcrank.showChangers", (...given: unknown[]) =>
      about(given, (asked) => changers(client, asked)),
    ),
  );

async function about(given: readonly unknown[], ask: (asked: ValueAsked) => Promise<void>): Promise<void> {
  const asked = isFromLink(given) ? given[0] : atCursor();
  if (asked === undefined)
    void vscode.window.showInformationMessage("Open a Bellcrank file and put the cursor on a value.");
  else await ask(asked);
}

/** The editor's own menu passes the file's address, the palette nothing. */
function isFromLink(given: readonly unknown[]): given is ValueLinkArguments {
  const { uri, position } = (given[0] ?? {}) as Partial<Record<string, unknown>>;
  return typeof uri === "string" && typeof position === "object";
}

function atCursor(): ValueAsked | undefined {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId !== LANGUAGE) return undefined;
  const { line, character } = editor.selection.active;
  return { uri: editor.document.uri.toString(), position: { line, character } };
}

async function whereFrom(client: BaseLanguageClient, asked: ValueAsked): Promise<void> {
  const answer = await client.sendRequest<WhereFromAnswer>(WHERE_FROM, asked);
  switch (answer.kind) {
    case "none":
      void vscode.window.showInformationMessage(answer.why);
      return;
    case "choose": {
      const chosen = await choose(answer);
      if (chosen !== undefined) await whereFrom(client, { uri: asked.uri, name: answer.name, path: chosen });
      return;
    }
    default:
      showToldPlaces({
        title: answer.title,
        placeholder: "The line in force comes first, what it began with last",
        places: answer.steps,
      });
  }
}

async function choose({ name, values }: ValueChoices): Promise<string | undefined> {
  const items = values.map(({ path, value, by }) => ({ label: path, description: value, detail: by }));
  const chosen = await vscode.window.showQuickPick(items, {
    title: `Which value of ${name}?`,
    placeHolder: "Type a part of its path, its value, or who says it",
    matchOnDescription: true,
    matchOnDetail: true,
  });
  return chosen?.label;
}

async function changers(client: BaseLanguageClient, asked: ValueAsked): Promise<void> {
  const answer = await client.sendRequest<ChangersAnswer>(CHANGERS, asked);
  if (answer.kind === "none") void vscode.window.showInformationMessage(answer.why);
  else
    showToldPlaces({
      title: answer.title,
      placeholder: "What each was and is, and what that line alone does to the car",
      places: answer.changers,
    });
}
