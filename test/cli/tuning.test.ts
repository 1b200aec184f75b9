import assert from 'node:assert/strict';
import type { SheetAnswer } from '../../src/service/sheet/sheetAnswer';
import { fileWith, json, pegbox, unreadable } from './pegbox';

interface Answer {
  readonly sheet: SheetAnswer;
  readonly strings: readonly {
    number: number;
    note: string;
    midi: number;
    frequency: number;
    steps: number;
  }[];
  readonly chord: string;
  readonly alternatives: readonly string[];
}

const tuning = async (...args: string[]): Promise<Answer> => (await json(['tuning', ...args])) as Answer;

/** Hertz in twelve-tone equal temperament at A4 = 440 Hz (ISO 16:1975), from check-values.md T1. */
const T1: Readonly<Record<string, number>> = {
  E1: 41.2,
  A1: 55,
  D2: 73.42,
  E2: 82.41,
  A2: 110,
  D3: 146.83,
  G3: 196,
  B3: 246.94,
  C4: 261.63,
  E4: 329.63,
  G4: 392,
  A4: 440,
};

describe('tuning', () => {
  it('tells of DADGAD its strings, low first, and the chord they make', async () => {
    const answer = await tuning('DADGAD');
    assert.deepEqual(Object.keys(answer), ['strings', 'chord', 'alternatives', 'sheet']);
    assert.deepEqual(Object.keys(answer.strings[0] ?? {}), ['number', 'note', 'midi', 'frequency', 'steps']);
    // notes and steps: common practice, no source; MIDI numbers: MIDI 1.0
    assert.deepEqual(
      answer.strings.map(({ number, note, midi, steps }) => [number, note, midi, steps]),
      [
        [6, 'D2', 38, -2],
        [5, 'A2', 45, 0],
        [4, 'D3', 50, 0],
        [3, 'G3', 55, 0],
        [2, 'A3', 57, -2],
        [1, 'D4', 62, -2],
      ],
    );
    assert.equal(answer.chord, 'Dsus4'); // check-values.md T17: D G A
    assert.ok(Array.isArray(answer.alternatives) && !answer.alternatives.includes('Dsus4'));
  });

  it('gives the frequencies of equal temperament to a hundredth of a hertz', async () => {
    const given = await Promise.all([
      tuning('standard'),
      tuning('DADGAD'),
      tuning('standard', '--instrument', 'bass'),
      tuning('standard', '--instrument', 'ukulele'),
    ]);
    const checked = new Set<string>();
    for (const { note, frequency } of given.flatMap(({ strings }) => strings)) {
      const expected = T1[note];
      if (expected === undefined) continue;
      assert.ok(Math.abs(frequency - expected) <= 0.01, `${note}: ${frequency}, not ${expected}`);
      checked.add(note);
    }
    assert.deepEqual([...checked].sort(), Object.keys(T1).sort());
  });

  it('takes a value of several words, steps among them, without quotes', async () => {
    const open = await tuning('open', 'E', '-2');
    // whole step below open E is open D: D A D F# A D (common practice, no source)
    assert.deepEqual(
      open.strings.map(({ note }) => note),
      ['D2', 'A2', 'D3', 'F#3', 'A3', 'D4'],
    );
    assert.deepEqual(await tuning('standard', '-2', '0', '0', '0', '-2', '-2'), await tuning('DADGAD'));
  });

  it('reads a name for the instrument it is given', async () => {
    // common practice, no source: the ukulele's C6 is its usual tuning
    const { strings, chord } = await tuning('C6', '--instrument', 'ukulele');
    assert.deepEqual(
      strings.map(({ number, note, steps }) => [number, note, steps]),
      [
        [4, 'G4', 0],
        [3, 'C4', 0],
        [2, 'E4', 0],
        [1, 'A4', 0],
      ],
    );
    assert.equal(chord, 'C6');
  });

  it("knows the user's own tunings", async () => {
    const file = fileWith('tunings.json', '{ "harbour": "C2 G2 D3 G3 B3 D4" }');
    const { strings } = await tuning('harbour', '--tunings', file);
    assert.deepEqual(
      strings.map(({ note }) => note),
      ['C2', 'G2', 'D3', 'G3', 'B3', 'D4'],
    );
  });

  it('prints a table for people', async () => {
    const { code, out, err } = await pegbox(['tuning', 'DADGAD']);
    assert.equal(code, 0);
    assert.equal(err, '');
    const lines = out.split('\n');
    assert.equal(lines[0], 'string  note  frequency  from usual  in the open chord');
    assert.equal(lines[1], '     6  D2     73.42 Hz          -2  root');
    assert.match(lines[7] ?? '', /^open strings: Dsus4/);
  });

  it('cautions where strings are raised, beside the answer', async () => {
    const { code, out, err } = await pegbox(['tuning', 'open E', '--json']);
    assert.equal(code, 0);
    assert.equal((JSON.parse(out) as Answer).chord, 'E');
    assert.match(err, /raises strings by up to 2 half steps.*string maker.*luthier/);
  });

  it('refuses what it cannot read and offers what may be meant', async () => {
    assert.match(await unreadable(['tuning', 'opne E']), /“opne E”.*open E/);
    assert.match(await unreadable(['tuning', 'A']), /one note.*open A/);
    assert.match(await unreadable(['tuning', 'DADGAQ']), /“Q” is no note.*DADGAD/);
    assert.match(await unreadable(['tuning', 'standard', '-2', '0', '0']), /3 numbers for 6 strings/);
    assert.match(await unreadable(['tuning', 'standard', '--instrument', 'ukelele']), /ukulele/);
  });

  it('tells the whole sheet, from a tuning of choice, in a key and under a capo', async () => {
    const { sheet } = await tuning('open G', '--from', 'DADGAD', '--key', 'G', '--capo', '2', '--chord', 'C');
    assert.deepEqual(
      [sheet.retuning.from.value, sheet.retuning.from.why, sheet.tuning.capo, sheet.tuning.key],
      ['DADGAD', 'asked', 'capo at fret 2', 'G major'],
    );
    // open G from DADGAD: 5 down a whole step, 2 up a whole step (by subtracting rows 9 and 16 of the handbook table)
    assert.deepEqual(
      sheet.retuning.steps.map(({ number, halfSteps }) => [number, halfSteps]),
      [
        [5, -2],
        [2, 2],
      ],
    );
    assert.deepEqual([sheet.barres.frets[5]?.chord, sheet.barres.frets[5]?.sounds], ['C', 'D']); // T6
    assert.equal(sheet.scale?.name, 'G major');
    assert.equal(sheet.slide?.chords[0]?.chord, 'C');
  });

  it('prints the sheet for people: both frequencies of a course, steps, barres', async () => {
    const { out } = await pegbox(['tuning', 'drop D', '--instrument', '12-string guitar', '--key', 'D']);
    assert.match(out, /D2\/D3 +73\.42 \/ 146\.83 Hz/);
    assert.match(
      out,
      /From standard: lower string 6 by 2 half steps\n {2}1\. Lower both strings of course 6/,
    );
    assert.match(out, /straight barres\n {2}Open: /);
    assert.match(out, /scale of D major: 0 2 4 /);
  });

  it('cautions on the way up, though the tuning itself is the usual one', async () => {
    const { err } = await pegbox(['tuning', 'standard', '--from', 'open D', '--json']);
    assert.match(err, /Strings go up by up to 2 half steps.*eyes and face/);
  });

  it('makes a handout as text and as a picture', async () => {
    const text = await pegbox(['tuning', 'open D', '--handout', 'text']);
    assert.match(text.out, /^Open D on the guitar\n=+\n/);
    assert.match(text.out, /Six shapes in D major/);
    const picture = await pegbox(['tuning', 'open D', '--handout', 'svg']);
    assert.match(picture.out, /^<svg xmlns='http:\/\/www\.w3\.org\/2000\/svg' width='210mm' height='297mm'/);
    assert.match(picture.out, /<\/svg>\n$/);
  });

  it('refuses a value of an option in one sentence that says what to change', async () => {
    assert.match(await unreadable(['tuning', 'open D', '--from', 'opne G']), /--from.*“opne G”.*open G/);
    assert.match(await unreadable(['tuning', 'open D', '--key', 'H']), /--key.*B/);
    assert.match(await unreadable(['tuning', 'open D', '--capo', '40']), /--capo.*from 1 to 21/);
    assert.match(await unreadable(['tuning', 'open D', '--chord', 'blorp']), /--chord.*capital A–G/);
    assert.match(await unreadable(['tuning', 'open D', '--handout', 'pdf']), /--handout takes text or svg/);
    assert.match(await unreadable(['tuning', 'open X']), /Did you mean open \w, open \w or open \w\?/);
  });
});
