import assert from 'node:assert/strict';
import type { ShapeKinAnswer, ShapesAnswer, SongShapesAnswer } from '../../src/service/shapes/shapesAnswer';
import { fileWith, json, pegbox, unreadable } from './pegbox';

const SONG = `tuning: DADGAD

chords |C       |Am      |
D4     |0-------|0-------|
A3     |--------|--------|
G3     |--------|--------|
D3     |--------|--------|
A2     |--------|--------|
D2     |--------|--------|
`;

describe('shapes', () => {
  it('lists the shapes of a chord, best first', async () => {
    const { code, out, err } = await pegbox(['shapes', 'C', '--limit', '2']);
    assert.deepEqual([code, err], [0, '']);
    // check-values.md T7: C x32010
    assert.equal(
      out,
      `frets        fingers      sounds
x 3 2 0 1 0  . 3 2 0 1 0  C       full, strings 1 and 3 open, position 1
x 3 5 0 5 0  . 1 3 0 4 0  C       full, strings 1 and 3 open, position 3
`,
    );
  });

  it('answers as JSON, with picture and tab', async () => {
    const answer = (await json(['shapes', 'G/B', '--tuning', 'DADGAD', '--capo', '2'])) as ShapesAnswer;
    assert.deepEqual([answer.chord, answer.soundsAs, answer.capo], ['G/B', 'A/C#', 'capo at fret 2']);
    const [first] = answer.shapes;
    assert.ok(first && first.svg.startsWith('<svg'));
    assert.equal(first.tab.split('\n').length, 7);
  });

  it('tells what became of the shape of the usual tuning', async () => {
    const { out } = await pegbox(['shapes', 'C', '--tuning', 'DADGAD', '--usual']);
    assert.equal(
      out,
      `C in standard (E2 A2 D3 G3 B3 E4)  x 3 2 0 1 0
C in DADGAD (D2 A2 D3 G3 A3 D4)    x 3 2 0 3 2
string 2 +2, string 1 +2
`,
    );
    const answer = (await json(['shapes', 'C', '--tuning', 'DADGAD', '--usual'])) as ShapeKinAnswer;
    assert.equal(answer.stringsChanged, 2);
  });

  it('tells it for every chord of a file', async () => {
    const file = fileWith('shapes-song.pegbox', SONG);
    const { code, out } = await pegbox(['shapes', '--song', file]);
    assert.equal(code, 0);
    assert.deepEqual(
      out.split('\n').map((line) => line.split(/ {2,}/)),
      [
        ['chord', 'usual', 'here', 'bars', 'what changes'],
        ['C', 'x 3 2 0 1 0', 'x 3 2 0 3 2', '1', 'string 2 +2, string 1 +2'],
        ['Am', 'x 0 2 2 1 0', 'x 0 2 2 3 2', '2', 'string 2 +2, string 1 +2'],
        [''],
      ],
    );
    const answer = (await json(['shapes', '--song', file])) as SongShapesAnswer;
    assert.equal(answer.chords.length, 2);
  });

  it('says why there is none, with exit code 1', async () => {
    const { code, out, err } = await pegbox(['shapes', 'Dm7b5', '--instrument', 'lap steel']);
    assert.deepEqual([code, out], [1, '']);
    assert.match(err, /^pegbox: No straight bar up to fret 15 gives Dm7b5\. Nearest: /);
  });

  it('says in one sentence what cannot be read', async () => {
    assert.match(await unreadable(['shapes', 'H7']), /H is B here/);
    assert.match(
      await unreadable(['shapes', 'C', '--frets', '99']),
      /--frets takes a whole number from 0 to 36/,
    );
    assert.match(await unreadable(['shapes', 'C', '--tuning', 'QQQ']), /^--tuning: /);
    assert.match(await unreadable(['shapes', 'C', '--capo', '99']), /^--capo: /);
    assert.match(await unreadable(['shapes', '--song', '-', '--tuning', 'DADGAD'], SONG), /is for one chord/);
  });
});
