/** The lens above a file that is still empty, where the client lets a server edit; its command is the server's own. */
import type { CodeLens } from "vscode-languageserver";
import { startHere, startHereTitle } from "../views/new-car/start-here.js";
import type { Session } from "./session.js";

export const START_COMMAND = "bellcrank.startHere";

export function startLens(session: Session, uri: string): readonly CodeLens[] {
  if (session.client.workspace?.applyEdit !== true || startHere(uri, session.file(uri).text) === undefined) return [];
  const top = { line: 0, character: 0 };
  const command = { title: startHereTitle, command: START_COMMAND, arguments: [uri] };
  return [{ range: { start: top, end: top }, command }];
}
