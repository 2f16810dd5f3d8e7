/** Lines that left and right each have of their own: made the same, or said once. */
import { type CodeAction, CodeActionKind, type CodeActionParams, CodeActionTriggerKind } from "vscode-languageserver";
import { bothSides } from "../../refactorings/both-sides.js";
import type { FileView } from "../../snapshot/workspace.js";
import { workspaceEdit } from "../edits.js";
import type { Session } from "../session.js";
import { refactored } from "./refactorings.js";

export const bothSidesKind = CodeActionKind.RefactorRewrite;

export function sideActions(
  session: Session,
  file: FileView,
  { range, context }: CodeActionParams,
): readonly CodeAction[] {
  const isAsked = context.triggerKind !== CodeActionTriggerKind.Automatic;
  const offered = bothSides(refactored(session, file, file.parsed.lines.offset(range.start), isAsked));
  return offered.map(({ title, edits }) => ({ title, kind: bothSidesKind, edit: workspaceEdit(session, edits) }));
}
