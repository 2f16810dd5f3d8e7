/** Symbols: the outline of a document, and a search by name over the open ones. */
import { type DocumentSymbol, SymbolKind, type WorkspaceSymbol } from "vscode-languageserver";
import type { FileView } from "../../snapshot/workspace.js";
import { type Outline, outlineOf, type OutlineKind } from "../../views/outline.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";

const kinds: Record<OutlineKind, SymbolKind> = {
  car: SymbolKind.Class,
  setup: SymbolKind.Object,
  axle: SymbolKind.Namespace,
  element: SymbolKind.Method,
  part: SymbolKind.Constant,
  case: SymbolKind.Event,
  let: SymbolKind.Variable,
  structure: SymbolKind.Struct,
};

export const symbols: Feature = {
  capabilities: { documentSymbolProvider: true, workspaceSymbolProvider: true },
  attach(connection, session) {
    connection.onDocumentSymbol(({ textDocument }) => {
      const file = session.file(textDocument.uri);
      return outlineOf(file.parsed.document).map((entry) => documentSymbol(file, entry));
    });
    connection.onWorkspaceSymbol(({ query }) => {
      const asked = query.toLowerCase();
      return session.workspace.open().flatMap((uri) => {
        const file = session.workspace.file(uri);
        return matching(outlineOf(file.parsed.document), asked).map((entry) => workspaceSymbol(file, entry));
      });
    });
  },
};

function documentSymbol(file: FileView, entry: Outline): DocumentSymbol {
  const { lines } = file.parsed;
  return {
    name: entry.name,
    detail: entry.detail,
    kind: kinds[entry.kind],
    range: rangeOf(lines, entry.span),
    selectionRange: rangeOf(lines, entry.nameSpan),
    children: entry.children.map((child) => documentSymbol(file, child)),
  };
}

function matching(entries: readonly Outline[], asked: string): readonly Outline[] {
  return entries.flatMap((entry) => [
    ...(entry.kind !== "structure" && entry.name.toLowerCase().includes(asked) ? [entry] : []),
    ...matching(entry.children, asked),
  ]);
}

function workspaceSymbol(file: FileView, entry: Outline): WorkspaceSymbol {
  const location = { uri: file.uri, range: rangeOf(file.parsed.lines, entry.nameSpan) };
  return { name: entry.name, kind: kinds[entry.kind], containerName: entry.detail, location };
}
