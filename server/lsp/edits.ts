/** Edits of the engine as the protocol's workspace edit. */
import type { WorkspaceEdit } from "vscode-languageserver";
import type { TextEdit } from "../findings/finding.js";
import { rangeOf } from "./convert.js";
import type { Session } from "./session.js";

export function workspaceEdit(session: Session, edits: readonly TextEdit[]): WorkspaceEdit {
  const changes: NonNullable<WorkspaceEdit["changes"]> = {};
  for (const { uri, span, newText } of edits) {
    const range = rangeOf(session.file(uri).parsed.lines, span);
    (changes[uri] ??= []).push({ range, newText });
  }
  return { changes };
}
