import assert from 'node:assert/strict';
import { Chord, Note } from 'tonal';
import { exercise, fingers, places, refusedExercise } from './written';

const at = (fields: string): string => `${fields}\n\n<|>`;

describe('exercises: scales', () => {
  // check-values.md T2: a first-position scale of C as methods of the 19th century print it.
  const T2 = '5:3 4:0 4:2 4:3 3:0 3:2 2:0 2:1';

  it('T2: C major in the open position, with its fingers', () => {
    const done = exercise(at('tuning: standard'), { scale: 'C major', inPosition: 'open', direction: 'up' });
    assert.equal(places(done), T2);
    assert.equal(fingers(done), '3 0 2 3 0 2 0 1');
    assert.deepEqual(
      done.notes.map(({ midi }) => midi),
      [48, 50, 52, 53, 55, 57, 59, 60],
    );
  });

  it('T2 is found by the free search too', () =>
    assert.equal(
      places(exercise(at('tuning: standard'), { scale: 'C major', octaves: 1, direction: 'up' })),
      T2,
    ));

  it('T3: the same scale in DADGAD', () =>
    assert.equal(
      places(exercise(at('tuning: DADGAD'), { scale: 'C major', octaves: 1, direction: 'up' })),
      '5:3 4:0 4:2 4:3 3:0 2:0 2:2 2:3',
    ));

  it('T4: the same scale in open G', () =>
    assert.equal(
      places(exercise(at('tuning: open G'), { scale: 'C major', octaves: 1, direction: 'up' })),
      '5:5 4:0 4:2 4:3 3:0 3:2 2:0 2:1',
    ));

  // hand-model.md §2: the two-octave movable major scale, root on string 6 under the second finger; every fret from 2 up.
  for (let root = 3; root <= 11; root++)
    it(`the movable major scale with its root at fret ${root} has the fingers that methods print`, () => {
      const tonic = Note.fromMidi(40 + root).replace(/\d/, '');
      const done = exercise(at('tuning: standard'), {
        scale: `${tonic} major`,
        inPosition: root - 1,
        direction: 'up',
      });
      assert.equal(fingers(done), '2 4 1 2 4 1 3 4 1 3 4 2 4 1 2');
      assert.equal(done.notes[0]?.fret, root);
      assert.equal(done.notes.length, 15);
    });

  it('go up and come down, the top once', () => {
    const done = exercise(at('tuning: standard'), { scale: 'G major pentatonic', octaves: 1 });
    assert.equal(done.notes.map(({ name }) => name).join(' '), 'G2 A2 B2 D3 E3 G3 E3 D3 B2 A2 G2');
    const down = exercise(at('tuning: standard'), { scale: 'G major', octaves: 1, direction: 'down' });
    assert.equal(down.notes.map(({ name }) => name).join(' '), 'G3 F#3 E3 D3 C3 B2 A2 G2');
  });

  it('last as long as is asked, and say what they are', () => {
    const done = exercise(at('tuning: DADGAD\nmeter: 3/4'), {
      scale: 'D dorian',
      inPosition: 5,
      direction: 'up and down',
      value: 'quarter',
    });
    assert.deepEqual(
      done.notes.map(({ onset }) => onset),
      done.notes.map((_, i) => i),
    );
    assert.match(done.text, /^D dorian, position 5, up and down$/m);
  });

  it('stay in their position', () => {
    const { notes } = exercise(at('tuning: standard'), { scale: 'A minor pentatonic', inPosition: 5 });
    for (const { fret } of notes) assert.ok(fret !== null && fret >= 4 && fret <= 9, String(fret));
  });

  it('say for which notes the hand leaves its position', () => {
    // Strings a fifth apart leave a gap that a hand in one place cannot fill.
    const { report } = exercise(at('tuning: DADGAD'), { scale: 'E chromatic', inPosition: 3 });
    assert.ok(
      report.remarks.some((remark) => remark.startsWith('The hand leaves position 3 for ')),
      report.remarks.join(' '),
    );
  });

  it('take the first note from the key, and both are named as played under a capo', () => {
    const done = exercise(at('tuning: DADGAD\ncapo: 2\nkey: D mixolydian'), {
      scale: 'mixolydian',
      octaves: 1,
      direction: 'up',
    });
    assert.match(done.text, /^D mixolydian, 1 octave, up$/m);
    assert.equal(done.notes[0]?.name, 'E2');
    assert.equal(done.notes[0].fret, 0);
    assert.ok(done.report.remarks.some((r) => r === 'It sounds E mixolydian, with the capo at fret 2.'));
  });

  it('go behind the system at the cursor, which stays', () => {
    const before =
      'tuning: bass standard\ninstrument: bass\n\n[Verse]\nG |--<|>--|\nD |----|\nA |----|\nE |0---|\n';
    const plain = before.replace('<|>', '').replace('bass standard', 'standard');
    const done = exercise(before.replace('bass standard', 'standard'), { scale: 'E minor', octaves: 1 });
    assert.ok(done.text.startsWith(plain), done.text);
    // Labels are written as they are above.
    assert.match(done.text.slice(plain.length), /^\nE minor, 1 octave, up and down\nfingers \|.*\nG +\|/);
  });
});

