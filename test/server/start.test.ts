import assert from 'node:assert/strict';
import type { CodeLens } from 'vscode-languageserver';
import type { ChangeAnswer, NoteNamesText } from '../../src/server/requests';
import type { ServiceError } from '../../src/service/serviceApi';
import type { InstrumentChoice, NewTabAnswer, StartingTuning } from '../../src/service/start/startAnswer';
import { TestClient } from './testClient';

const URI = 'file:///start.pegbox';
const TEXT = 'key: D\n\n[Verse]\nE4 |2---|\nB3 |3---|\nG3 |2---|\nD3 |0---|\nA2 |----|\nE2 |----|\n';

describe('a tab begun, named and summed up over the wire', () => {
  let client: TestClient;
  const ask = <Answer>(name: string, params: object = {}): Promise<Answer | ServiceError> =>
    client.request(`pegbox/${name}`, params);

  before(async () => {
    client = await TestClient.start({ initializationOptions: { settings: { sectionLens: true } } });
    await client.opened(URI, TEXT);
  });
  after(async () => assert.equal(await client.stop(), 0));

  it('offers instruments and tunings, and begins a tab', async () => {
    const instruments = await ask<readonly InstrumentChoice[]>('instruments');
    assert.ok(!('error' in instruments) && instruments[0]?.name === 'guitar');
    const tunings = await ask<readonly StartingTuning[]>('startingTunings', { instrument: 'ukulele' });
    assert.ok(!('error' in tunings) && tunings[0]?.notes === 'G4 C4 E4 A4');
    const tab = await ask<NewTabAnswer>('newTab', { tuning: 'DADGAD', bars: 1, rows: ['count'] });
    assert.ok(!('error' in tab));
    assert.match(tab.text, /^count \|1 {3}2 {3}3 {3}4 {3}\|\nD4 {4}\|-{16}\|$/m);
  });

  it('inserts a system at a place', async () => {
    const answer = await ask<ChangeAnswer>('insertSystem', {
      uri: URI,
      position: { line: 9, character: 0 },
      bars: 1,
      columns: 1,
    });
    assert.ok('edits' in answer && answer.edits.length === 1);
    assert.match(answer.edits[0]?.newText ?? '', /E4 \|----\|\nB3 \|----\|/);
    assert.deepEqual(answer.goesOn, { line: 10, character: 4 });
  });

  it('gives note names for a version of the text', async () => {
    const answer = await ask<NoteNamesText>('noteNames', { uri: URI, octaves: true });
    assert.ok(!('error' in answer));
    assert.equal(answer.version, 1);
    assert.equal(answer.text.split('\n')[3], 'E4 |F#4---|');
    assert.deepEqual(answer.lines[0], { line: 3, stops: [5, 7] });
  });

  it('writes the row of chords', async () => {
    const answer = await ask<ChangeAnswer>('writeChords', { uri: URI, replace: true });
    assert.ok('edits' in answer);
    assert.match(answer.edits[0]?.newText ?? '', /^chords \|D {3}\|$/m);
  });

  it('sums up a section in a line above it', async () => {
    const lenses = await client.request<CodeLens[]>('textDocument/codeLens', { textDocument: { uri: URI } });
    assert.equal(lenses.length, 1);
    assert.deepEqual(lenses[0]?.range.start, { line: 2, character: 0 });
    assert.match(lenses[0].command?.title ?? '', /^1 bar · standard · D major · D3–F#4 · widest stretch/);
  });

  it('says in one sentence what it cannot read', async () => {
    const cases: readonly (readonly [string, object, RegExp])[] = [
      ['newTab', { bars: 'many' }, /^The parameter bars was expected as a number\.$/],
      ['newTab', { rows: ['drums'] }, /^The parameter rows was expected as a list of count, chords/],
      ['startingTunings', { instrument: 7 }, /^The parameter instrument was expected as text\.$/],
      ['noteNames', { uri: 'file:///none.pegbox' }, /not open/],
      ['writeChords', { uri: URI, replace: 'yes' }, /true or false/],
    ];
    for (const [name, params, expected] of cases) {
      const answer = await ask<object>(name, params);
      assert.ok('error' in answer, name);
      assert.match(answer.error, expected);
    }
  });
});
