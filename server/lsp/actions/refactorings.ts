/**
 * Refactorings at the cursor. Each has proven that every car stays what it is, in this file and in whichever rest on it; a name
 * that was made up is renamed next, where the client can ask for that.
 */
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionTriggerKind,
  type Command,
} from "vscode-languageserver";
import type { FileView } from "../../snapshot/workspace.js";
import { extractLet } from "../../refactorings/extract-let.js";
import { inlineLet } from "../../refactorings/inline-let.js";
import { inlinePart } from "../../refactorings/part-inline.js";
import { partToCatalogue } from "../../refactorings/part-to-catalogue.js";
import type { Offered, Refactored } from "../../refactorings/refactoring.js";
import { createsFiles, editWithFile, workspaceEdit } from "../edits.js";
import type { RenameHereArguments, RenameHereCommand } from "../protocol-refactor.js";
import type { Session } from "../session.js";

type Actions = (session: Session, file: FileView, parameters: CodeActionParams) => readonly CodeAction[];

const kinds: Record<Offered["kind"], CodeActionKind> = {
  extract: CodeActionKind.RefactorExtract,
  inline: CodeActionKind.RefactorInline,
  move: CodeActionKind.RefactorMove,
};

/** An editor asks at every stop of the cursor: a proof over a whole season of set-ups waits until a person asks. */
const MOST_UNASKED = 50;

const from =
  (offered: (on: Refactored) => readonly Offered[]): Actions =>
  (session, file, { range, context }) => {
    const offset = file.parsed.lines.offset(range.start);
    const isAsked = context.triggerKind !== CodeActionTriggerKind.Automatic;
    return offered(refactored(session, file, offset, isAsked)).flatMap((one) => actionOf(session, one) ?? []);
  };

export const extractions = from(extractLet);
export const inlinings = from((on) => [...inlineLet(on), ...inlinePart(on)]);
export const moves = from(partToCatalogue);

export function refactored(session: Session, file: FileView, offset: number, isAsked = true): Refactored {
  const resting = (uris: readonly string[]): readonly FileView[] | undefined => {
    if (!isAsked && session.everyUri().length > MOST_UNASKED) return undefined;
    const every = session.everyFile();
    // Nothing is proven by a file that is still on its way from the client.
    if (every.some((other) => session.isIncomplete(other))) return undefined;
    return [file, ...every.filter((other) => other.uri !== file.uri && restsOn(other, uris))];
  };
  // A text that only the client can read may not be here yet, though its file has been named.
  const exists = (uri: string): boolean => file.textOf(uri) !== undefined || session.everyUri().includes(uri);
  return { file, offset, resting, exists, changed: (texts) => session.workspace.changed(texts) };
}

const restsOn = ({ uses }: FileView, uris: readonly string[]): boolean => uses.some((uri) => uris.includes(uri));

/** Undefined where the client cannot make the file that it needs. */
function actionOf(session: Session, refactoring: Offered): CodeAction | undefined {
  const { title, kind, edits, creates } = refactoring;
  if (creates !== undefined && !createsFiles(session)) return undefined;
  const edit = creates === undefined ? workspaceEdit(session, edits) : editWithFile(session, edits, creates);
  const command = renameNext(session, refactoring);
  return { title, kind: kinds[kind], edit, ...(command && { command }) };
}

const RENAME_HERE: RenameHereCommand = "bellcrank.renameHere";

/** Run behind the edit, on the text that it made. */
function renameNext(session: Session, { named }: Offered): Command | undefined {
  if (named === undefined || !session.commands.has(RENAME_HERE)) return undefined;
  const { uri, position } = named;
  return { title: "Rename", command: RENAME_HERE, arguments: [uri, position] satisfies RenameHereArguments };
}
