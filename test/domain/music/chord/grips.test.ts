import assert from 'node:assert/strict';
import { isReentrant, nameChord, type ChordNaming } from '../../../../src/music/chord/nameChord';
import { readKey } from '../../../../src/music/key';
import { formatNoteName, midiOf, parseNoteName, type NoteName } from '../../../../src/music/noteName';
import { spellMidi } from '../../../../src/music/spelling';
import { fretsOf, GRIPS, type Grip } from './shapes';

function notesOf(tuning: string): NoteName[] {
  return tuning.split(' ').map((text) => {
    const note = parseNoteName(text);
    assert.ok(note, text);
    return note;
  });
}

function midisOf(tuning: string, shape: string): number[] {
  const open = notesOf(tuning).map(midiOf);
  return fretsOf(shape).flatMap((fret, i) => (fret === undefined ? [] : [(open[i] ?? NaN) + fret]));
}

function nameGrip({ tuning, shape, note }: Grip): ChordNaming {
  const names = notesOf(tuning);
  const written = /key=([A-G][#b]?m?)/.exec(note)?.[1];
  const key = written === undefined ? undefined : readKey(written);
  assert.ok(key === undefined || key.ok);
  const context = {
    key: key?.ok ? key.value : undefined,
    tuningNames: names,
    reentrant: isReentrant(names.map(midiOf)),
  };
  return nameChord(midisOf(tuning, shape), context);
}

/** `note:D` and `interval:tritone` say the kind before the name. */
function agrees({ kind, names }: ChordNaming, expected: string): boolean {
  const [wantedKind, name] = expected.includes(':') ? expected.split(':') : [undefined, expected];
  return names[0]?.name === name && (wantedKind === undefined || wantedKind === kind);
}

describe('G7: grips in 55 tunings (data/grips.tsv; common practice, no source)', () => {
  it('every first name is one a player gives, nearly every one the first choice', () => {
    const wrong = GRIPS.filter((grip) => !grip.expected.some((name) => agrees(nameGrip(grip), name)));
    const first = GRIPS.filter((grip) => agrees(nameGrip(grip), grip.expected[0] ?? '')).length;
    console.log(
      `      ${GRIPS.length} grips in ${new Set(GRIPS.map(({ tuning }) => tuning)).size} tunings: ${first} the first choice`,
    );
    assert.deepEqual(wrong, []);
    assert.equal(GRIPS.length, 329);
    assert.ok(first >= 325);
  });

  it('a chord is called a chord, and two notes are not', () => {
    for (const grip of GRIPS) {
      const { kind } = nameGrip(grip);
      const [expected = ''] = grip.expected;
      const wanted =
        /^(note|interval):/.exec(expected)?.[1] ?? (/^[A-G][#b]?5(\/|$)/.test(expected) ? 'power' : 'chord');
      assert.equal(kind, wanted, `${grip.tuning} ${grip.shape}`);
    }
  });
});

describe('T7–T10, T14: the notes under known shapes (worked examples, computed)', () => {
  const STANDARD = 'E2 A2 D3 G3 B3 E4';
  for (const [tuning, shape, notes] of [
    [STANDARD, 'x32010', 'C3 E3 G3 C4 E4'],
    [STANDARD, '133211', 'F2 C3 F3 A3 C4 F4'],
    [STANDARD, 'x21202', 'B2 D#3 A3 B3 F#4'],
    [STANDARD, 'x32310', 'C3 E3 Bb3 C4 E4'],
    ['D2 G2 D3 G3 B3 D4', '202002', 'E2 G2 E3 G3 B3 E4'],
    ['D2 A2 D3 G3 A3 D4', '520020', 'G2 B2 D3 G3 B3 D4'],
    ['D2 A2 D3 G3 A3 D4', '222000', 'E2 B2 E3 G3 A3 D4'],
    ['D2 A2 D3 F#3 A3 D4', 'x20120', 'B2 D3 G3 B3 D4'],
    ['D2 A2 D3 F#3 A3 D4', 'x02102', 'A2 E3 G3 A3 E4'],
    ['E3 A3 D4 G4 B3 E4', 'x32010', 'C4 E4 G4 C4 E4'],
  ] as const) {
    it(`${shape} in ${tuning} is ${notes}`, () => {
      const midis = midisOf(tuning, shape);
      assert.deepEqual(midis, notesOf(notes).map(midiOf));
      // As the chord's first name spells them.
      const naming = nameChord(midis, { tuningNames: notesOf(tuning) });
      const spelled = midis.map((midi) => {
        const name = naming.notes.find((note) => (midi - midiOf({ ...note, octave: 4 })) % 12 === 0);
        assert.ok(name);
        return formatNoteName(spellMidi(midi, { key: undefined, tuningNames: [name] }));
      });
      assert.equal(spelled.join(' '), notes);
    });
  }

  it('T8: D and C over A are D7 without a third, never D7', () => {
    const { names } = nameChord(midisOf('D2 G2 D3 G3 B3 D4', '020210'));
    assert.equal(names[0]?.name, 'D7(no3)');
    assert.ok(names.every(({ name }) => name !== 'D7'));
    assert.deepEqual(
      names.slice(0, 1).map(({ words }) => words),
      ['seventh, no third'],
    );
  });

  it('T17: D6 is Bm7 by its bass, C6 is Am7', () => {
    const first = (notes: string) => nameChord(notesOf(notes).map(midiOf)).names[0]?.name;
    assert.equal(first('D3 F#3 A3 B3'), 'D6');
    assert.equal(first('B2 D3 F#3 A3'), 'Bm7');
    assert.equal(first('C3 E3 G3 A3'), 'C6');
    assert.equal(first('A2 C3 E3 G3'), 'Am7');
    assert.equal(first('D3 G3 A3'), 'Dsus4');
  });
});
