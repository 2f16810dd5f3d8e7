/** Document links: the paths after `use` and `csv` lead to their files. */
import type { DocumentLink } from "vscode-languageserver";
import { linksOf } from "../../views/links.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";

export const documentLinks: Feature = {
  capabilities: { documentLinkProvider: {} },
  attach(connection, session) {
    connection.onDocumentLinks(({ textDocument }): DocumentLink[] => {
      const file = session.file(textDocument.uri);
      return linksOf(file).map(({ span, target }) => ({ range: rangeOf(file.parsed.lines, span), target }));
    });
  },
};
