/** Completion: words valid here, names, points, parts with their figures, units behind a number. */
import { type CompletionItem, CompletionItemKind, InsertTextFormat, MarkupKind } from "vscode-languageserver";
import type { FileView } from "../../snapshot/workspace.js";
import type { Candidate, CandidateKind } from "../../views/completion/candidate.js";
import { completeAt } from "../../views/completion/complete.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";

const kinds: Record<CandidateKind, CompletionItemKind> = {
  word: CompletionItemKind.Keyword,
  element: CompletionItemKind.Class,
  property: CompletionItemKind.Property,
  mode: CompletionItemKind.EnumMember,
  part: CompletionItemKind.Constant,
  name: CompletionItemKind.Variable,
  eye: CompletionItemKind.Field,
  unit: CompletionItemKind.Unit,
  figure: CompletionItemKind.Value,
  file: CompletionItemKind.File,
};

export const completion: Feature = {
  capabilities: { completionProvider: { triggerCharacters: [" ", ".", "/", "*"] } },
  attach(connection, session) {
    connection.onCompletion(({ textDocument, position }) => {
      const file = session.file(textDocument.uri);
      const snippets = session.client.textDocument?.completion?.completionItem?.snippetSupport === true;
      const found = completeAt(file, file.parsed.lines.offset(position));
      return { isIncomplete: false, items: found.map((candidate) => itemOf(file, candidate, snippets)) };
    });
  },
};

function itemOf(file: FileView, candidate: Candidate, snippets: boolean): CompletionItem {
  const snippet = candidate.snippet && snippets;
  const item: CompletionItem = {
    label: candidate.label,
    kind: kinds[candidate.kind],
    sortText: `${candidate.rank.toFixed(3).padStart(8, "0")}${candidate.label}`,
    textEdit: {
      range: rangeOf(file.parsed.lines, candidate.span),
      newText: candidate.snippet && !snippets ? candidate.label : candidate.insert,
    },
    insertTextFormat: snippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
  };
  if (candidate.detail !== "") item.detail = candidate.detail;
  if (candidate.documentation !== "")
    item.documentation = { kind: MarkupKind.Markdown, value: candidate.documentation };
  return item;
}