describe('exercises: arpeggios', () => {
  for (const [chord, theirs] of [
    ['C', 'C'],
    ['Am', 'Am'],
    ['G7', 'G7'],
    ['Dmaj7', 'Dmaj7'],
    ['F#m7b5', 'F#m7b5'],
    ['Bdim7', 'Bdim7'],
    ['Esus4', 'Esus4'],
    ['A6', 'A6'],
    ['Gaug', 'Gaug'],
    ['D5', 'D5'],
    ['C9', 'C9'],
    ['Em11', 'Em11'],
    ['G13', 'G13'],
  ] as const)
    it(`${chord} has the notes that tonal gives it`, () => {
      const { notes } = exercise(at('tuning: standard'), { chord, octaves: 2, direction: 'up' });
      const wanted = new Set(Chord.get(theirs).notes.map((note) => Note.chroma(note)));
      const have = new Set(notes.map(({ midi }) => (midi ?? 0) % 12));
      for (const tone of wanted) assert.ok(have.has(tone), `${chord} lacks ${tone}`);
      // Eleventh and thirteenth chords may have tones that tonal leaves out.
      if (!/1[13]/.test(chord)) assert.deepEqual([...have].sort(), [...wanted].sort());
    });

  it('rise in thirds to the ninth where one octave is asked of a ninth chord', () => {
    const { notes } = exercise(at('tuning: standard'), { chord: 'C9', octaves: 1, direction: 'up' });
    assert.equal(notes.map(({ name }) => name).join(' '), 'C3 E3 G3 Bb3 D4');
  });

  it('begin on the bass behind a slash', () => {
    const { notes } = exercise(at('tuning: standard'), { chord: 'C/E', octaves: 1, direction: 'up' });
    assert.equal(notes.map(({ name }) => name).join(' '), 'E2 G2 C3 E3');
  });
});

describe('exercises that cannot be had', () => {
  const refuse = (request: Parameters<typeof refusedExercise>[1], fields = 'tuning: standard'): string =>
    refusedExercise(at(fields), request);

  it('are refused in one sentence that says what to change', () => {
    assert.match(refuse({}), /one scale, such as D dorian/);
    assert.match(refuse({ scale: 'D dorian', chord: 'D' }), /one scale/);
    assert.match(refuse({ scale: 'D dorain' }), /no scale here.*dorian/);
    assert.match(refuse({ scale: 'dorian' }), /such as D dorian/);
    assert.match(refuse({ chord: 'Q7' }), /capital A–G/);
    assert.match(refuse({ chord: 'N.C.' }), /names no notes/);
    assert.match(refuse({ scale: 'D dorian', inPosition: 25 }), /1 to \d+ on this neck, or open; 25/);
    assert.match(refuse({ scale: 'D dorian', inPosition: 2.5 }), /2.5 is none/);
    assert.match(refuse({ scale: 'D dorian', octaves: 9 }), /1 to 4; 9/);
    assert.match(
      refuse({ scale: 'D dorian', inPosition: 5, octaves: 2 }),
      /no more than 1 octave in position 5/,
    );
    assert.match(refuse({ scale: 'D dorian', value: 'blue' }), /“blue” is no length/);
  });
});
