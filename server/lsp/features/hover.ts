/** Hover: the figures of the element, axle or expectation under the pointer, and what the word means. */
import { MarkupKind } from "vscode-languageserver";
import { hoverAt } from "../../views/hover.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";

export const hover: Feature = {
  capabilities: { hoverProvider: true },
  attach(connection, session) {
    connection.onHover(({ textDocument, position }) => {
      const file = session.file(textDocument.uri);
      const found = hoverAt(file, file.parsed.lines.offset(position), session.showsPlots);
      if (found === undefined) return null;
      const contents = { kind: MarkupKind.Markdown, value: found.markdown };
      return { contents, range: rangeOf(file.parsed.lines, found.span) };
    });
  },
};
