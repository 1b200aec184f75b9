import assert from 'node:assert/strict';
import { TextEdit, type WorkspaceEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { FindAnswer, LibraryAnswer } from '../../src/server/requests';
import type { CompareAnswer } from '../../src/service/compare/compareAnswer';
import type { ServiceError } from '../../src/service/serviceApi';
import { TestClient } from './testClient';

const OPEN = 'file:///songs/open.pegbox';
const OTHER = 'file:///songs/other.pegbox';
const TUNE = 'title: Tune\ntuning: DADGAD\n\nD4 |0---2---5-------|\n';
const ELSEWHERE = 'title: Elsewhere\ncapo: 3\n\nG3 |--------2-------|\nD3 |2---4-----------|\n';
const SELECTED = [{ start: { line: 3, character: 0 }, end: { line: 3, character: 21 } }];

describe('many files over the wire', () => {
  let client: TestClient;
  const files = (stamp: string) => [
    { uri: OPEN, stamp: 'saved' },
    { uri: OTHER, stamp },
  ];
  const ask = <Answer>(name: string, params: object): Promise<Answer | ServiceError> =>
    client.request(`pegbox/${name}`, params);
  const find = async (stamp: string, wish: object = {}): Promise<FindAnswer> => {
    const asked = { uri: OPEN, ranges: SELECTED, files: files(stamp), ...wish };
    const answer = await ask<FindAnswer>('findBySound', asked);
    assert.ok(!('error' in answer), JSON.stringify(answer));
    return answer;
  };

  before(async () => {
    client = await TestClient.start();
    await client.opened(OPEN, TUNE);
  });
  after(async () => assert.equal(await client.stop(), 0));

  it('asks for the texts it does not know, finds in them, and asks again when they have changed', async () => {
    const first = await find('1');
    assert.deepEqual(
      [first.name, first.together, first.missing, first.found],
      ['D4 E4 G4', false, [OTHER], []],
    );
    assert.deepEqual(await ask('readFiles', { files: [{ uri: OTHER, stamp: '1', text: ELSEWHERE }] }), {});
    const second = await find('1');
    assert.deepEqual(second.missing, []);
    assert.deepEqual(
      second.found.map(({ uri, title, passages }) => [uri, title, passages.map(({ words }) => words)]),
      [[OTHER, 'Elsewhere', ['bar 1; standard, capo 3; 7 half steps down']]],
    );
    assert.deepEqual((await find('2')).missing, [OTHER]);
  });

  it('counts an open document as it stands, saved or not', async () => {
    await ask('readFiles', { files: [{ uri: OTHER, stamp: '3', text: ELSEWHERE }] });
    await client.opened(OTHER, ELSEWHERE.replace('capo: 3', 'capo: 5'));
    assert.match((await find('3')).found[0]?.passages[0]?.words ?? '', /capo 5; 5 half steps down$/);
    await client.notify('textDocument/didClose', { textDocument: { uri: OTHER } });
    assert.deepEqual((await find('3')).missing, [OTHER]);
  });

  it('tells tunings, capos, keys and range of every file', async () => {
    await ask('readFiles', { files: [{ uri: OTHER, stamp: '4', text: ELSEWHERE }] });
    const answer = await ask<LibraryAnswer>('library', { files: files('4') });
    assert.ok(!('error' in answer));
    assert.deepEqual(
      answer.files.map(({ entry: { title, tunings, capos, range } }) => [title, tunings, capos, range?.low]),
      [
        ['Tune', ['DADGAD'], ['none'], 'D4'],
        ['Elsewhere', ['standard'], ['3'], 'G3'],
      ],
    );
  });

  it('compares an earlier text with what is open', async () => {
    const answer = await ask<CompareAnswer>('compare', { uri: OPEN, before: TUNE.replace('5---', '7---') });
    assert.ok(!('error' in answer));
    assert.deepEqual([answer.counts.same, answer.counts.repitched], [2, 1]);
  });

  it('says in a sentence what it cannot read', async () => {
    const cases: readonly (readonly [string, object, RegExp])[] = [
      ['findBySound', { uri: OPEN, ranges: SELECTED, files: 7 }, /list of addresses/],
      ['findBySound', { uri: OPEN, ranges: SELECTED, files: [], by: 'smell' }, /one of tune, chords/],
      ['findBySound', { uri: OPEN, ranges: [], files: [] }, /Select the notes/],
      ['findBySound', { uri: 'file:///none', ranges: [], files: [] }, /not open/],
      ['readFiles', { files: [{ uri: OTHER }] }, /list of addresses/],
      ['library', {}, /list of addresses/],
      ['compare', { uri: OPEN }, /before was expected as text/],
    ];
    for (const [name, params, said] of cases)
      assert.match(JSON.stringify(await ask(name, params)), said, name);
  });

  it('renames a part, and refuses with a sentence', async () => {
    const uri = 'file:///parts.pegbox';
    const text = 'part: low\n\nE2 |0---|\n\npart: high\n\nE4 |0---|\n\npart: low\n\nE2 |3---|\n';
    await client.opened(uri, text);
    const at = { textDocument: { uri }, position: { line: 0, character: 7 } };
    assert.deepEqual(await client.request('textDocument/prepareRename', at), {
      range: { start: { line: 0, character: 6 }, end: { line: 0, character: 9 } },
      placeholder: 'low',
    });
    const edit = await client.request<WorkspaceEdit>('textDocument/rename', { ...at, newName: 'bass' });
    const document = TextDocument.create(uri, 'pegbox', 1, text);
    assert.equal(
      TextDocument.applyEdits(document, edit.changes?.[uri] ?? []),
      text.replaceAll('low', 'bass'),
    );
    await assert.rejects(
      client.request('textDocument/rename', { ...at, newName: 'high' }),
      /called high already/,
    );
    const system = { ...at, position: { line: 2, character: 4 } };
    await assert.rejects(client.request('textDocument/prepareRename', system), /Only the name of a part/);
    assert.ok(TextEdit.is(edit.changes?.[uri]?.[0]));
  });
});
