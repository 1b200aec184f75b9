import assert from 'node:assert/strict';
import { ResponseError, type Hover } from 'vscode-languageserver/node';
import { range, TestClient } from './testClient';
import { FRET_4, LANTERN } from './texts';

const URI = 'file:///lantern.pegbox';
const AT = { textDocument: { uri: 'file:///unknown.pegbox' }, position: { line: 0, character: 0 } };
const WHOLE = range(0, 0, 9, 0);

/** Every request with the answer for a document that is not there. */
const REQUESTS: readonly (readonly [method: string, params: object, empty: unknown])[] = [
  ['textDocument/hover', AT, null],
  ['textDocument/documentSymbol', AT, []],
  ['textDocument/foldingRange', AT, []],
  ['textDocument/documentHighlight', AT, []],
  ['textDocument/completion', AT, []],
  ['textDocument/inlayHint', { ...AT, range: WHOLE }, []],
  ['textDocument/semanticTokens/full', AT, { data: [] }],
  ['textDocument/semanticTokens/range', { ...AT, range: WHOLE }, { data: [] }],
  ['textDocument/codeAction', { ...AT, range: WHOLE, context: { diagnostics: [] } }, []],
  ['pegbox/passages', { uri: 'file:///unknown.pegbox', selection: WHOLE }, { passages: [] }],
  [
    'pegbox/counterpart',
    { uri: 'file:///unknown.pegbox', position: AT.position, there: 'file:///other.pegbox' },
    {},
  ],
  ['pegbox/tuningChoices', { uri: 'file:///unknown.pegbox', position: AT.position }, []],
];

const SENTENCES: readonly (readonly [method: string, params: object])[] = [
  ['pegbox/convert', { uri: 'file:///unknown.pegbox', tuning: 'DADGAD', keep: 'sound' }],
  ['pegbox/transpose', { uri: 'file:///unknown.pegbox', by: 2 }],
  ['pegbox/moveCapo', { uri: 'file:///unknown.pegbox', capo: '2', keep: 'sound' }],
  ['pegbox/refinger', { uri: 'file:///unknown.pegbox', objective: 'lower' }],
  ['pegbox/simplify', { uri: 'file:///unknown.pegbox', fingers: 2 }],
  ['pegbox/suit', { uri: 'file:///unknown.pegbox', within: 1 }],
  ['pegbox/readTuning', { uri: 'file:///unknown.pegbox', position: AT.position, value: 'DADGAD' }],
];

describe('whatever a client sends', () => {
  let client: TestClient;
  beforeEach(async () => {
    client = await TestClient.start();
    await client.opened(URI, LANTERN);
  });
  afterEach(async () => {
    // Still alive and right.
    const hover = await client.request<Hover>('textDocument/hover', {
      textDocument: { uri: URI },
      position: FRET_4,
    });
    assert.ok(hover.range);
    assert.equal(await client.stop(), 0);
  });

  for (const [method, params, empty] of REQUESTS) {
    it(`${method} about an unknown document is answered with nothing`, async () => {
      assert.deepEqual(await client.request(method, params), empty);
      assert.deepEqual(client.log, []);
    });
    it(`${method} with malformed parameters is answered with nothing, and logged`, async () => {
      assert.deepEqual(await client.request(method, { textDocument: 7, uri: {} }), empty);
      assert.deepEqual(await client.request(method, { textDocument: null }).catch(refused), empty);
    });
  }

  for (const [method, params] of SENTENCES) {
    it(`${method} about an unknown document is answered with a sentence`, async () => {
      const answer = await client.request<{ error: string }>(method, params);
      assert.match(answer.error, /^[A-Z“].*\.$/s);
    });
    it(`${method} with malformed parameters is answered with a sentence`, async () => {
      const answer = await client.request<{ error: string }>(method, { uri: URI, position: 'x', range: 3 });
      assert.match(answer.error, /^[A-Z“].*\.$/s);
    });
  }

  for (const [method, params, expected] of [
    ['pegbox/convert', { tuning: 7 }, /^The parameter tuning was expected as text\.$/],
    ['pegbox/convert', { keep: 'socks' }, /^The parameter keep was .* one of sound, shapes, function\.$/],
    ['pegbox/convert', { alternatives: 'many' }, /^The parameter alternatives was expected as a number\.$/],
    ['pegbox/refinger', {}, /^The parameter objective was expected as one of lower, /],
    [
      'pegbox/refinger',
      { objective: 'strings', strings: ['a'] },
      /^The parameter strings .* a list of numbers\.$/,
    ],
    ['pegbox/simplify', { barres: 'no' }, /^The parameter barres was expected as true or false\.$/],
    ['pegbox/simplify', {}, /at least one limit/],
    ['pegbox/suit', { within: [] }, /^The parameter within was expected as a number\.$/],
    ['pegbox/suit', { within: 9 }, /0 to 3 half steps/],
  ] as const) {
    it(`${method} with ${JSON.stringify(params)} says what was expected`, async () => {
      const answer = await client.request<{ error: string }>(method, { uri: URI, ...params });
      assert.match(answer.error, expected);
      assert.deepEqual(client.log, []);
    });
  }

  it('edits of an unknown document are passed over', async () => {
    await client.change('file:///unknown.pegbox', { range: WHOLE, text: 'x' });
    await client.close('file:///unknown.pegbox');
  });

  for (const params of [
    null,
    {},
    { textDocument: {} },
    { textDocument: { uri: URI, version: 'x', text: 5 } },
  ]) {
    it(`malformed news of texts are passed over: ${JSON.stringify(params)}`, async () => {
      for (const method of ['didOpen', 'didChange', 'didClose']) {
        const other: unknown = JSON.parse(JSON.stringify(params).replace(URI, 'file:///other.pegbox'));
        await client.notify(`textDocument/${method}`, other);
      }
      await client.notify('textDocument/didChange', {
        textDocument: { uri: 'file:///other.pegbox', version: 3 },
        contentChanges: [{ range: 'x', text: 3 }],
      });
    });
  }

  it('places that are no places are answered', async () => {
    for (const position of [
      { line: -1, character: -5 },
      { line: 1e9, character: 1e9 },
      { line: 0.5, character: 0.5 },
    ]) {
      await client.request('textDocument/hover', { textDocument: { uri: URI }, position });
      await client.request('textDocument/completion', { textDocument: { uri: URI }, position });
    }
    assert.deepEqual(client.log, []);
  });
});

/** A request that the library itself refuses counts as answered with its error. */
function refused(error: unknown): unknown {
  assert.ok(error instanceof ResponseError);
  throw error;
}
