import assert from 'node:assert/strict';
import { json, pegbox, unreadable } from './pegbox';

interface Answer {
  readonly kind: string;
  readonly names: readonly { name: string; tones: readonly string[]; omitted: readonly string[] }[];
}

const chord = async (...args: string[]): Promise<Answer> => (await json(['chord', ...args])) as Answer;

/** check-values.md T9, shapes in DADGAD, and T10, in open D: the sounding notes and their name. */
const SHAPES: readonly [notes: string, name: string, tuning: string][] = [
  ['D2 A2 D3 A3 A3 D4', 'D5', 'DADGAD'],
  ['G2 B2 D3 G3 B3 D4', 'G', 'DADGAD'],
  ['E2 B2 E3 G3 A3 D4', 'Em7(add11)', 'DADGAD'],
  ['A2 E3 G3 A3 D4', 'A7sus4', 'DADGAD'],
  ['A2 E3 A3 A3 E4', 'A5', 'DADGAD'],
  ['B2 D3 G3 B3 D4', 'G/B', 'open D'],
];

describe('chord', () => {
  for (const [notes, name, tuning] of SHAPES)
    it(`names ${notes} ${name}`, async () => {
      const { names } = await chord(...notes.split(' '), '--tuning', tuning);
      assert.equal(names[0]?.name, name);
    });

  it('gives kind and names, each with its tones and what it leaves out, and nothing else', async () => {
    const answer = await chord('C3', 'E3', 'G3', 'C4', 'E4');
    assert.deepEqual(Object.keys(answer), ['kind', 'names']);
    assert.equal(answer.kind, 'chord');
    assert.deepEqual(answer.names[0], { name: 'C', tones: ['C', 'E', 'G'], omitted: [] });
  });

  it('tells what a name leaves out', async () => {
    const { names } = await chord('G2', 'B2', 'F3');
    assert.deepEqual(names[0], { name: 'G7', tones: ['G', 'B', 'F'], omitted: ['5'] });
  });

  it('names a power chord as one', async () => {
    const { kind, names } = await chord('D2', 'A2', 'D3');
    assert.deepEqual([kind, names[0]?.name], ['power', 'D5']);
  });

  it('takes flats, sharps, small letters and one argument with all notes', async () => {
    // check-values.md T7, C7 x32310: the third of C7's sevenths is spelled Bb
    const expected = await chord('C3', 'E3', 'Bb3', 'C4', 'E4');
    assert.deepEqual(expected.names[0]?.tones, ['C', 'E', 'Bb']);
    assert.deepEqual(await chord('c3 e3 b♭3, C4 E4'), expected);
    assert.equal((await chord('F#2', 'A2', 'C#3')).names[0]?.name, 'F#m');
  });

  it('spells by the key', async () => {
    const name = async (key: string): Promise<string | undefined> =>
      (await chord('G#2', 'C3', 'D#3', '--key', key)).names[0]?.name;
    assert.equal(await name('E'), 'G#');
    assert.equal(await name('Eb'), 'Ab');
  });

  it('prints a name a line, best first', async () => {
    const { code, out, err } = await pegbox(['chord', 'D2', 'A2', 'D3', 'G3', 'A3', 'D4']);
    assert.equal(code, 0);
    assert.equal(err, '');
    assert.match(out, /^Dsus4 +D G A\n/);
  });

  it('refuses what is no note, key or tuning', async () => {
    assert.match(await unreadable(['chord', 'D2', 'H2']), /“H2” is no note/);
    assert.match(await unreadable(['chord', 'D2', 'A']), /“A” is no note with an octave/);
    assert.match(await unreadable(['chord', 'D2', '--key', 'Q']), /--key: .*D mixolydian/);
    assert.match(await unreadable(['chord', 'D2', '--tuning', 'opne E']), /--tuning: .*open E/);
    assert.match(await unreadable(['chord']), /NOTES… is missing/);
  });
});
