import { getCSSLanguageService, type Stylesheet } from 'vscode-css-languageservice';
import {
  createConnection,
  ProposedFeatures,
  TextDocuments,
  TextDocumentSyncKind,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

/* The CSS service as a server in the shape of ours: no waiting time, what is parsed is kept for its version. */

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
const service = getCSSLanguageService();

const parsed = new Map<string, { readonly version: number; readonly sheet: Stylesheet }>();
function parse(document: TextDocument): Stylesheet {
  const known = parsed.get(document.uri);
  if (known?.version === document.version) return known.sheet;
  const sheet = service.parseStylesheet(document);
  parsed.set(document.uri, { version: document.version, sheet });
  return sheet;
}

connection.onInitialize(() => ({
  capabilities: {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    hoverProvider: true,
  },
}));
documents.onDidChangeContent(({ document }) => {
  const { uri, version } = document;
  void connection.sendDiagnostics({
    uri,
    version,
    diagnostics: service.doValidation(document, parse(document)),
  });
});
connection.onHover(({ textDocument, position }) => {
  const document = documents.get(textDocument.uri);
  return document ? service.doHover(document, position, parse(document)) : null;
});
documents.listen(connection);
connection.listen();
