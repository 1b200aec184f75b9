import assert from 'node:assert/strict';
import type { RingingAnswer } from '../../src/service/ringing/ringingAnswer';
import type { SingerAnswer } from '../../src/service/singer/singerAnswer';
import { json, pegbox, unreadable } from './pegbox';

/** A tune from E4 to G4 under its words, in G. */
const SONG = `title: Low Water
key:   G

chords |G       |C   Am7 |
words  |Low     |wa- ter |
E4     |3---2---|0---3---|
B3     |--------|1---0---|
G3     |--------|0-------|
D3     |--------|--------|
A2     |--------|3-------|
E2     |3-------|--------|
`;

describe('singer', () => {
  it('lists the ways, best first, with shapes and sound', async () => {
    const { code, out, err } = await pegbox(['singer', '-', '--key', 'Bb'], SONG);
    assert.equal(code, 0, err);
    assert.match(out, /1 +Capo at fret 3 +Shapes of G major sound in Bb major .* as now +19$/m);
  });

  it('answers as JSON with a voice, a range, a part and notes', async () => {
    const ask = async (...args: string[]): Promise<SingerAnswer> =>
      (await json(['singer', '-', ...args], SONG)) as SingerAnswer;
    const { voice, tune, ways } = await ask('--voice', 'alto');
    assert.deepEqual([voice?.low, voice?.high, tune?.low, tune?.high], ['F3', 'D5', 'E4', 'G4']);
    assert.ok(ways.length > 5);
    const typed = await ask('--range', 'A3-D5', '--low', 'D4', '--high', 'E5');
    assert.deepEqual([typed.tune?.low, typed.here.lies?.above], ['D4', -2]);
    const low = await ask('--voice', 'soprano', '--highest-capo', '2');
    assert.ok(low.ways.every(({ capo }) => capo === 'none' || Number(capo) <= 2));
  });

  it('writes the tab in a way of the list; frets stay', async () => {
    const { code, out, err } = await pegbox(['singer', '-', '--key', 'Bb', '--take', '1'], SONG);
    assert.equal(code, 0, err);
    assert.equal(out, SONG.replace('key:   G\n', 'key:   G\ncapo:  3\n'));
    assert.match(err, /Shapes of G major sound in Bb major\./);
  });

  it('tells in a sentence what it cannot read', async () => {
    assert.match(await unreadable(['singer', '-'], SONG), /^Say what suits the singer: --voice alto/);
    assert.match(await unreadable(['singer', '-', '--voice', 'alt'], SONG), /^--voice: “alt” is no voice/);
    assert.match(await unreadable(['singer', '-', '--range', 'A-D'], SONG), /^--range: Write the lowest/);
    assert.match(await unreadable(['singer', '-', '--key', 'Q'], SONG), /^--key: A key is/);
    assert.match(
      await unreadable(['singer', '-', '--voice', 'alto', '--low', 'D4'], SONG),
      /both --low and --high/,
    );
    assert.match(await unreadable(['singer', '-', '--key', 'Bb', '--take', '9'], SONG), /there is no 9/);
    const { code, err } = await pegbox(['singer', '-', '--voice', 'alto', '--tune', 'drum'], SONG);
    assert.equal(code, 1);
    assert.match(err, /no parts with names/);
  });
});

describe('ringing', () => {
  it('tells key and chords, in words and as JSON', async () => {
    const { code, out, err } = await pegbox(['ringing', '-'], SONG);
    assert.equal(code, 0, err);
    assert.match(out, /^standard: E2 A2 D3 G3 B3 E4$/m);
    assert.match(
      out,
      /^C +bar 2 +Strings 6, 3 and 1 may ring .* mute string 2 \(a half step under the root\)$/m,
    );
    const { chords, keys } = (await json(['ringing', '-'], SONG)) as RingingAnswer;
    assert.deepEqual(
      chords.map(({ name }) => name),
      ['G', 'C', 'Am7'],
    );
    assert.equal(keys[0]?.name, 'G major');
  });

  it('says what is missing', async () => {
    const { code, out, err } = await pegbox(['ringing', '-'], '');
    assert.deepEqual([code, out], [0, '']);
    assert.match(err, /no system here yet/);
  });
});
