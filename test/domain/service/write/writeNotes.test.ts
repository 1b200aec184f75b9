import assert from 'node:assert/strict';
import { places, refusedNotes, sounds, write } from './written';

const DADGAD = 'tuning: DADGAD\nkey: D\n\n';

/** Two bars in DADGAD, the first with one note, the cursor on a line of it. */
const TWO_BARS = `${DADGAD}[Verse]
D4 |----------------|----------------|
A3 |0---------------|----------------|
G3 |--------<|>--------|----------------|
D3 |----------------|----------------|
A2 |----------------|----------------|
D2 |----------------|----------------|

Under the pier it says no.
`;

describe('writing notes by name, outside of systems', () => {
  it('lays down bars with the labels of the tuning', () => {
    assert.equal(
      write(`${DADGAD}<|>`, { text: 'D3 E3 F#3 A3', value: 'quarter' }).marked,
      `${DADGAD}D4 |----------------|
A3 |------------0---|<|>
G3 |----------------|
D3 |0---2---4-------|
A2 |----------------|
D2 |----------------|
`,
    );
  });

  it('tells what was read, where', () => {
    const { report } = write(`${DADGAD}<|>`, { text: 'D3 A3+F#4' });
    assert.deepEqual(report, {
      notesIn: 3,
      kept: 3,
      moved: 0,
      unplaced: [],
      remarks: ['3 notes in bar 1: D3 A3+F#4.'],
    });
  });

  it('goes behind the heading and the words at the cursor', () => {
    const { text } = write(`${DADGAD}[Ver<|>se]\nSlowly.\n\n[Chorus]\n`, { text: 'D3' });
    assert.match(text, /^\[Verse\]\nSlowly\.\n\nD4 \|[^]*D2 \|-+\|\n\n\[Chorus\]\n$/m);
  });

  it('stands under the fields at the cursor, whole groups of them', () => {
    const { text, notes } = write('tuning: DADGAD\ncap<|>o: 2\nmeter: 3/4\n', {
      text: 'E3 F#3 G#3 B3 E3 E3',
      value: 'quarter',
    });
    assert.match(text, /meter: 3\/4\n\nD4 \|/);
    assert.deepEqual(
      notes.map(({ bar }) => bar),
      [1, 1, 1, 2, 2, 2],
    );
    assert.equal(notes[0]?.name, 'E3');
  });

  it('writes in every kind of tuning', () => {
    for (const fields of [
      'instrument: ukulele',
      'instrument: banjo',
      'instrument: 12-string guitar',
      'tuning: E2 B2 E3 G#3-14c B3 E4',
      'tuning: standard\ncapo: 2 on 5 4 3',
      'instrument: lap steel\nfretting: slide',
    ]) {
      const { notes } = write(`${fields}\n\n<|>`, { text: 'G#4 B4 E5' });
      const midis = notes.map(({ midi }) => Math.round(midi ?? 0));
      assert.ok(
        [68, 71, 76].every((midi) => midis.includes(midi)),
        `${fields}: ${midis.join()}`,
      );
    }
  });

  it('says in rows and in the report what has no place', () => {
    const { text, report } = write(`${DADGAD}<|>`, { text: 'C2 D3 C9' });
    assert.deepEqual(
      report.unplaced.map(({ bar, name }) => [bar, name]),
      [
        [1, 'C2'],
        [1, 'C9'],
      ],
    );
    assert.match(report.unplaced[0]?.reason ?? '', /2 half steps below the lowest open string/);
    assert.match(text, /^omitted +\|C2  +C9$/m);
    assert.equal(report.kept + report.unplaced.length, report.notesIn);
  });
});

