/** Every safe fix of a file at once: `source.fixAll`, on command or on saving. */
import { type CodeAction, CodeActionKind } from "vscode-languageserver";
import type { FileView } from "../../snapshot/workspace.js";
import { workspaceEdit } from "../edits.js";
import type { Session } from "../session.js";

export const fixAllKind = `${CodeActionKind.SourceFixAll}.bellcrank`;

export function fixAll(session: Session, file: FileView): readonly CodeAction[] {
  const edits = file.safeEdits();
  if (edits.length === 0) return [];
  return [{ title: "Mend everything that is safe to mend", kind: fixAllKind, edit: workspaceEdit(session, edits) }];
}
