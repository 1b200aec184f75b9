import { assert } from 'chai';
import * as vscode from 'vscode';
import { closeTabs, fret4, lantern, newTab } from './newTab';
import { waitFor } from './waitFor';

/** What a provider of the editor answers, once it answers something. */
function provided<T>(command: string, ...given: unknown[]): Promise<T[]> {
  return waitFor(() => vscode.commands.executeCommand<T[] | undefined>(command, ...given), command);
}

describe('finding the way in the editor', () => {
  let document: vscode.TextDocument;
  let whole: vscode.Range;
  before(async () => {
    ({ document } = await newTab(lantern));
    whole = new vscode.Range(0, 0, document.lineCount, 0);
  });
  after(closeTabs);

  it('hover: the note of a fret', async () => {
    const [hover] = await provided<vscode.Hover>('vscode.executeHoverProvider', document.uri, fret4);
    const [part] = hover?.contents ?? [];
    const text = part instanceof vscode.MarkdownString ? part.value : '';
    assert.match(text.split('\n')[0] ?? '', /F[♯#]3/);
  });

  it('completion: tunings at the value of the field', async () => {
    const at = new vscode.Position(1, 8);
    const list = await waitFor(async () => {
      const { items } = await vscode.commands.executeCommand<vscode.CompletionList>(
        'vscode.executeCompletionItemProvider',
        document.uri,
        at,
        ' ',
      );
      return items.length > 0 && items;
    }, 'completion');
    const labels = list.map(({ label }) => (typeof label === 'string' ? label : label.label).toLowerCase());
    assert.include(labels, 'standard');
  });

  it('outline: the section', async () => {
    const symbols = await provided<vscode.DocumentSymbol>(
      'vscode.executeDocumentSymbolProvider',
      document.uri,
    );
    const all = symbols.flatMap((symbol) => [symbol, ...symbol.children]);
    assert.isTrue(all.some(({ name }) => name.includes('Verse')));
  });

  it('folding: the section', async () => {
    const ranges = await provided<vscode.FoldingRange>('vscode.executeFoldingRangeProvider', document.uri);
    assert.isTrue(ranges.some(({ start }) => start === 4 || start === 5));
  });

  it('highlights: every place of the pitch under the cursor', async () => {
    const places = await provided<vscode.DocumentHighlight>(
      'vscode.executeDocumentHighlights',
      document.uri,
      fret4,
    );
    assert.deepEqual(
      places.map(({ range }) => [range.start.line, range.start.character]),
      [
        [8, 8],
        [8, 16],
      ],
    );
  });

  it('inlay hints: one after the tuning, none inside a system', async () => {
    const hints = await provided<vscode.InlayHint>('vscode.executeInlayHintProvider', document.uri, whole);
    assert.deepEqual(
      hints.map(({ position }) => [position.line, position.character]),
      [[1, 14]],
    );
  });

  it('semantic tokens: frets have a type of their own', async () => {
    const legend = await waitFor(
      () =>
        vscode.commands.executeCommand<vscode.SemanticTokensLegend | undefined>(
          'vscode.provideDocumentRangeSemanticTokensLegend',
          document.uri,
        ),
      'legend',
    );
    assert.include(legend.tokenTypes, 'tabFret');
    const { data } = await vscode.commands.executeCommand<vscode.SemanticTokens>(
      'vscode.provideDocumentRangeSemanticTokens',
      document.uri,
      whole,
    );
    const types = Array.from({ length: data.length / 5 }, (_, i) => legend.tokenTypes[data[i * 5 + 3] ?? -1]);
    assert.isAtLeast(types.filter((type) => type === 'tabFret').length, 6);
  });

  it('every type and modifier of a token is declared, and has a colour', async () => {
    const { contributes } = vscode.extensions.getExtension('pegbox.pegbox')?.packageJSON as {
      contributes: {
        semanticTokenTypes: { id: string }[];
        semanticTokenModifiers: { id: string }[];
        semanticTokenScopes: { scopes: Record<string, string[]> }[];
      };
    };
    const legend = await vscode.commands.executeCommand<vscode.SemanticTokensLegend>(
      'vscode.provideDocumentRangeSemanticTokensLegend',
      document.uri,
    );
    assert.sameMembers(
      contributes.semanticTokenTypes.map(({ id }) => id),
      legend.tokenTypes,
    );
    assert.sameMembers(
      contributes.semanticTokenModifiers.map(({ id }) => id),
      legend.tokenModifiers,
    );
    const scopes = contributes.semanticTokenScopes[0]?.scopes ?? {};
    for (const type of legend.tokenTypes) assert.isNotEmpty(scopes[type] ?? [], type);
  });
});
