import assert from 'node:assert/strict';
import { degreeInKey, readKey } from '../../../src/music/key';
import { gripChord, gripNotes, service, settings } from './cursor';

/** The midi numbers of a grip's notes, the highest string number first. */
function gripMidis(header: string, grip: string): readonly number[] {
  const lines = [...grip].map((fret, i) => `${grip.length - i} |${fret}---|`).reverse();
  const document = service.open(`${header}\n\n${lines.join('\n')}\n`, settings);
  return service.notes(document).map(({ midi }) => midi ?? NaN);
}

/** Degrees of the open strings in a key, low string first. */
function degrees(tuning: string, key: string): string {
  const read = readKey(key);
  const answer = service.tuning(tuning, undefined, settings);
  if (!read.ok || 'error' in answer) throw new Error('Key and tuning are expected to be readable.');
  return answer.strings.map(({ midi }) => degreeInKey(read.value, midi).text).join(' ');
}

// Common practice, no source.
describe('facts of the trade (common practice, no source)', () => {
  it('open E is 1 5 1 3 5 1', () => {
    assert.equal(degrees('open E', 'E'), '1 5 1 3 5 1');
  });

  it('in open E a straight barre at 5 gives A and one at 7 gives B', () => {
    assert.equal(gripChord('tuning: open E', '000000'), 'E (major)');
    assert.equal(gripChord('tuning: open E', '555555'), 'A (major)');
    assert.equal(gripChord('tuning: open E', '777777'), 'B (major)');
  });

  it('DADGAD makes Dsus4', () => {
    const answer = service.tuning('DADGAD', undefined, settings);
    assert.ok(!('error' in answer));
    assert.equal(answer.chord, 'Dsus4');
    assert.equal(gripChord('tuning: DADGAD', '000000'), 'Dsus4 (suspended fourth, no third)');
  });

  it('in DADGAD frets 0 2 3 on the A strings and 0 2 4 on the others give D mixolydian', () => {
    // Strings 5 and 2 are the A strings.
    const midis = ['000000', '222222', '434434'].flatMap((grip) => gripMidis('tuning: DADGAD', grip));
    const sounding = [...new Set(midis.map((midi) => midi % 12))].sort((a, b) => a - b);
    // On the G string 4 is B. C D E F# G A B.
    assert.deepEqual(sounding, [0, 2, 4, 6, 7, 9, 11]);
  });

  it('the five-string open G has strings 5 to 1 and a power chord at the bottom', () => {
    const answer = service.tuning('five-string open G', undefined, settings);
    assert.ok(!('error' in answer));
    assert.deepEqual(
      answer.strings.map(({ number, note }) => `${number} ${note}`),
      ['5 G2', '4 D3', '3 G3', '2 B3', '1 D4'],
    );
    assert.equal(gripChord('tuning: five-string open G', '000xx'), 'G5 (power chord, no third)');
  });

  it('high strung sounds the lowest four strings an octave up under unchanged fingerings', () => {
    for (const grip of ['000000', '320003', '022100', '133211']) {
      const usual = gripMidis('tuning: standard', grip);
      const high = gripMidis('tuning: high strung', grip);
      assert.deepEqual(
        high.map((midi, i) => midi - (usual[i] ?? NaN)),
        [12, 12, 12, 12, 0, 0],
      );
    }
  });

  it('T14: high strung, C shape: the lowest pitch is not on the lowest string', () => {
    assert.deepEqual(gripNotes('tuning: high strung', 'x32010'), ['C4', 'E4', 'G4', 'C4', 'E4']);
    assert.equal(gripChord('tuning: high strung', 'x32010'), 'C (major)');
  });

  it('T8: shapes of open G', () => {
    assert.deepEqual(gripNotes('tuning: open G', '202002'), ['E2', 'G2', 'E3', 'G3', 'B3', 'E4']);
    const names = ['202012', '202002', 'x22212', '000003'].map((grip) => gripChord('tuning: open G', grip));
    assert.deepEqual(names, [
      'C/E (major, third in the bass)',
      'Em (minor)',
      'Am (minor)',
      'G7/D (dominant seventh, fifth in the bass)',
    ]);
    assert.equal(gripChord('tuning: open G', '020210'), 'D7(no3) (seventh, no third)');
  });

  it('T9: shapes of DADGAD', () => {
    assert.deepEqual(gripNotes('tuning: DADGAD', '520020'), ['G2', 'B2', 'D3', 'G3', 'B3', 'D4']);
    const names = ['000200', '520020', '222000', 'x02000', 'x02202'].map((grip) =>
      gripChord('tuning: DADGAD', grip),
    );
    assert.deepEqual(names, [
      'D5 (power chord, no third)',
      'G (major)',
      'Em7(add11) (minor seventh, added eleventh)',
      'A7sus4 (seventh, suspended fourth, no third)',
      'A5 (power chord, no third)',
    ]);
  });

  it('T10: shapes of open D', () => {
    assert.deepEqual(gripNotes('tuning: open D', 'x20120'), ['B2', 'D3', 'G3', 'B3', 'D4']);
    const names = ['x20120', '222122', 'x02102'].map((grip) => gripChord('tuning: open D', grip));
    assert.deepEqual(names, ['G/B (major, third in the bass)', 'Em (minor)', 'A7(no3) (seventh, no third)']);
  });

  // T6 of check-values: computed; the major ones also in guitarworld.com's lessons on open tunings.
  for (const [tuning, chords] of [
    ['open G', ['G/D', 'C/G', 'D/A', 'G/D']],
    ['open D', ['D', 'G', 'A', 'D']],
    ['open E', ['E', 'A', 'B', 'E']],
    ['open A', ['A/E', 'D/A', 'E/B', 'A/E']],
    ['open C', ['C', 'F', 'G', 'C']],
    ['open D minor', ['Dm', 'Gm', 'Am', 'Dm']],
    ['open E minor', ['Em', 'Am', 'Bm', 'Em']],
    ['open G minor', ['Gm/D', 'Cm/G', 'Dm/A', 'Gm/D']],
  ] as const) {
    it(`T6: a straight bar at 0, 5, 7 and 12 in ${tuning} gives one, four, five and one`, () => {
      const names = ['0', '5', '7', '12'].map((fret) => {
        const lines = Array.from({ length: 6 }, (_, i) => `${i + 1} |${fret}---|`);
        const text = `tuning: ${tuning}\nfretting: slide\n\n${lines.join('\n')}`;
        const answer = service.chord(
          service.notes(service.open(text, settings)).map(({ name }) => name),
          undefined,
          tuning,
          settings,
        );
        return 'error' in answer ? answer.error : answer.names[0]?.name;
      });
      assert.deepEqual(names, chords);
    });
  }
});
