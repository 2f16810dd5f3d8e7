/** The floor: a bare server on the same transport and libraries that answers each change with an empty finding list. */
import { createConnection, ProposedFeatures, TextDocumentSyncKind, TextDocuments } from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
connection.onInitialize(() => ({
  capabilities: { textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental } },
}));
documents.onDidChangeContent(({ document }) => {
  void connection.sendDiagnostics({ uri: document.uri, version: document.version, diagnostics: [] });
});
documents.listen(connection);
connection.listen();
