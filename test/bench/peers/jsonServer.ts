import {
  getLanguageService,
  type ASTNode,
  type JSONDocument,
  type TextDocument as JsonText,
} from 'vscode-json-languageservice';
import {
  createConnection,
  ProposedFeatures,
  TextDocuments,
  TextDocumentSyncKind,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { JSON_SCHEMA } from '../jsonSchema';

/* The JSON service as a server in the shape of ours: no waiting time, what is parsed is kept for its version. */

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
const service = getLanguageService({});
service.configure({
  validate: true,
  allowComments: false,
  schemas: [{ uri: 'bench://schema', fileMatch: ['*'], schema: JSON_SCHEMA }],
});

const parsed = new Map<string, { readonly version: number; readonly json: JSONDocument }>();
function parse(document: JsonText): JSONDocument & { root?: ASTNode | undefined } {
  const known = parsed.get(document.uri);
  if (known?.version === document.version) return known.json;
  const json = service.parseJSONDocument(document);
  parsed.set(document.uri, { version: document.version, json });
  return json;
}

connection.onInitialize(() => ({
  capabilities: {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    hoverProvider: true,
  },
}));
documents.onDidChangeContent(({ document }) => {
  const { uri, version } = document;
  void service.doValidation(document, parse(document)).then((diagnostics) => {
    void connection.sendDiagnostics({ uri, version, diagnostics });
  });
});
connection.onHover(({ textDocument, position }) => {
  const document = documents.get(textDocument.uri);
  return document ? service.doHover(document, position, parse(document)) : null;
});
documents.listen(connection);
connection.listen();
