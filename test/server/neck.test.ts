import assert from 'node:assert/strict';
import type { ChangeAnswer } from '../../src/server/requests';
import type { NeckAnswer, NeckPictureAnswer } from '../../src/service/neck/neckAnswer';
import type { ServiceError } from '../../src/service/serviceApi';
import { TestClient } from './testClient';

const URI = 'file:///neck.pegbox';
const TEXT = 'tuning: DADGAD\nkey: D\n\nD4 |0---|\nA3 |----|\nG3 |2---|\nD3 |----|\nA2 |----|\nD2 |----|\n';
const PLACE = { line: 3, character: 4 };

describe('the neck over the wire', () => {
  let client: TestClient;
  const ask = <Answer>(name: string, params: object): Promise<Answer | ServiceError> =>
    client.request(`pegbox/${name}`, { uri: URI, position: PLACE, ...params });

  before(async () => {
    client = await TestClient.start();
    await client.opened(URI, TEXT);
  });
  after(async () => assert.equal(await client.stop(), 0));

  it('is sent once, then only what the cursor changes', async () => {
    const whole = await ask<NeckAnswer>('neck', { frets: 5 });
    assert.ok(!('error' in whole) && whole.board);
    assert.equal(whole.board.tones.name, 'D major');
    assert.deepEqual(
      whole.moment.sounding.map(({ string, fret }) => [string, fret]),
      [
        [3, 2],
        [1, 0],
      ],
    );
    const rest = await ask<NeckAnswer>('neck', { frets: 5, known: whole.board.id });
    assert.deepEqual(Object.keys(rest), ['moment']);
  });

  it('comes as a picture', async () => {
    const answer = await ask<NeckPictureAnswer>('neckSvg', {
      chord: 'G/B',
      labels: 'degrees',
      upright: true,
    });
    assert.ok(!('error' in answer));
    assert.match(answer.svg, /^<svg [^>]*>\n<title>DADGAD: D2 A2 D3 G3 A3 D4 · G\/B<\/title>/);
  });

  it('puts a fret in the column of the place, on another string', async () => {
    const answer = await ask<ChangeAnswer>('putFret', { string: 5, fret: 4 });
    assert.ok('edits' in answer);
    const [edit] = answer.edits;
    assert.ok(edit && answer.edits.length === 1);
    assert.match(edit.newText, /A2 \|4---\|/);
  });

  it('says in one sentence what it cannot do', async () => {
    const cases: readonly (readonly [string, object, RegExp])[] = [
      ['neck', { scale: 'D foo' }, /“foo” is no scale here/],
      ['neck', { frets: 'many' }, /^The parameter frets was expected as a number\.$/],
      [
        'neckSvg',
        { labels: 'colours' },
        /^The parameter labels was expected as one of notes, degrees, intervals\.$/,
      ],
      ['putFret', { string: 9, fret: 2 }, /^There is no string 9/],
      ['putFret', { string: 1, fret: 40 }, /^Fret 40 cannot be played on string 1: it has 0 to 22\.$/],
      ['putFret', { string: 1 }, /were expected as numbers/],
      [
        'putFret',
        { string: 1, fret: 2, position: { line: 0, character: 2 } },
        /place the cursor on a column/,
      ],
      ['neck', { uri: 'file:///unknown.pegbox' }, /is not open/],
    ];
    for (const [name, params, expected] of cases) {
      const answer = await ask<object>(name, params);
      assert.ok('error' in answer, name);
      assert.match(answer.error, expected);
    }
  });
});
