/** Folding: every block that spans lines, and runs of comment lines. */
import { type FoldingRange, FoldingRangeKind } from "vscode-languageserver";
import { type Folding, foldingsOf } from "../../views/folding.js";
import type { Feature } from "../feature.js";

export const folding: Feature = {
  capabilities: { foldingRangeProvider: true },
  attach(connection, session) {
    connection.onFoldingRanges(({ textDocument }) =>
      foldingsOf(session.file(textDocument.uri).parsed).map(rangeOfFolding),
    );
  },
};

function rangeOfFolding({ startLine, endLine, comment }: Folding): FoldingRange {
  return comment ? { startLine, endLine, kind: FoldingRangeKind.Comment } : { startLine, endLine };
}
