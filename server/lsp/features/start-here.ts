/** `bellcrank.startHere`: writes a starting car into a file that is still empty; the lens above such a file runs it, in any editor. */
import type { Connection } from "vscode-languageserver";
import { startHere as startingCar, startHereTitle } from "../../views/new-car/start-here.js";
import type { Feature } from "../feature.js";
import type { Session } from "../session.js";
import { START_COMMAND } from "../start-lens.js";

export const startHere: Feature = {
  capabilities: { executeCommandProvider: { commands: [START_COMMAND] } },
  attach(connection, session) {
    connection.onExecuteCommand(async ({ command, arguments: given }) => {
      const [uri] = (given ?? []) as readonly unknown[];
      if (command === START_COMMAND && typeof uri === "string") await write(connection, session, uri);
    });
  },
};

async function write(connection: Connection, session: Session, uri: string): Promise<void> {
  const { text, parsed } = session.file(uri);
  const car = startingCar(uri, text);
  if (car === undefined) return;
  const range = { start: { line: 0, character: 0 }, end: parsed.lines.position(text.length) };
  await connection.workspace.applyEdit({
    label: startHereTitle,
    edit: { changes: { [uri]: [{ range, newText: car.text }] } },
  });
}
