import { CodeActionKind, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type * as lsp from 'vscode-languageserver';
import type { Place, Range } from '../service/records';
import { clampPlace, clampRange, type OpenDocument } from './documents';
import {
  fromPosition,
  fromRange,
  toCommandActions,
  toCompletionItem,
  toDiagnostic,
  FIX_ALL,
  toDocumentSymbol,
  toFixAll,
  toFoldingRange,
  toHighlight,
  toHover,
  toInlayHint,
  toQuickFix,
  toRange,
  toRewrite,
  toSemanticTokens,
  toTextEdit,
  toWideRewrite,
  withEdits,
} from './protocolConverter';
import { readWideRewrite } from './wideRewriteData';
import { documentOf, type Guard, type Session } from './session';

/** The part of a connection that takes the handlers of language features. */
export type FeatureConnection = Pick<
  lsp.Connection,
  | 'onHover'
  | 'onDocumentSymbol'
  | 'onFoldingRanges'
  | 'onDocumentHighlight'
  | 'onCompletion'
  | 'onCodeAction'
  | 'onPrepareRename'
  | 'onRenameRequest'
  | 'onCodeActionResolve'
  | 'onDocumentFormatting'
  | 'onDocumentRangeFormatting'
  | 'languages'
>;

type PrepareAnswer = { range: lsp.Range; placeholder: string } | ResponseError | null;
type RenameAnswer = lsp.WorkspaceEdit | ResponseError | null;

const NOT_RENAMABLE = 'Only the name of a part can be renamed: put the cursor on the one after part:.';

/** Answers everything that an editor asks about a document. */
export function registerLanguageFeatures(connection: FeatureConnection, guard: Guard): void {
  connection.onHover((params) =>
    guard('hover', null, (session): lsp.Hover | null => {
      const at = locate(session, params);
      const hover = at && session.service.hover(at.open.document, at.place, session.settings);
      return hover ? toHover(hover, session.facts.pictures) : null;
    }),
  );

  connection.onPrepareRename((params) =>
    guard<PrepareAnswer>('renaming', null, (session) => {
      const at = locate(session, params);
      const found = at && session.service.renamable(at.open.document, at.place);
      if (found) return { range: toRange(found.range), placeholder: found.name };
      return new ResponseError(LSPErrorCodes.RequestFailed, NOT_RENAMABLE);
    }),
  );

  connection.onRenameRequest((params) =>
    guard<RenameAnswer>('renaming', null, (session) => {
      const at = locate(session, params);
      if (!at) return null;
      const edits = session.service.rename(at.open.document, at.place, params.newName);
      if ('error' in edits) return new ResponseError(LSPErrorCodes.RequestFailed, edits.error);
      return { changes: { [at.open.uri]: edits.map(toTextEdit) } };
    }),
  );

  connection.onDocumentSymbol((params) =>
    guard('outline', [], (session): lsp.DocumentSymbol[] => {
      const open = documentOf(session, params.textDocument);
      return open ? session.service.outline(open.document).map(toDocumentSymbol) : [];
    }),
  );

  connection.onFoldingRanges((params) =>
    guard('folding', [], (session): lsp.FoldingRange[] => {
      const open = documentOf(session, params.textDocument);
      return open ? session.service.folding(open.document).map(toFoldingRange) : [];
    }),
  );

  connection.onDocumentHighlight((params) =>
    guard('highlights', [], (session): lsp.DocumentHighlight[] => {
      const at = locate(session, params);
      return at ? session.service.highlights(at.open.document, at.place).map(toHighlight) : [];
    }),
  );

  connection.onCompletion((params) =>
    guard('completion', [], (session): lsp.CompletionItem[] => {
      const at = locate(session, params);
      if (!at || !asksForCompletion(at.open, at.place, params.context)) return [];
      return session.service.completion(at.open.document, at.place, session.settings).map(toCompletionItem);
    }),
  );

  connection.languages.inlayHint.on((params) =>
    guard('inlay hints', [], (session): lsp.InlayHint[] => {
      const open = documentOf(session, params.textDocument);
      if (!open) return [];
      const range = clampRange(open.document, fromRange(params.range));
      return session.service.inlayHints(open.document, range).map(toInlayHint);
    }),
  );

  connection.languages.semanticTokens.on((params) =>
    guard('semantic tokens', { data: [] }, (session): lsp.SemanticTokens => {
      const open = documentOf(session, params.textDocument);
      return open ? toSemanticTokens(session.service.semanticTokens(open.document)) : { data: [] };
    }),
  );

  connection.languages.semanticTokens.onRange((params) =>
    guard('semantic tokens', { data: [] }, (session): lsp.SemanticTokens => {
      const open = documentOf(session, params.textDocument);
      if (!open) return { data: [] };
      const range = clampRange(open.document, fromRange(params.range));
      return toSemanticTokens(session.service.semanticTokens(open.document, range));
    }),
  );

  connection.onDocumentFormatting((params) =>
    guard('formatting', [], (session): lsp.TextEdit[] => {
      const open = documentOf(session, params.textDocument);
      return open ? session.service.format(open.document).map(toTextEdit) : [];
    }),
  );

  connection.onDocumentRangeFormatting((params) =>
    guard('formatting', [], (session): lsp.TextEdit[] => {
      const open = documentOf(session, params.textDocument);
      if (!open) return [];
      const range = clampRange(open.document, fromRange(params.range));
      return session.service.format(open.document, range).map(toTextEdit);
    }),
  );

  connection.onCodeActionResolve((action) =>
    guard('a code action', action, (session): lsp.CodeAction => resolved(session, action)),
  );

  connection.onCodeAction((params) => guard('code actions', [], (session) => codeActions(session, params)));
}

function codeActions(session: Session, params: lsp.CodeActionParams): lsp.CodeAction[] {
  const open = documentOf(session, params.textDocument);
  if (!open) return [];
  const range = clampRange(open.document, fromRange(params.range));
  const actions: lsp.CodeAction[] = [];
  if (wants(params.context, CodeActionKind.QuickFix)) {
    const widened = new Set<string>();
    for (const found of session.service.diagnostics(open.document, session.settings)) {
      if (!meet(found.range, range)) continue;
      const diagnostic = toDiagnostic(found, session.facts.helpLink);
      // What reaches over the file is the same for all that say the same: once is enough.
      const wider = widened.has(found.code) ? [] : session.service.widerMends(open.document, found);
      widened.add(found.code);
      for (const mend of [...found.mends, ...wider]) actions.push(toQuickFix(open.uri, mend, diagnostic));
    }
  }
  if (wants(params.context, CodeActionKind.RefactorRewrite)) {
    for (const mend of session.service.rewrites(open.document, range))
      actions.push(toRewrite(open.uri, mend));
    for (const offer of session.service.wideRewrites(open.document, range)) {
      const edits = session.facts.resolvesEdits
        ? undefined
        : session.service.wideRewrite(open.document, range, offer.id);
      actions.push(toWideRewrite(open.uri, range, offer, edits));
    }
    if (session.facts.commands && touchesSystem(open, range))
      actions.push(...toCommandActions(open.uri, range));
  }
  // Worked out where it is asked for by name: it is nothing for the list under a light bulb.
  if (namesKinds(params.context) && wants(params.context, FIX_ALL)) {
    const edits = session.service.fixAll(open.document, session.settings);
    if (edits.length > 0) actions.push(toFixAll(open.uri, edits));
  }
  return actions;
}

/** The edits of an offer that was told without them. */
function resolved(session: Session, action: lsp.CodeAction): lsp.CodeAction {
  const asked = readWideRewrite(action.data);
  const open = asked && documentOf(session, asked);
  if (!open) return action;
  const range = clampRange(open.document, asked.range);
  return withEdits(open.uri, action, session.service.wideRewrite(open.document, range, asked.id));
}

/** A client may ask for some kinds only; `refactor` asks for `refactor.rewrite` too. */
function wants(context: lsp.CodeActionContext | undefined, kind: string): boolean {
  const only = context?.only;
  if (!Array.isArray(only)) return true;
  return only.some((wanted) => wanted === '' || kind === wanted || kind.startsWith(`${wanted}.`));
}

function namesKinds(context: lsp.CodeActionContext | undefined): boolean {
  return Array.isArray(context?.only);
}

function touchesSystem(open: OpenDocument, range: Range): boolean {
  for (let line = range.start.line; line <= range.end.line; line++) {
    if (open.document.systemAt(line)) return true;
  }
  return false;
}

/** Ranges that share a place, their ends included, so that a cursor right after a fret still counts. */
function meet(one: Range, other: Range): boolean {
  return !before(one.end, other.start) && !before(other.end, one.start);
}

function before(one: Place, other: Place): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}

/** A space asks for completion after a field's name only: in a system or a sentence it would be in the way. */
function asksForCompletion(
  open: OpenDocument,
  place: Place,
  context: lsp.CompletionContext | undefined,
): boolean {
  if (context?.triggerCharacter !== ' ') return true;
  return open.document.line(place.line).kind === 'field';
}

function locate(
  session: Session,
  params: lsp.TextDocumentPositionParams,
): { readonly open: OpenDocument; readonly place: Place } | undefined {
  const open = documentOf(session, params.textDocument);
  return open && { open, place: clampPlace(open.document, fromPosition(params.position)) };
}
