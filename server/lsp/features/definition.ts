/** Go to definition: from a name, eye, part or set-up to the line that declares it. */
import type { Location } from "vscode-languageserver";
import { nameAt } from "../../views/names.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";

export const definition: Feature = {
  capabilities: { definitionProvider: true },
  attach(connection, session) {
    connection.onDefinition(({ textDocument, position }): Location | null => {
      const file = session.file(textDocument.uri);
      const declaration = nameAt(file, file.parsed.lines.offset(position))?.symbol.declaration;
      if (declaration === undefined) return null;
      return { uri: declaration.uri, range: rangeOf(session.file(declaration.uri).parsed.lines, declaration) };
    });
  },
};
