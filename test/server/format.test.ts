import assert from 'node:assert/strict';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { CodeAction, TextEdit } from 'vscode-languageserver/node';
import { range, TestClient } from './testClient';

const URI = 'file:///ragged.pegbox';
const RAGGED = 'instrument: ukulele\r\n\r\nA |0–––|\r\nEb|----\r\nC|----|\r\nG|----|\r\n';
const IN_ORDER = 'instrument: ukulele\r\n\r\nA |0---|\r\nEb|----|\r\nC |----|\r\nG |----|\r\n';

/** Oracle for what edits mean: vscode-languageserver-textdocument, the protocol authors' own document. */
function applied(text: string, edits: readonly TextEdit[]): string {
  return TextDocument.applyEdits(TextDocument.create(URI, 'pegbox', 1, text), [...edits]);
}

function editsOf({ edit }: CodeAction): readonly TextEdit[] {
  return edit?.changes?.[URI] ?? [];
}

const OPTIONS = { tabSize: 4, insertSpaces: true };

describe('formatting over the protocol', () => {
  let client: TestClient;
  before(async () => (client = await TestClient.start()));
  after(async () => {
    assert.equal(await client.stop(), 0);
    assert.deepEqual(client.log, []);
  });
  afterEach(() => client.close(URI));

  it('is offered for documents and ranges, and not while typing', () => {
    const { capabilities } = client.result ?? {};
    assert.equal(capabilities?.documentFormattingProvider, true);
    assert.equal(capabilities.documentRangeFormattingProvider, true);
    assert.equal(capabilities.documentOnTypeFormattingProvider, undefined);
  });

  it('sets a document in order and keeps its line ends', async () => {
    await client.open(URI, RAGGED);
    const ask = { textDocument: { uri: URI }, options: OPTIONS };
    const edits = await client.request<TextEdit[]>('textDocument/formatting', ask);
    assert.equal(applied(RAGGED, edits), IN_ORDER);
  });

  it('sets the systems of a range in order', async () => {
    const text = `${RAGGED}\r\n${RAGGED}`;
    await client.open(URI, text);
    const ask = { textDocument: { uri: URI }, options: OPTIONS, range: range(2, 0, 3, 1) };
    const edits = await client.request<TextEdit[]>('textDocument/rangeFormatting', ask);
    assert.equal(applied(text, edits), `${IN_ORDER}\r\n${RAGGED}`);
  });

  it('has nothing to say of a document that is not open', async () => {
    const ask = { textDocument: { uri: 'file:///closed.pegbox' }, options: OPTIONS };
    assert.deepEqual(await client.request('textDocument/formatting', ask), []);
  });
});

describe('mends over the protocol', () => {
  const actions = (
    client: TestClient,
    at: [number, number, number, number],
    only?: string[],
  ): Promise<CodeAction[]> =>
    client.request('textDocument/codeAction', {
      textDocument: { uri: URI },
      range: range(...at),
      context: { diagnostics: [], ...(only && { only }) },
    });
  const RESOLVES = { textDocument: { codeAction: { resolveSupport: { properties: ['edit'] } } } };
  const UNCOUNTED = `instrument: ukulele\n\n${'A|0-2-4-5-|\nE|--------|\nC|--------|\nG|--------|\n\n'.repeat(2)}`;

  it('all that are harmless come as one action, where it is asked for by name', async () => {
    const client = await TestClient.start();
    await client.open(URI, RAGGED);
    for (const only of ['source.fixAll.pegbox', 'source.fixAll', 'source']) {
      const [action, ...others] = await actions(client, [0, 0, 6, 0], [only]);
      assert.ok(action);
      assert.deepEqual(others, []);
      assert.equal(action.kind, 'source.fixAll.pegbox');
      assert.equal(applied(RAGGED, editsOf(action)), RAGGED.replace('–––', '---'));
    }
    const all = await actions(client, [2, 0, 2, 5]);
    assert.ok(all.length > 0 && all.every(({ kind }) => kind !== 'source.fixAll.pegbox'));
    assert.deepEqual(await actions(client, [2, 0, 2, 5], ['source.fixAll.eslint']), []);
    assert.equal(await client.stop(), 0);
  });

  it('mark the one that is surely meant', async () => {
    const client = await TestClient.start();
    await client.open(URI, RAGGED);
    const quick = await actions(client, [2, 0, 2, 9], ['quickfix']);
    assert.deepEqual(
      quick.map(({ title, isPreferred }) => [title, isPreferred]),
      [['Write plain - and | in this system', true]],
    );
    assert.equal(await client.stop(), 0);
  });

  it('of many systems come with their edits, or get them when they are taken', async () => {
    const texts: string[] = [];
    for (const capabilities of [{}, RESOLVES]) {
      const client = await TestClient.start({ capabilities });
      await client.open(URI, UNCOUNTED);
      const offered = await actions(client, [2, 0, 2, 0], ['refactor']);
      const action = offered.find(({ title }) => title.startsWith('Write the counts of the file'));
      assert.ok(action, JSON.stringify(offered.map(({ title }) => title)));
      assert.equal(action.edit === undefined, 'textDocument' in capabilities);
      const taken = action.edit ? action : await client.request<CodeAction>('codeAction/resolve', action);
      texts.push(applied(UNCOUNTED, editsOf(taken)));
      const strange = { title: 'x', data: { uri: URI, range: 3, id: 'counts-of-file' } };
      assert.deepEqual(await client.request('codeAction/resolve', strange), strange);
      assert.equal(await client.stop(), 0);
      assert.deepEqual(client.log, []);
    }
    assert.equal(texts[0], texts[1]);
    assert.equal(texts[0]?.match(/^count \|1 2 3 4 \|$/gm)?.length, 2, texts[0]);
  });
});
