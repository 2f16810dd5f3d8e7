/** Rename, with a check beforehand: eyes, elements, parts, cars, set-ups, cases, lets, across files. */
import { ErrorCodes, ResponseError, type WorkspaceEdit } from "vscode-languageserver";
import { nameAt } from "../../views/names.js";
import { rename as renamed } from "../../views/rename.js";
import { rangeOf } from "../convert.js";
import { workspaceEdit } from "../edits.js";
import type { Feature } from "../feature.js";

export const rename: Feature = {
  capabilities: { renameProvider: { prepareProvider: true } },
  attach(connection, session) {
    connection.onPrepareRename(async ({ textDocument, position }) => {
      const file = await session.arrivedFile(textDocument.uri);
      const named = nameAt(file, file.parsed.lines.offset(position));
      return named === undefined
        ? null
        : { range: rangeOf(file.parsed.lines, named.here), placeholder: named.symbol.name };
    });
    type Renamed = WorkspaceEdit | ResponseError | null;
    connection.onRenameRequest(async ({ textDocument, position, newName }): Promise<Renamed> => {
      const file = await session.arrivedFile(textDocument.uri);
      const named = nameAt(file, file.parsed.lines.offset(position));
      if (named === undefined) return null;
      const result = renamed(named.symbol, newName, await session.everyArrivedFile());
      if ("refused" in result) return new ResponseError(ErrorCodes.InvalidParams, result.refused);
      return workspaceEdit(session, result.edits);
    });
  },
};
