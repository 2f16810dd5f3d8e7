/** References and highlights of a name, in every file of the workspace that speaks of it. */
import type { DocumentHighlight, Location } from "vscode-languageserver";
import { nameAt, placesOf } from "../../views/names.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";

export const references: Feature = {
  capabilities: { referencesProvider: true, documentHighlightProvider: true },
  attach(connection, session) {
    connection.onReferences(async ({ textDocument, position, context }): Promise<Location[]> => {
      const file = session.file(textDocument.uri);
      const named = nameAt(file, file.parsed.lines.offset(position));
      if (named === undefined) return [];
      const [declaration, ...others] = placesOf(named.symbol, await session.everyArrivedFile());
      const places = context.includeDeclaration && declaration !== undefined ? [declaration, ...others] : others;
      return places.map((origin) => ({
        uri: origin.uri,
        range: rangeOf(session.file(origin.uri).parsed.lines, origin),
      }));
    });
    connection.onDocumentHighlight(({ textDocument, position }): DocumentHighlight[] => {
      const file = session.file(textDocument.uri);
      const named = nameAt(file, file.parsed.lines.offset(position));
      if (named === undefined) return [];
      const here = placesOf(named.symbol, [file]).filter(({ uri }) => uri === file.uri);
      return here.map((origin) => ({ range: rangeOf(file.parsed.lines, origin) }));
    });
  },
};
