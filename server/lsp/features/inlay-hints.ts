/** Inlay hints: the rate at the wheel or axle behind the line that sets it. */
import { type InlayHint, MarkupKind } from "vscode-languageserver";
import { inlaysIn } from "../../views/inlay.js";
import { spanOf } from "../convert.js";
import type { Feature } from "../feature.js";

export const inlayHints: Feature = {
  capabilities: { inlayHintProvider: true },
  attach(connection, session) {
    connection.languages.inlayHint.on(({ textDocument, range }): InlayHint[] => {
      if (!session.settings.inlayHints) return [];
      const file = session.file(textDocument.uri);
      const { lines } = file.parsed;
      return inlaysIn(file, spanOf(lines, range)).map(({ offset, label, tooltip }) => ({
        position: lines.position(offset),
        label,
        tooltip: { kind: MarkupKind.Markdown, value: tooltip },
      }));
    });
  },
};
