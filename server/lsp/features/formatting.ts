/** Formatting: a document, a range, and a line or block as it is finished. */
import type { TextEdit } from "vscode-languageserver";
import { format, formatRange } from "../../../grammar/index.js";
import type { FileView } from "../../snapshot/workspace.js";
import { minimalEdit } from "../../views/minimal-edit.js";
import { rangeOf, spanOf } from "../convert.js";
import type { Feature } from "../feature.js";

export const formatting: Feature = {
  capabilities: {
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "}" },
  },
  attach(connection, session) {
    connection.onDocumentFormatting(({ textDocument }) => {
      const file = session.file(textDocument.uri);
      return edits(file, minimalEdit(file.text, format(file.text)));
    });
    connection.onDocumentRangeFormatting(({ textDocument, range }) => {
      const file = session.file(textDocument.uri);
      return edits(file, formatRange(file.text, spanOf(file.parsed.lines, range)));
    });
    connection.onDocumentOnTypeFormatting(({ textDocument, position }) => {
      const file = session.file(textDocument.uri);
      const offset = file.parsed.lines.offset(position);
      return edits(file, formatRange(file.text, { start: offset, end: offset }));
    });
  },
};

function edits(file: FileView, edit: ReturnType<typeof formatRange>): TextEdit[] {
  return edit === undefined ? [] : [{ range: rangeOf(file.parsed.lines, edit.span), newText: edit.newText }];
}
