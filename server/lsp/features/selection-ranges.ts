/** Selection ranges: name, item, statement, block, and so on outwards. */
import type { SelectionRange } from "vscode-languageserver";
import type { Position } from "../../../grammar/index.js";
import type { FileView } from "../../snapshot/workspace.js";
import { placeAt } from "../../views/place.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";

export const selectionRanges: Feature = {
  capabilities: { selectionRangeProvider: true },
  attach(connection, session) {
    connection.onSelectionRanges(({ textDocument, positions }) => {
      const file = session.file(textDocument.uri);
      return positions.map((position) => selectionAt(file, position));
    });
  },
};

function selectionAt(file: FileView, position: Position): SelectionRange {
  const { document, lines } = file.parsed;
  const [outermost, ...inner] = placeAt(document, lines.offset(position)).chain;
  let selection: SelectionRange = { range: rangeOf(lines, outermost ?? document) };
  for (const node of inner) selection = { range: rangeOf(lines, node), parent: selection };
  return selection;
}
