/** Type hierarchy of set-ups: what one derives from, and every set-up of the workspace that derives from it. */
import { SymbolKind, type TypeHierarchyItem } from "vscode-languageserver";
import {
  baseOf,
  type Declaration,
  declarationAt,
  declarationCalled,
  derivedFrom,
} from "../../views/origins/derivation.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";
import type { Session } from "../session.js";

export const typeHierarchy: Feature = {
  capabilities: { typeHierarchyProvider: true },
  attach(connection, session) {
    const { typeHierarchy: asked } = connection.languages;
    const fileOf = (uri: string) => session.file(uri);
    asked.onPrepare(async ({ textDocument, position }) => {
      const file = await session.arrivedFile(textDocument.uri);
      const found = declarationAt(file, file.parsed.lines.offset(position), fileOf);
      return found === undefined ? null : [itemOf(session, found)];
    });
    asked.onSupertypes(({ item }) => {
      const declared = declarationOf(session, item);
      const base = declared && baseOf(declared, fileOf);
      return base === undefined ? [] : [itemOf(session, base)];
    });
    asked.onSubtypes(async ({ item }) => {
      const declared = declarationOf(session, item);
      if (declared === undefined) return [];
      const files = await session.everyArrivedFile();
      return derivedFrom(declared, files).map((one) => itemOf(session, one));
    });
  },
};

/** An item is kept by the editor while texts change: it is found again by its name. */
const declarationOf = (session: Session, { uri, name }: TypeHierarchyItem): Declaration | undefined =>
  declarationCalled(session.file(uri), name);

function itemOf(
  session: Session,
  { kind, name, title, from, uri, statement, nameSpan }: Declaration,
): TypeHierarchyItem {
  const { lines } = session.file(uri).parsed;
  return {
    name,
    kind: kind === "car" ? SymbolKind.Class : SymbolKind.Object,
    detail: from === undefined ? (title ?? kind) : `from ${from}`,
    uri,
    range: rangeOf(lines, statement),
    selectionRange: rangeOf(lines, nameSpan),
  };
}
