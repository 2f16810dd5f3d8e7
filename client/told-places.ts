/**
 * Places with what is told of each, in a list above the text: the one that is highlighted is shown behind it, Enter goes there,
 * Escape goes back to where one was. A button shows them in the editor's own peek view.
 */
import * as vscode from "vscode";
import type { ToldPlace } from "../server/lsp/protocol-provenance.js";

interface PlaceItem extends vscode.QuickPickItem {
  readonly where: ToldPlace["where"];
}

export interface Told {
  readonly title: string;
  readonly placeholder: string;
  readonly places: readonly ToldPlace[];
}

const PEEK: vscode.QuickInputButton = {
  iconPath: new vscode.ThemeIcon("references"),
  tooltip: "Show all in a peek view",
};

export function showToldPlaces({ title, placeholder, places }: Told): void {
  const back = wayBack();
  const list = vscode.window.createQuickPick<PlaceItem>();
  let isLeft = false;
  // One after the other: what is still on its way must not come up behind the way back.
  let showing = Promise.resolve();
  const next = (step: () => Promise<void>): void => {
    // A file that is gone meanwhile keeps nobody from the way back.
    showing = showing.then(step, step);
  };
  const leave = (then: () => Promise<void>): void => {
    isLeft = true;
    list.hide();
    next(then);
  };
  list.title = title;
  list.placeholder = placeholder;
  list.matchOnDescription = true;
  list.matchOnDetail = true;
  list.items = places.map(itemOf);
  list.buttons = places.some(({ where }) => where !== undefined) ? [PEEK] : [];
  list.onDidChangeActive(([item]) => {
    const where = item?.where;
    if (where !== undefined) next(() => (isLeft ? Promise.resolve() : show(where, back.column, true)));
  });
  list.onDidAccept(() => {
    const [item] = list.selectedItems;
    const where = item?.where;
    if (where !== undefined) leave(() => show(where, back.column, false));
  });
  list.onDidTriggerButton(() => leave(() => back.go().then(() => peek(back, places))));
  list.onDidHide(() => {
    if (!isLeft) next(() => back.go());
    isLeft = true;
    list.dispose();
  });
  list.show();
}

const itemOf = ({ label, by, text, where }: ToldPlace): PlaceItem => ({
  label,
  description: where === undefined ? by : `${by} · ${where.shown}`,
  // What is told twice is told once.
  ...(text === label ? {} : { detail: text }),
  where,
});

async function show(
  { uri, range: { start, end } }: NonNullable<ToldPlace["where"]>,
  viewColumn: vscode.ViewColumn,
  preserveFocus: boolean,
): Promise<void> {
  // A block is gone to by its first line: a selection of all of it would hide what it says.
  const last = start.line === end.line ? end : start;
  const selection = new vscode.Range(start.line, start.character, last.line, last.character);
  await vscode.window.showTextDocument(vscode.Uri.parse(uri), { viewColumn, preserveFocus, preview: true, selection });
}

interface WayBack {
  readonly column: vscode.ViewColumn;
  readonly editor: vscode.TextEditor | undefined;
  go(): Promise<void>;
}

/** To the text, the cursor and the lines that were in view. */
function wayBack(): WayBack {
  const editor = vscode.window.activeTextEditor;
  const column = editor?.viewColumn ?? vscode.ViewColumn.One;
  const selection = editor?.selection;
  const [seen] = editor?.visibleRanges ?? [];
  const go = async (): Promise<void> => {
    if (editor === undefined || selection === undefined) return;
    const shown = await vscode.window.showTextDocument(editor.document, { viewColumn: column, selection });
    if (seen !== undefined) shown.revealRange(seen, vscode.TextEditorRevealType.AtTop);
  };
  return { column, editor, go };
}

async function peek({ editor }: WayBack, places: readonly ToldPlace[]): Promise<void> {
  if (editor === undefined) return;
  const locations = places.flatMap(({ where }) => {
    if (where === undefined) return [];
    const { start, end } = where.range;
    const range = new vscode.Range(start.line, start.character, end.line, end.character);
    return [new vscode.Location(vscode.Uri.parse(where.uri), range)];
  });
  const { document, selection } = editor;
  await vscode.commands.executeCommand(
    "editor.action.peekLocations",
    document.uri,
    selection.active,
    locations,
    "peek",
  );
}
