/** Edits of the engine as the protocol's workspace edit. */
import type { TextDocumentEdit, WorkspaceEdit } from "vscode-languageserver";
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

/** Whether an edit of this client may make a file. */
export function createsFiles({ client }: Session): boolean {
  const { documentChanges, resourceOperations } = client.workspace?.workspaceEdit ?? {};
  return documentChanges === true && resourceOperations?.includes("create") === true;
}

const TOP = { line: 0, character: 0 };

/** The same with a file that is made first. */
export function editWithFile(
  session: Session,
  edits: readonly TextEdit[],
  { uri, text }: { readonly uri: string; readonly text: string },
): WorkspaceEdit {
  const { changes = {} } = workspaceEdit(session, edits);
  const edited = (of: string, own: TextDocumentEdit["edits"]): TextDocumentEdit => ({
    textDocument: { uri: of, version: null },
    edits: own,
  });
  return {
    documentChanges: [
      { kind: "create", uri },
      edited(uri, [{ range: { start: TOP, end: TOP }, newText: text }]),
      ...Object.entries(changes).map(([of, own]) => edited(of, own)),
    ],
  };
}
