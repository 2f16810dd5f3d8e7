/** Semantic tokens: words and names coloured by what they are. */
import { SemanticTokensBuilder } from "vscode-languageserver";
import type { Span } from "../../../grammar/index.js";
import type { FileView } from "../../snapshot/workspace.js";
import { tokenModifiers, tokensOf, tokenTypes } from "../../views/semantic-tokens.js";
import { spanOf } from "../convert.js";
import type { Feature } from "../feature.js";

export const semanticTokens: Feature = {
  capabilities: {
    semanticTokensProvider: {
      legend: { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] },
      full: true,
      range: true,
    },
  },
  attach(connection, session) {
    connection.languages.semanticTokens.on(({ textDocument }) => encoded(session.file(textDocument.uri)));
    connection.languages.semanticTokens.onRange(({ textDocument, range }) => {
      const file = session.file(textDocument.uri);
      return encoded(file, spanOf(file.parsed.lines, range));
    });
  },
};

function encoded(file: FileView, within?: Span): { data: number[] } {
  const builder = new SemanticTokensBuilder();
  for (const token of tokensOf(file.parsed.document.entries)) {
    if (within !== undefined && (token.end < within.start || token.start > within.end)) continue;
    const { line, character } = file.parsed.lines.position(token.start);
    builder.push(line, character, token.end - token.start, tokenTypes.indexOf(token.type), token.declares ? 1 : 0);
  }
  return builder.build();
}
