import assert from 'node:assert/strict';
import { fileWith, json, pegbox } from './pegbox';
import { FERRY, firstString, sixthString } from './texts';

/** `notes --json` of a text given on standard input. */
const notesOf = (text: string): Promise<unknown> => json(['notes', '-'], text);

/** One part of what each entry says. */
async function each(text: string, ...keys: string[]): Promise<unknown[][]> {
  const entries = (await notesOf(text)) as Record<string, unknown>[];
  return entries.map((entry) => keys.map((key) => entry[key]));
}

describe('notes', () => {
  it('gives every key of an entry and no other (T12: capo 4, string 6, fret 3 is B2, MIDI 47)', async () => {
    // check-values.md T12: 40 + 4 + 3 = 47
    assert.deepEqual(await notesOf(sixthString('capo: 4', '----3-----------')), [
      {
        part: null,
        bar: 1,
        line: 8,
        column: 9,
        string: 6,
        fret: 3,
        midi: 47,
        name: 'B2',
        onset: 1,
        duration: 3,
        onsetFraction: [1, 1],
        durationFraction: [3, 1],
        techniques: [],
      },
    ]);
  });

  it("counts a banjo's fifth string from the nut (T13: fret 7 is A4)", async () => {
    // check-values.md T13: the string begins at fret 5 with G4 (67), so 7 is two above it
    const text = `instrument: banjo\n\nD4 |----|\nB3 |----|\nG3 |----|\nD3 |----|\nG4 |7---|\n`;
    assert.deepEqual(await each(text, 'string', 'fret', 'midi', 'name'), [[5, 7, 69, 'A4']]);
  });

  it('goes through time, not through the lines', async () => {
    // MIDI numbers of C3 E3 G3 C4 and so on: check-values.md T2
    assert.deepEqual(await each(FERRY, 'bar', 'onset', 'string', 'midi', 'name'), [
      [1, 0, 5, 48, 'C3'],
      [1, 1, 4, 52, 'E3'],
      [1, 2, 3, 55, 'G3'],
      [1, 3, 2, 60, 'C4'],
      [2, 4, 5, 48, 'C3'],
      [2, 4, 1, 64, 'E4'],
      [2, 5, 2, 60, 'C4'],
      [2, 6, 3, 55, 'G3'],
      [2, 7, 4, 52, 'E3'],
    ]);
  });

  it('gives a course two entries, each with its own pitch', async () => {
    const text = `instrument: 12-string guitar

E4/E4 |----|
B3/B3 |----|
G3/G4 |----|
D3/D4 |----|
A2/A3 |----|
E2/E3 |3b5-|
`;
    // an octave course (common practice, no source); both strings of it are bent
    assert.deepEqual(await each(text, 'string', 'midi', 'name', 'techniques'), [
      [6, 43, 'G2', [{ sign: 'b', to: 45 }]],
      [6, 55, 'G3', [{ sign: 'b', to: 57 }]],
    ]);
  });

  it('begins bends and slides in midi and ends them in to', async () => {
    // first string of the standard tuning: E4 is MIDI 64 (MIDI 1.0), one more a fret
    assert.deepEqual(await each(firstString('7b9-5/7-7b1/2---'), 'fret', 'midi', 'techniques'), [
      [7, 71, [{ sign: 'b', to: 73 }]],
      [5, 69, [{ sign: '/', to: 71 }]],
      [7, 71, []],
      [7, 71, [{ sign: 'b', to: 72 }]],
    ]);
  });

  it('gives cents as decimals', async () => {
    const text = `tuning: E2 A2 D3 G#3-14c B3 E4\n\nE4 |----|\nB3 |----|\nG#3|0---|\nD3 |----|\nA2 |----|\nE2 |----|\n`;
    assert.deepEqual(await each(text, 'midi', 'name'), [[55.86, 'G#3']]); // 56 − 14 / 100
  });

  it('gives a muted stroke no pitch', async () => {
    const [entry] = await each(firstString('x---'), 'fret', 'midi', 'name', 'string');
    assert.deepEqual(entry, [null, null, '', 1]);
  });

  it('calls a pickup bar 0', async () => {
    const text = `count |4 & |1 & 2 & 3 & 4 & |
E4    |0-2-|3---------------|
B3    |----|----------------|
G3    |----|----------------|
D3    |----|----------------|
A2    |----|----------------|
E2    |----|----------------|
`;
    assert.deepEqual(await each(text, 'bar', 'onset', 'onsetFraction', 'fret'), [
      [0, 0, [0, 1], 0],
      [0, 0.5, [1, 2], 2],
      [1, 1, [1, 1], 3],
    ]);
  });

  it('gives thirds of a beat as exact fractions', async () => {
    const text = `count |1 t l 2   3   4   |\n${firstString('0-1-3-----------------').replace(/ \|/g, '    |')}`;
    assert.deepEqual(await each(text, 'onsetFraction'), [[[0, 1]], [[1, 3]], [[2, 3]]]);
  });

  it('counts each part from its own start', async () => {
    const text = `part: high\n\n${firstString('0---')}\npart: low\n\n${firstString('----0---')}`;
    assert.deepEqual(await each(text, 'part', 'bar', 'onset'), [
      ['high', 1, 0],
      ['low', 1, 2],
    ]);
  });

  it('prints an aligned table for people', async () => {
    const { code, out, err } = await pegbox(['notes', fileWith('ferry.pegbox', FERRY)]);
    assert.equal(code, 0);
    assert.equal(err, '');
    const [head, first, ...rest] = out.trimEnd().split('\n');
    assert.equal(head, 'bar  onset  length  string  fret  note  midi  line  column  techniques');
    assert.equal(first, '  1      0       4       5     3  C3      48    10       5');
    assert.equal(rest.length, 8);
  });

  it('does not unroll repeats', async () => {
    assert.equal((await each(firstString('|:0---2---:|'), 'fret')).length, 2);
  });
});
