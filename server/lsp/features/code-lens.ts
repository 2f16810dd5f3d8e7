/** Code lenses: the rates above each axle, the expectations above each car and set-up. */
import type { CodeLens } from "vscode-languageserver";
import { lensesOf } from "../../views/lens.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";

export const codeLens: Feature = {
  capabilities: { codeLensProvider: {} },
  attach(connection, session) {
    connection.onCodeLens(({ textDocument }): CodeLens[] => {
      if (!session.settings.codeLens) return [];
      const file = session.file(textDocument.uri);
      return lensesOf(file).map(({ span, title }) => ({
        range: rangeOf(file.parsed.lines, span),
        command: { title, command: "" },
      }));
    });
  },
};
