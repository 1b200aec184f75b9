import assert from 'node:assert/strict';
import type { ChangeAnswer } from '../../src/server/requests';
import type { ServiceError } from '../../src/service/serviceApi';
import type { ChordChart } from '../../src/service/song/songAnswer';
import { TestClient } from './testClient';

const URI = 'file:///song.pegbox';
const TEXT = 'title: Low Lantern\ntuning: DADGAD\n\nchords |D       |G       |\n';

describe('a song from chord names, over the wire', () => {
  let client: TestClient;
  beforeEach(async () => {
    client = await TestClient.start();
    await client.opened(URI, TEXT);
  });
  afterEach(async () => assert.equal(await client.stop(), 0));

  it('is filled, gets a second guitar, and a chart', async () => {
    const filled = await client.request<ChangeAnswer>('pegbox/fillChords', { uri: URI, strum: 'beats' });
    assert.ok(!('error' in filled), JSON.stringify(filled));
    assert.equal(filled.edits.length, 1);
    assert.match(filled.edits[0]?.newText ?? '', /D4 {5}\|[\d-]+\|/);
    const other = await client.request<ChangeAnswer>('pegbox/secondGuitar', {
      uri: URI,
      name: 'high',
      capo: '5',
    });
    assert.ok(!('error' in other), JSON.stringify(other));
    assert.match(other.edits.map(({ newText }) => newText).join(''), /part: +high\n[\s\S]*chords \|A {7}\|D/);
    const chart = await client.request<ChordChart | ServiceError>('pegbox/chordChart', { uri: URI });
    assert.ok(!('error' in chart));
    assert.deepEqual(
      chart.chords.map(({ name }) => name),
      ['D', 'G'],
    );
    assert.match(chart.svg, /^<svg .*<\/svg>$/s);
  });

  it('answers what cannot be read in a sentence', async () => {
    const ask = async (method: string, more: object): Promise<string> =>
      (await client.request<ServiceError>(method, { uri: URI, ...more })).error;
    assert.equal(
      await ask('pegbox/fillChords', { strum: 'twice' }),
      'The parameter strum was expected as one of once, beats.',
    );
    assert.equal(
      await ask('pegbox/chordChart', { highestFret: 'five' }),
      'The parameter highestFret was expected as a number.',
    );
    assert.match(await ask('pegbox/secondGuitar', {}), /Give the new part a name/);
    assert.match(await ask('pegbox/fillChords', { uri: 'file:///unknown.pegbox' }), /not open/);
  });
});
