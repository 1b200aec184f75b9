import { CodeActionKind, TextDocumentSyncKind } from 'vscode-languageserver';
import type { InitializeResult } from 'vscode-languageserver';
import type { ClientFacts } from './clientFacts';
import { FIX_ALL, TOKEN_LEGEND } from './protocolConverter';

/** What the server offers to a client. */
export function initializeResult(facts: ClientFacts): InitializeResult {
  return {
    serverInfo: { name: 'Pegbox' },
    capabilities: {
      positionEncoding: 'utf-16',
      // Incremental: a client holds whole texts back for 250 ms (vscode-languageclient 11, lib/common/client.js).
      textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
      hoverProvider: true,
      documentSymbolProvider: true,
      foldingRangeProvider: true,
      documentHighlightProvider: true,
      completionProvider: { triggerCharacters: [':', ' '] },
      renameProvider: { prepareProvider: true },
      inlayHintProvider: true,
      codeLensProvider: {},
      codeActionProvider: {
        codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, FIX_ALL],
        resolveProvider: true,
      },
      documentFormattingProvider: true,
      documentRangeFormattingProvider: true,
      semanticTokensProvider: { legend: TOKEN_LEGEND, full: !facts.tokensByRange, range: true },
    },
  };
}