describe('writing notes by name, in a system', () => {
  it('goes on dashes from the column on, and over the bar sign', () => {
    const done = write(TWO_BARS, { text: 'A3 B3 C#4 D4', value: 'quarter' });
    assert.equal(sounds(done), 'A3@0 A3@2 B3@3 C#4@4 D4@5');
    assert.match(done.text, /Under the pier it says no\.\n$/);
    const [cursor] = done.marked.split('<|>');
    assert.equal(cursor?.split('\n').at(-1)?.length, 4 + 16 + 1 + 8);
  });

  it('lays columns out anew where a time has none, and leaves every other note at its time', () => {
    const done = write(TWO_BARS, { text: 'A3:et B3:et C#4:et D4' });
    assert.equal(sounds(done), 'A3@0 A3@2 B3@2.333 C#4@2.667 D4@3');
  });

  it('keeps a count row true', () => {
    const counted = TWO_BARS.replace('D4 |', 'count |1   2   3   4   |1   2   3   4   |\nD4 |').replace(
      /^([ADG]\d) /gm,
      '$1    ',
    );
    const done = write(counted, { text: 'A3:s B3:s C#4:et D4:et E4:et F#4' });
    assert.equal(sounds(done), 'A3@0 A3@2 B3@2.25 C#4@2.5 D4@2.833 E4@3.167 F#4@3.5');
    assert.match(done.text, /^count +\|1/m);
  });

  it('lays down new bars where those that are there are full', () => {
    const done = write(TWO_BARS, { text: 'A3 B3 C#4 D4 E4 D4 C#4 B3', value: 'quarter' });
    assert.equal(sounds(done), 'A3@0 A3@2 B3@3 C#4@4 D4@5 E4@6 D4@7 C#4@8 B3@9');
    assert.deepEqual([...new Set(done.notes.map(({ bar }) => bar))], [1, 2, 3]);
    assert.match(done.text, /\n\nD4 \|-+\|\nA3 \|.*\n[^]*\n\nUnder the pier/);
  });

  it('goes on in the empty system that follows', () => {
    const next = TWO_BARS.split('[Verse]\n')[1]?.split('\n\n')[0]?.replace('<|>', '').replace('0', '-') ?? '';
    const done = write(TWO_BARS.replace('\n\nUnder', `\n\n${next}\n\nUnder`), {
      text: 'A3 B3 C#4 D4 E4 D4 C#4 B3',
      value: 'quarter',
    });
    assert.equal(done.text.split('\n').length, TWO_BARS.split('\n').length + next.split('\n').length + 1);
    assert.equal(sounds(done), 'A3@0 A3@2 B3@3 C#4@4 D4@5 E4@6 D4@7 C#4@8 B3@9');
  });

  it('never writes over notes', () => {
    const { error, asks } = refusedNotes(TWO_BARS.replace('<|>', '').replace('|0', '|<|>0'), { text: 'D3' });
    assert.match(error, /^Bar 1 has notes/);
    assert.equal(asks, 'new bars');
  });

  it('puts new bars in behind the bar at the cursor where that is asked for', () => {
    const done = write(TWO_BARS.replace('<|>', '').replace('|0', '|<|>0'), {
      text: 'D3 E3',
      inTheWay: 'new bars',
    });
    assert.equal(sounds(done), 'A3@0 D3@4 E3@4.5');
    assert.equal(done.notes.at(-1)?.bar, 2);
    assert.equal(done.text.match(/^D4 \|/gm)?.length, 3);
  });

  it('uses no string on which a slide goes over what is written', () => {
    const slid = TWO_BARS.replace(
      'A3 |0---------------|----------------|',
      'A3 |5--------------/|/7--------------|',
    );
    const done = write(slid, { text: 'A3', value: 'eighth' });
    const own = done.notes.find(({ onset }) => onset === 2);
    assert.equal(own?.name, 'A3');
    assert.notEqual(own.string, 2);
  });

  it('asks for labels where they do not say which strings stand there', () => {
    const { error } = refusedNotes('tuning: DADGAD\n\nD |--<|>--|\nA |----|\n', { text: 'D3' });
    assert.match(error, /labels do not say which strings/);
  });

  it('leaves a pickup below what it is', () => {
    const pickup = `${DADGAD}<|>\n\ncount |4   |1   2   3   4   |\n${[...'DAGDAD']
      .map((label) => `${label}     |0---|----------------|`)
      .join('\n')}\n`;
    assert.match(refusedNotes(pickup, { text: 'D3' }).error, /pickup/);
  });
});

