import assert from 'node:assert/strict';
import type { ServiceError } from '../../src/service/serviceApi';
import type { HandoutAnswer, SheetAnswer } from '../../src/service/sheet/sheetAnswer';
import { TestClient } from './testClient';

const URI = 'file:///sheet.pegbox';
const TEXT = 'tuning: drop D\n\nD3 |0---|\n\ntuning: open G\nkey: G\n';
const position = { line: 4, character: 3 };

describe('the tuning sheet over the wire', () => {
  let client: TestClient;

  before(async () => {
    client = await TestClient.start();
    await client.opened(URI, TEXT);
  });

  after(async () => assert.equal(await client.stop(), 0));

  const sheet = (params: object): Promise<SheetAnswer | ServiceError> =>
    client.request('pegbox/tuningSheet', { uri: URI, position, ...params });

  it('tells the tuning at the cursor, and the way there from the piece’s earlier one', async () => {
    const answer = await sheet({});
    assert.ok(!('error' in answer));
    assert.equal(answer.tuning.title, 'Open G on the guitar');
    assert.deepEqual([answer.retuning.from.value, answer.retuning.from.why], ['drop D', 'earlier']);
    // drop D to open G: 5 and 1 down a whole step (by subtracting rows 4 and 16 of the handbook table)
    assert.deepEqual(
      answer.retuning.steps.map(({ number, halfSteps }) => [number, halfSteps]),
      [
        [5, -2],
        [1, -2],
      ],
    );
    assert.equal(answer.slide, null);
  });

  it('takes a tuning to come from, a chord to look for, and says what it cannot read', async () => {
    const answer = await sheet({ from: 'standard', chord: 'D', slide: true });
    assert.ok(!('error' in answer));
    assert.equal(answer.retuning.from.why, 'asked');
    assert.equal(answer.slide?.chords[0]?.words, 'D is complete under a straight bar at fret 7');
    assert.match(JSON.stringify(await sheet({ from: 'opne D' })), /error.*open D/);
    assert.match(JSON.stringify(await sheet({ chord: 'x' })), /error.*capital A–G/);
    assert.match(JSON.stringify(await sheet({ from: 3 })), /The parameter from was expected as text/);
    assert.match(JSON.stringify(await sheet({ uri: 'file:///unknown.pegbox' })), /not open/);
  });

  it('gives the handout as picture and text', async () => {
    const page = await client.request<HandoutAnswer>('pegbox/tuningHandout', { uri: URI, position });
    assert.equal(page.fileName, 'Open-G-on-the-guitar');
    assert.match(page.svg, /^<svg .*<\/svg>$/s);
    assert.match(page.text, /Retuning from drop D/);
  });
});
