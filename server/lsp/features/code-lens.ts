/** Code lenses: the rates above each axle, the expectations above each car and set-up, how a set-up differs from its base. */
import type { CodeLens, Command } from "vscode-languageserver";
import { type Lens, lensesOf } from "../../views/lens.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";
import type { ShowRatesArguments } from "../protocol.js";
import type { CompareWithBaseArguments } from "../protocol-compare.js";
import type { Session } from "../session.js";
import { startLens } from "../start-lens.js";

const showRates = "bellcrank.showRates";
const compareWithBase = "bellcrank.compareWithBase";

export const codeLens: Feature = {
  capabilities: { codeLensProvider: {} },
  attach(connection, session) {
    connection.onCodeLens(({ textDocument }): CodeLens[] => {
      if (!session.settings.codeLens) return [];
      const file = session.file(textDocument.uri);
      const lenses = lensesOf(file).map((lens) => ({
        range: rangeOf(file.parsed.lines, lens.span),
        command: commandOf(session, textDocument.uri, lens),
      }));
      return [...startLens(session, textDocument.uri), ...lenses];
    });
  },
};

/** A click shows all rates, or the comparison, where the client can; elsewhere the lens is only read. */
function commandOf({ commands }: Session, uri: string, { title, car, against }: Lens): Command {
  if (against !== undefined && commands.has(compareWithBase)) {
    const compared: CompareWithBaseArguments = [uri, car, against.uri, against.name];
    return { title, command: compareWithBase, arguments: [...compared] };
  }
  const shown: ShowRatesArguments = [uri, car];
  return against === undefined && commands.has(showRates)
    ? { title, command: showRates, arguments: [...shown] }
    : { title, command: "" };
}
