import assert from 'node:assert/strict';
import type {
  CodeAction,
  CompletionItem,
  DocumentHighlight,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Range,
  SemanticTokens,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { range, TestClient } from './testClient';
import { MISSPELLED, FRET_4, LANTERN } from './texts';

const URI = 'file:///lantern.pegbox';
const BAD = 'file:///bad.pegbox';
const textDocument = { uri: URI };

/** The text that a range covers. */
function covered(text: string, at: Range): string {
  return TextDocument.create(URI, 'pegbox', 1, text).getText(at);
}

/** The commands of the client that change a passage or say where it might go. */
const COMMANDS = [
  'convert',
  'convertIntoNewPart',
  'refinger',
  'simplify',
  'suit',
  'transpose',
  'moveCapo',
].map((name) => `pegbox.${name}`);

describe('what an editor asks about a document', () => {
  let client: TestClient;
  before(async () => {
    client = await TestClient.start({ initializationOptions: { commands: true } });
    await client.opened(URI, LANTERN);
    await client.opened(BAD, MISSPELLED);
  });
  after(async () => {
    assert.equal(await client.stop(), 0);
    assert.deepEqual(client.log, []);
  });

  it('hover: the note of a fret, at the fret', async () => {
    const hover = await client.request<Hover>('textDocument/hover', { textDocument, position: FRET_4 });
    assert.ok(typeof hover.contents === 'object' && 'kind' in hover.contents);
    // D3 raised by four half steps (equal temperament) is F sharp; in D it is no G flat.
    assert.match(hover.contents.value.split('\n')[0] ?? '', /F[♯#]3/);
    assert.ok(hover.range);
    assert.match(covered(LANTERN, hover.range), /4/);
  });

  it('hover: nothing over an empty line', async () => {
    const position = { line: 3, character: 0 };
    assert.equal(await client.request('textDocument/hover', { textDocument, position }), null);
  });

  it('outline: the section with its system', async () => {
    const symbols = await client.request<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument });
    const all = symbols.flatMap((symbol) => [symbol, ...(symbol.children ?? [])]);
    assert.ok(all.some(({ name }) => name.includes('Verse')));
  });

  it('folding: within the text', async () => {
    const ranges = await client.request<FoldingRange[]>('textDocument/foldingRange', { textDocument });
    assert.notEqual(ranges.length, 0);
    for (const { startLine, endLine } of ranges)
      assert.ok(startLine < endLine && endLine < LANTERN.split('\n').length);
  });

  it('highlights: every place with the same pitch', async () => {
    const found = await client.request<DocumentHighlight[]>('textDocument/documentHighlight', {
      textDocument,
      position: FRET_4,
    });
    assert.deepEqual(
      found.map((highlight) => highlight.range.start),
      [FRET_4, { line: 8, character: 16 }],
    );
  });

  it('completion: tunings after the name of the field, as edits there', async () => {
    const position = { line: 1, character: 8 };
    const context = { triggerKind: 2, triggerCharacter: ' ' };
    const items = await client.request<CompletionItem[]>('textDocument/completion', {
      textDocument,
      position,
      context,
    });
    const drop = items.find(({ label }) => label.toLowerCase() === 'standard');
    assert.ok(drop?.textEdit && 'range' in drop.textEdit);
    assert.equal(drop.textEdit.range.start.line, 1);
    assert.ok(drop.sortText !== undefined);
  });

  it('completion: a space in a system asks for nothing', async () => {
    const position = { line: 8, character: 6 };
    const context = { triggerKind: 2, triggerCharacter: ' ' };
    const params = { textDocument, position, context };
    assert.deepEqual(await client.request('textDocument/completion', params), []);
  });

  it('inlay hints: at the end of the tuning only', async () => {
    const hints = await client.request<InlayHint[]>('textDocument/inlayHint', {
      textDocument,
      range: range(0, 0, 99, 0),
    });
    assert.deepEqual(
      hints.map(({ position }) => position),
      [{ line: 1, character: 14 }],
    );
  });

  it('semantic tokens: in order, without overlap, and in a range only those of the range', async () => {
    const full = await client.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument });
    const part = await client.request<SemanticTokens>('textDocument/semanticTokens/range', {
      textDocument,
      range: range(8, 0, 8, 20),
    });
    const all = decode(full.data);
    assert.ok(all.some(({ line, start, length }) => line === 8 && start <= 8 && start + length > 8));
    const inRange = decode(part.data).filter(({ line }) => line === 8);
    assert.deepEqual(
      inRange,
      all.filter(({ line }) => line === 8),
    );
    all.reduce((last, token) => {
      assert.ok(token.line > last.line || token.start >= last.start + last.length);
      return token;
    });
  });

  it('code actions: the mends of a mistake, the preferred one marked, each leaving a text without it', async () => {
    const actions = await client.request<CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri: BAD },
      range: range(2, 2, 2, 2),
      context: { diagnostics: [], only: ['quickfix'] },
    });
    assert.notEqual(actions.length, 0);
    for (const action of actions) {
      assert.equal(action.kind, 'quickfix');
      assert.equal(action.diagnostics?.length, 1);
      const edits = action.edit?.changes?.[BAD];
      assert.ok(edits);
      const text = TextDocument.applyEdits(TextDocument.create(BAD, 'pegbox', 1, MISSPELLED), edits);
      assert.deepEqual(await client.opened('file:///mended.pegbox', text), [], action.title);
    }
  });

  it('code actions: the rhythm that was worked out, written as a count row', async () => {
    const actions = await client.request<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range: range(8, 0, 8, 0),
      context: { diagnostics: [], only: ['refactor.rewrite'] },
    });
    const edits = actions.find(({ edit }) => edit)?.edit?.changes?.[URI];
    assert.ok(edits);
    const text = TextDocument.applyEdits(TextDocument.create(URI, 'pegbox', 1, LANTERN), edits);
    assert.match(text, /^count \|1.*2.*3.*4/m);
    assert.deepEqual(await client.opened('file:///counted.pegbox', text), []);
  });

  it('code actions: the commands, on a system and when the client has them', async () => {
    const ask = (from: TestClient, line: number): Promise<CodeAction[]> =>
      from.request('textDocument/codeAction', {
        textDocument,
        range: range(line, 0, line, 0),
        context: { diagnostics: [], only: ['refactor'] },
      });
    const actions = await ask(client, 8);
    assert.deepEqual(
      actions.flatMap(({ command }) => command?.command ?? []),
      COMMANDS,
    );
    const [first] = actions.flatMap(({ command }) => command ?? []);
    assert.deepEqual(first?.arguments, [{ uri: URI, range: range(8, 0, 8, 0) }]);
    assert.deepEqual(await ask(client, 0), []);
    const plain = await TestClient.start();
    await plain.opened(URI, LANTERN);
    assert.ok((await ask(plain, 8)).every(({ command }) => command === undefined));
    await plain.stop();
  });
});

function decode(data: readonly number[]): { line: number; start: number; length: number; type: number }[] {
  const tokens = [];
  let line = 0;
  let start = 0;
  for (let i = 0; i < data.length; i += 5) {
    const [down = 0, right = 0, length = 0, type = 0] = data.slice(i, i + 4);
    line += down;
    start = down === 0 ? start + right : right;
    tokens.push({ line, start, length, type });
  }
  return tokens;
}
