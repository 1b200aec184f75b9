import {
  CodeActionKind,
  CompletionItemKind,
  DiagnosticSeverity,
  DocumentHighlightKind,
  FoldingRangeKind,
  InsertTextFormat,
  MarkupKind,
  SymbolKind,
} from 'vscode-languageserver';
import type * as lsp from 'vscode-languageserver';
import {
  SEMANTIC_TOKEN_MODIFIERS,
  SEMANTIC_TOKEN_TYPES,
  type CompletionItem,
  type Diagnostic,
  type FoldingRange,
  type Hover,
  type InlayHint,
  type Mend,
  type OutlineItem,
  type Picture,
  type Place,
  type Range,
  type SemanticToken,
  type Severity,
  type TextEdit,
} from '../service/records';
import { svgDataUri } from '../service/grip/dataUri';
import type { WideRewrite } from '../service/mends/wideRewrite';
import type { ChangeResult, Variant } from '../service/serviceApi';
import type { TextChange } from './documents';
import type { ChangeAnswer, ChangeVariant } from './requests';

/**
 * The one file that turns plain records into protocol types and back. Both count lines from 0 and characters in
 * UTF-16 units, so places differ in name only.
 */

/** The name under which diagnostics appear. */
export const SOURCE = 'pegbox';

/** Stands for the code in the address of a diagnostic's help. */
export const CODE_SLOT = '{code}';

/** Command of the client behind each refactoring that is offered as a code action. */
export const COMMAND_ACTIONS = [
  { title: 'Convert to another tuning…', command: 'pegbox.convert' },
  { title: 'Convert into a new part…', command: 'pegbox.convertIntoNewPart' },
  { title: 'Refinger…', command: 'pegbox.refinger' },
  { title: 'Simplify for a student…', command: 'pegbox.simplify' },
  { title: 'Find the tuning that suits…', command: 'pegbox.suit' },
  { title: 'Transpose…', command: 'pegbox.transpose' },
  { title: 'Move the capo…', command: 'pegbox.moveCapo' },
] as const;

export const TOKEN_LEGEND: lsp.SemanticTokensLegend = {
  tokenTypes: [...SEMANTIC_TOKEN_TYPES],
  tokenModifiers: [...SEMANTIC_TOKEN_MODIFIERS],
};

const SEVERITIES: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

const SYMBOLS: Readonly<Record<OutlineItem['kind'], SymbolKind>> = {
  part: SymbolKind.Module,
  section: SymbolKind.Namespace,
  system: SymbolKind.Array,
};

const COMPLETIONS: Readonly<Record<CompletionItem['kind'], CompletionItemKind>> = {
  field: CompletionItemKind.Field,
  value: CompletionItemKind.Value,
  row: CompletionItemKind.Keyword,
  system: CompletionItemKind.Snippet,
};

export function fromPosition(position: lsp.Position): Place {
  return { line: position.line, character: position.character };
}

export function fromRange(range: lsp.Range): Range {
  return { start: fromPosition(range.start), end: fromPosition(range.end) };
}

export function fromContentChange(change: lsp.TextDocumentContentChangeEvent): TextChange {
  return { range: 'range' in change ? fromRange(change.range) : undefined, text: change.text };
}

export function toPosition(place: Place): lsp.Position {
  return { line: place.line, character: place.character };
}

export function toRange(range: Range): lsp.Range {
  return { start: toPosition(range.start), end: toPosition(range.end) };
}

export function toTextEdit(edit: TextEdit): lsp.TextEdit {
  return { range: toRange(edit.range), newText: edit.newText };
}

/** With `helpLink`, an address with `{code}` in it, the diagnostic links to what is written about its code. */
export function toDiagnostic(diagnostic: Diagnostic, helpLink: string | undefined): lsp.Diagnostic {
  const converted: lsp.Diagnostic = {
    range: toRange(diagnostic.range),
    severity: SEVERITIES[diagnostic.severity],
    code: diagnostic.code,
    source: SOURCE,
    message: diagnostic.message,
  };
  if (helpLink !== undefined) {
    converted.codeDescription = { href: helpLink.replaceAll(CODE_SLOT, encodeURIComponent(diagnostic.code)) };
  }
  return converted;
}

/** A mend as a quick fix: one edit of the one document, so one undo step. */
export function toQuickFix(uri: string, mend: Mend, diagnostic: lsp.Diagnostic): lsp.CodeAction {
  return {
    title: mend.title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    isPreferred: mend.preferred,
    edit: { changes: { [uri]: mend.edits.map(toTextEdit) } },
  };
}

/** What a user names to have the harmless mends done on saving. */
export const FIX_ALL = `${CodeActionKind.SourceFixAll}.pegbox`;

/** All harmless mends at once. */
export function toFixAll(uri: string, edits: readonly TextEdit[]): lsp.CodeAction {
  return {
    title: 'Mend all that changes no sound',
    kind: FIX_ALL,
    edit: { changes: { [uri]: edits.map(toTextEdit) } },
  };
}

