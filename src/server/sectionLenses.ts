import type * as lsp from 'vscode-languageserver';
import { lineRange } from '../service/locate';
import { toRange } from './protocolConverter';
import { documentOf, type Guard } from './session';

/** Answers with a line above each section, where the user wants it. Words alone: a click does nothing. */
export function registerSectionLenses(connection: Pick<lsp.Connection, 'onCodeLens'>, guard: Guard): void {
  connection.onCodeLens((params) =>
    guard('lines above sections', [], (session): lsp.CodeLens[] => {
      const open = session.settings.sectionLens ? documentOf(session, params.textDocument) : undefined;
      if (!open) return [];
      return session.service.sectionLens(open.document).map(({ line, text }) => ({
        range: toRange(lineRange(line, 0, 0)),
        command: { title: text, command: '' },
      }));
    }),
  );
}
