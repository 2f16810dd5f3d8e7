/** Files and folders that are called otherwise or moved: the lines that lead to them follow, in every file of the workspace. */
import type { FileOperationRegistrationOptions, WorkspaceEdit } from "vscode-languageserver";
import { editsForMoves } from "../../views/moved-files.js";
import { workspaceEdit } from "../edits.js";
import type { Feature } from "../feature.js";
import { normalUri } from "../session.js";

/** Folders too: what lies in them moves with them. */
const willRename: FileOperationRegistrationOptions = {
  filters: [{ pattern: { glob: "**/*.{crank,csv}", matches: "file" } }, { pattern: { glob: "**", matches: "folder" } }],
};

export const moveFiles: Feature = {
  capabilities: { workspace: { fileOperations: { willRename } } },
  attach(connection, session) {
    connection.workspace.onWillRenameFiles(async ({ files }): Promise<WorkspaceEdit | null> => {
      const moves = files.map(({ oldUri, newUri }) => ({ from: normalUri(oldUri), to: normalUri(newUri) }));
      const edits = editsForMoves(await session.everyArrivedFile(), moves);
      return edits.length === 0 ? null : workspaceEdit(session, edits);
    });
  },
};
