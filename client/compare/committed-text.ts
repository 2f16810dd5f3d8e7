/** Files as they were committed, read-only: where a line of a comparison's older side leads to. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type {
  CommittedTextAnswer,
  CommittedTextMethod,
  CommittedTextParams,
} from "../../server/lsp/protocol-compare.js";

const SCHEME = "bellcrank-committed";
const METHOD: CommittedTextMethod = "bellcrank/committedText";

/** The name of the file stays, so that the editor knows its language. */
export const committedUri = (uri: vscode.Uri, revision: string): vscode.Uri =>
  uri.with({ scheme: SCHEME, query: JSON.stringify({ uri: uri.toString(), revision } satisfies CommittedTextParams) });

export function registerCommittedText(client: BaseLanguageClient): vscode.Disposable {
  return vscode.workspace.registerTextDocumentContentProvider(SCHEME, {
    async provideTextDocumentContent(page, cancel) {
      const params = JSON.parse(page.query) as CommittedTextParams;
      const answer = await client.sendRequest<CommittedTextAnswer>(METHOD, params, cancel);
      return "text" in answer ? answer.text : `# ${answer.why}\n`;
    },
  });
}