describe('what may be typed', () => {
  const typed = (text: string, fields = 'tuning: standard\nkey: C'): string =>
    sounds(write(`${fields}\n\n<|>`, { text, value: 'quarter' }));

  for (const [text, expected] of [
    ['E2 f#3 Bb3', 'E2@0 F#3@1 Bb3@2'],
    ['C, D, E', 'C4@0 D4@1 E4@2'],
    ['C4 E D4 A', 'C4@0 E4@1 D4@2 A3@3'],
    ['C4 G', 'C4@0 G3@1'],
    ['C4 >G <C', 'C4@0 G4@1 C4@2'],
    ['C3 >C', 'C3@0 C4@1'],
    ['C3+E+G E', 'C3@0 E3@0 G3@0 E3@1'],
    ['1 2 3 4 5', 'C4@0 D4@1 E4@2 F4@3 G4@4'],
    ['b3 #4 b7', 'Eb3@0 F#3@1 Bb3@2'],
    ['1+3+5+b7+9', 'C4@0 E4@0 G4@0 Bb4@0 D5@0'],
    ['7 8', 'B3@0 C4@1'],
    ['C4 - D4', 'C4@0 D4@2'],
    ['C4 -- D4', 'C4@0 D4@3'],
    ['C4 -:h D4', 'C4@0 D4@3'],
    ['C4:h D4:e E4:e.', 'C4@0 D4@2 E4@2.5'],
    ['C4:e. D4:s E4', 'C4@0 D4@0.75 E4@1'],
    ['C4:quarter D4', 'C4@0 D4@1'],
    ['C4 | D4', 'C4@0 D4@4'],
    ['C4 D4 E4 F4 | G4', 'C4@0 D4@1 E4@2 F4@3 G4@4'],
  ] as const)
    it(`${text} is ${expected}`, () => {
      const sorted = (told: string): string[] => told.split(' ').sort();
      assert.deepEqual(sorted(typed(text)), sorted(expected));
    });

  it('a rest stops what rings, at its time', () => {
    const { notes, text } = write('tuning: DADGAD\n\n<|>', { text: 'D3 . . D3', value: 'quarter' });
    assert.deepEqual(notes.map(({ onset, duration }) => [onset, duration]).slice(0, 1), [[0, 1]]);
    assert.match(text, /^D3 \|0---\.-------0/m);
  });

  it('degrees are counted against the major scale of the tonic, in minor keys as well', () =>
    assert.equal(typed('1 3 b3', 'tuning: standard\nkey: E minor'), 'E3@0 G#3@1 G3@2'));

  it('names mean what sounds under a capo, degrees the key as played', () => {
    const fields = 'tuning: standard\ncapo: 2\nkey: C';
    const named = write(`${fields}\n\n<|>`, { text: 'D4' });
    assert.equal(places(named), '2:1');
    assert.match(named.report.remarks.join(' '), /names that sound, with the capo at fret 2/);
    assert.equal(typed('1 2', fields), 'D4@0 E4@1');
  });

  for (const [text, told] of [
    ['', /such as D4 E4 F#4/],
    ['- - .', /such as D4 E4 F#4/],
    ['D4 X', /“X” is no note/],
    ['D4 H4', /H is B here/],
    ['D4+', /stands between two notes/],
    ['>D4', /names its octave already/],
    ['0', /“0” is no degree/],
    ['16', /“16” is no degree/],
    ['#b3', /sharp and flat at once/],
    ['D4:x', /“D4:x”: behind the colon/],
    ['D4:e.t', /behind the colon/],
    ['D4 b3', /write B3 for the note, or ♭3 for the degree/],
    [Array.from({ length: 2001 }, () => 'D4').join(' '), /2000 notes at most/],
  ] as const)
    it(`“${text.slice(0, 12)}” is refused in one sentence`, () =>
      assert.match(refusedNotes('tuning: DADGAD\nkey: D\n\n<|>', { text }).error, told));

  it('degrees ask for a key, and take one', () => {
    assert.equal(refusedNotes('tuning: DADGAD\n\n<|>', { text: '1 2' }).asks, 'key');
    assert.equal(sounds(write('tuning: DADGAD\n\n<|>', { text: '1', key: 'G' })), 'G3@0');
    assert.match(refusedNotes('tuning: DADGAD\n\n<|>', { text: '1', key: 'Q' }).error, /key is a tonic/);
  });

  it('a length that is none is told', () =>
    assert.match(
      refusedNotes('tuning: DADGAD\n\n<|>', { text: 'D4', value: 'long' }).error,
      /“long” is no length/,
    ));

  it('is refused where no note of it has a place', () =>
    assert.match(refusedNotes('tuning: DADGAD\n\n<|>', { text: 'C1' }).error, /^C1 has no place here: /));
});
