import assert from 'node:assert/strict';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { ChangeAnswer, MadeChange, PassagesAnswer } from '../../src/server/requests';
import type { ServiceError, TuningAnswer, TuningChoice } from '../../src/service/serviceApi';
import { range, TestClient } from './testClient';
import { FRET_4, LANTERN } from './texts';

const URI = 'file:///lantern.pegbox';

describe('requests that change a passage', () => {
  let client: TestClient;
  before(async () => {
    client = await TestClient.start();
    await client.opened(URI, LANTERN);
  });
  after(async () => {
    assert.equal(await client.stop(), 0);
    assert.deepEqual(client.log, []);
  });

  async function made(method: string, params: object): Promise<MadeChange> {
    const answer = await client.request<ChangeAnswer>(method, { uri: URI, ...params });
    assert.ok(!('error' in answer), JSON.stringify(answer));
    return answer;
  }

  /** The text after the change, opened: it must be free of mistakes and is compared by the caller. */
  async function after_(change: MadeChange): Promise<string> {
    const text = TextDocument.applyEdits(TextDocument.create(URI, 'pegbox', 1, LANTERN), [...change.edits]);
    assert.deepEqual(await client.opened('file:///after.pegbox', text), [], text);
    return text;
  }

  it('convert: every note is accounted for, and the text names the new tuning', async () => {
    const change = await made('pegbox/convert', { tuning: 'standard', keep: 'sound' });
    const { notesIn, kept, moved, unplaced } = change.report;
    assert.equal(change.version, 1);
    assert.equal(notesIn, 6);
    assert.equal(kept + moved + unplaced.length, notesIn);
    assert.match(await after_(change), /tuning:\s+standard/i);
  });

  it('convert: a tuning that cannot be read is one sentence', async () => {
    const answer = await client.request<ServiceError>('pegbox/convert', {
      uri: URI,
      tuning: 'bananas',
      keep: 'sound',
    });
    assert.match(answer.error, /^[A-Z“].*\.$/s);
  });

  it('transpose: by half steps and to a key', async () => {
    // D2 up by 2 is fret 2; the F sharp on fret 4 of D3 is G sharp on fret 6.
    assert.match(await after_(await made('pegbox/transpose', { by: 2 })), /^key:\s+E\b/m);
    assert.match(await after_(await made('pegbox/transpose', { by: 'E' })), /^key:\s+E\b/m);
  });

  it('move a capo: the shapes stay', async () => {
    const text = await after_(await made('pegbox/moveCapo', { capo: '2', keep: 'shapes' }));
    assert.match(text, /^capo:\s+2$/m);
    assert.match(text, /^D3 +\|----4-------4---\|$/m);
  });

  it('convert: as many ways as are wanted, each told apart', async () => {
    // Two of its notes have several places in standard tuning.
    const uri = 'file:///ways.pegbox';
    await client.opened(
      uri,
      `tuning: standard\n\nE4 |0-3-5-7-8-7-5-3-|\nB3 |----------------|\nG3 |----------------|\nD3 |----------------|\nA2 |----------------|\nE2 |----------------|\n`,
    );
    const ask = (alternatives?: number): Promise<MadeChange> =>
      client.request('pegbox/convert', { uri, tuning: 'DADGAD', alternatives });
    const one = await ask();
    assert.equal(one.alternatives, undefined);
    const { alternatives = [], edits } = await ask(3);
    assert.ok(alternatives.length >= 1);
    for (const way of alternatives) {
      assert.notDeepEqual(way.edits, edits);
      assert.ok(way.title);
      assert.equal(way.report.notesIn, 8);
    }
  });

  it('convert: the function asks for a key, and says so', async () => {
    const answer = await client.request<ServiceError>('pegbox/convert', {
      uri: URI,
      tuning: 'standard',
      keep: 'function',
    });
    assert.equal(answer.asks, 'key');
    const change = await made('pegbox/convert', { tuning: 'standard', keep: 'function', key: 'E' });
    assert.match(await after_(change), /^key:\s+E\b/m);
  });

  it('convert: what would leave out less is on offer, each offer a request that can be sent', async () => {
    const change = await made('pegbox/convert', { tuning: 'standard' });
    assert.equal(change.report.unplaced.length, 2);
    const [offer] = change.report.offers ?? [];
    assert.ok(offer);
    const taken = await made('pegbox/convert', { ...offer.request });
    assert.ok(taken.report.unplaced.length < 2);
  });

  it('convert into a new part: the original stays as it is', async () => {
    const text = await after_(await made('pegbox/convert', { tuning: 'open D', newPart: 'Second guitar' }));
    assert.match(text, /^part:\s+Second guitar$/m);
    for (const line of LANTERN.split('\n').slice(-7)) assert.ok(text.split('\n').includes(line), line);
  });

  it('refinger: never worse in what was asked, and both figures are told', async () => {
    const { report } = await made('pegbox/refinger', { objective: 'closed' });
    assert.ok(report.compared?.before !== undefined && report.compared.after < report.compared.before);
    assert.equal(report.kept, 6);
  });

  it('simplify: a passage within a limit', async () => {
    const { report } = await made('pegbox/simplify', { highestFret: 4 });
    assert.equal(report.notesIn, 6);
    assert.ok((report.measures?.highestFret ?? 0) <= 4);
  });

  it('passages: from the bar under the cursor to the file', async () => {
    const { passages } = await client.request<PassagesAnswer>('pegbox/passages', {
      uri: URI,
      selection: { start: FRET_4, end: FRET_4 },
    });
    assert.ok(passages.some(({ kind }) => kind === 'file'));
    assert.ok(passages.some(({ kind }) => kind === 'section'));
    for (const { title } of passages) assert.notEqual(title, '');
  });

  it('tuning choices: with notes and steps, the one in force or its like first', async () => {
    const choices = await client.request<TuningChoice[]>('pegbox/tuningChoices', {
      uri: URI,
      position: FRET_4,
    });
    assert.ok(choices.length > 10);
    for (const { value, notes, steps } of choices) assert.ok(value !== '' && notes !== '' && steps !== '');
    assert.match(choices[0]?.value ?? '', /DADGAD/);
  });

  it('reading a tuning as it is typed: its strings or a sentence', async () => {
    const read = (value: string): Promise<TuningAnswer | ServiceError> =>
      client.request('pegbox/readTuning', { uri: URI, position: FRET_4, value });
    const good = await read('D A D G A D');
    assert.ok('strings' in good);
    assert.deepEqual(
      good.strings.map(({ midi }) => midi), // MIDI numbers of D2 A2 D3 G3 A3 D4
      [38, 45, 50, 55, 57, 62],
    );
    assert.ok('error' in (await read('bananas')));
  });

  it('answers say for which version they are', async () => {
    const version = await client.change(URI, { range: range(0, 8, 0, 8), text: 'Old ' });
    assert.equal((await made('pegbox/convert', { tuning: 'standard', keep: 'shapes' })).version, version);
    await client.change(URI, { range: range(0, 8, 0, 12), text: '' });
  });
});
