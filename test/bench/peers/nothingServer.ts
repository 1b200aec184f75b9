import { createConnection, ProposedFeatures, TextDocumentSyncKind } from 'vscode-languageserver/node';

/* A server that does nothing but answer: what the protocol alone costs. */

const connection = createConnection(ProposedFeatures.all);

connection.onInitialize(() => ({
  capabilities: {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    hoverProvider: true,
  },
}));
connection.onDidOpenTextDocument(({ textDocument: { uri, version } }) => {
  void connection.sendDiagnostics({ uri, version, diagnostics: [] });
});
connection.onDidChangeTextDocument(({ textDocument: { uri, version } }) => {
  void connection.sendDiagnostics({ uri, version, diagnostics: [] });
});
connection.onHover(() => ({ contents: 'nothing' }));
connection.listen();