/** A change that is on offer where nothing is wrong. */
export function toRewrite(uri: string, mend: Mend): lsp.CodeAction {
  return {
    title: mend.title,
    kind: CodeActionKind.RefactorRewrite,
    edit: { changes: { [uri]: mend.edits.map(toTextEdit) } },
  };
}

/** A change of many systems; without edits they are asked for when it is taken. */
export function toWideRewrite(
  uri: string,
  range: Range,
  { id, title }: WideRewrite,
  edits: readonly TextEdit[] | undefined,
): lsp.CodeAction {
  const action: lsp.CodeAction = { title, kind: CodeActionKind.RefactorRewrite };
  return edits ? withEdits(uri, action, edits) : { ...action, data: { uri, range: toRange(range), id } };
}

/** An action with its edits of the one document. */
export function withEdits(uri: string, action: lsp.CodeAction, edits: readonly TextEdit[]): lsp.CodeAction {
  return { ...action, edit: { changes: { [uri]: edits.map(toTextEdit) } } };
}

/** The refactorings that the client carries out, since they ask the user what to do. */
export function toCommandActions(uri: string, range: Range): lsp.CodeAction[] {
  return COMMAND_ACTIONS.map(({ title, command }) => ({
    title,
    kind: CodeActionKind.RefactorRewrite,
    command: { title, command, arguments: [{ uri, range: toRange(range) }] },
  }));
}

/** With `pictures` a picture stands among the words; a client that shows none would print its address. */
export function toHover({ markdown, range, picture }: Hover, pictures: boolean): lsp.Hover {
  const value = picture && pictures ? withPicture(markdown, picture) : markdown;
  return { contents: { kind: MarkupKind.Markdown, value }, range: toRange(range) };
}

function withPicture(markdown: string, { svg, alt, at }: Picture): string {
  const image = `![${alt.replace(/[\\[\]]/g, '')}](${svgDataUri(svg)})`;
  return `${markdown.slice(0, at)}\n\n${image}${markdown.slice(at)}`;
}

/** The protocol wants a name that is not blank, and the selection inside the range. */
export function toDocumentSymbol(item: OutlineItem): lsp.DocumentSymbol {
  return {
    name: item.name.trim() === '' ? item.kind : item.name,
    detail: item.detail,
    kind: SYMBOLS[item.kind],
    range: toRange(item.range),
    selectionRange: toRange(contains(item.range, item.selection) ? item.selection : item.range),
    children: item.children.map(toDocumentSymbol),
  };
}

export function toFoldingRange(range: FoldingRange): lsp.FoldingRange {
  return { startLine: range.startLine, endLine: range.endLine, kind: FoldingRangeKind.Region };
}

export function toHighlight(range: Range): lsp.DocumentHighlight {
  return { range: toRange(range), kind: DocumentHighlightKind.Text };
}

export function toCompletionItem(item: CompletionItem): lsp.CompletionItem {
  const converted: lsp.CompletionItem = {
    label: item.label,
    kind: COMPLETIONS[item.kind],
    sortText: item.sortText,
    insertTextFormat: InsertTextFormat.PlainText,
    textEdit: toTextEdit(item.edit),
  };
  if (item.filterText !== undefined) converted.filterText = item.filterText;
  if (item.moreEdits && item.moreEdits.length > 0)
    converted.additionalTextEdits = item.moreEdits.map(toTextEdit);
  if (item.detail !== '') converted.detail = item.detail;
  if (item.documentation !== '') {
    converted.documentation = { kind: MarkupKind.Markdown, value: item.documentation };
  }
  return converted;
}

export function toInlayHint(hint: InlayHint): lsp.InlayHint {
  return {
    position: toPosition(hint.place),
    label: hint.label,
    tooltip: hint.tooltip,
    paddingLeft: true,
  };
}

/** Five numbers a token, each place relative to the one before; `tokens` in the order of the text. */
export function toSemanticTokens(tokens: readonly SemanticToken[]): lsp.SemanticTokens {
  const data: number[] = [];
  let line = 0;
  let start = 0;
  for (const token of tokens) {
    const type = SEMANTIC_TOKEN_TYPES.indexOf(token.type);
    let modifiers = 0;
    for (const modifier of token.modifiers) modifiers |= 1 << SEMANTIC_TOKEN_MODIFIERS.indexOf(modifier);
    const sameLine = token.line === line;
    data.push(token.line - line, sameLine ? token.start - start : token.start, token.length, type, modifiers);
    line = token.line;
    start = token.start;
  }
  return { data };
}

export function toChangeAnswer(result: ChangeResult, version: number): ChangeAnswer {
  if ('error' in result) return result;
  const { alternatives, goesOn, selects } = result;
  return {
    version,
    ...toVariant(result),
    ...(alternatives !== undefined && { alternatives: alternatives.map(toVariant) }),
    ...(goesOn !== undefined && { goesOn }),
    ...(selects !== undefined && { selects }),
  };
}

function toVariant({ edits, report, title }: Variant): ChangeVariant {
  return { edits: edits.map(toTextEdit), report, ...(title !== undefined && { title }) };
}

function contains(outer: Range, inner: Range): boolean {
  return !before(inner.start, outer.start) && !before(outer.end, inner.end);
}

function before(one: Place, other: Place): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}
