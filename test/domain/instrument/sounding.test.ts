import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { Capo } from '../../../src/instrument/capo';
import { INSTRUMENTS } from '../../../src/instrument/instruments';
import { fretDistance } from '../../../src/instrument/neck';
import {
  createFingerboard,
  soundFret,
  soundFretOnString,
  type FretReading,
} from '../../../src/instrument/sounding';
import { stringIndex } from '../../../src/instrument/tuning';
import { allTunings } from '../../../src/instrument/tunings';
import { parseNoteName, midiOf } from '../../../src/music/noteName';
import { tuning } from './read';

const FULL = (fret: number): Capo => ({ fret, strings: undefined });

function midi(note: string): number {
  const name = parseNoteName(note);
  assert.ok(name, note);
  return midiOf(name);
}

function notes(reading: FretReading): readonly number[] {
  assert.ok(reading.ok, JSON.stringify(reading));
  return reading.midis;
}

describe('frets to pitches', () => {
  it('capo 4, string 6 fret 3 is B2, MIDI 47 (T12; source: an issue thread, and computed)', () => {
    const standard = tuning('standard');
    assert.deepEqual(notes(soundFret(standard, FULL(4), 22, stringIndex(standard, 6), 3)), [47]);
    assert.equal(midi('B2'), 47);
  });

  it('the banjo’s fifth string at 7 is A4, two above open (T13; from memory, computed)', () => {
    const banjo = tuning('open G', 'banjo');
    const board = createFingerboard(banjo, undefined, 22);
    const reading = soundFretOnString(board, 5, 7);
    assert.ok(reading.ok);
    assert.deepEqual(reading, {
      ok: true,
      midis: [midi('A4')],
      openMidis: [67],
      stopFret: 7,
      zero: 'string start',
    });
    assert.deepEqual(notes(board.read(0, 0)), [67]);
    for (const fret of [1, 2, 3, 4, 5]) {
      assert.deepEqual(board.read(0, fret), {
        ok: false,
        reason: 'below-string-start',
        least: 6,
        most: 22,
        limit: 5,
      });
    }
    assert.deepEqual(notes(board.read(0, 6)), [68]);
    assert.equal(board.fretFor(0, 67), 0);
    assert.equal(board.fretFor(0, 69), 7);
    assert.equal(board.fretFor(0, 66), undefined);
    assert.equal(board.positionMm(0, 0, 667), fretDistance(5, 667));
  });

  it('a full capo raises the banjo’s fifth string as much as the others (common practice, no source)', () => {
    const board = createFingerboard(tuning('open G', 'banjo'), FULL(2), 22);
    assert.deepEqual(notes(board.read(0, 0)), [69]);
    assert.deepEqual(notes(board.read(0, 7)), [71]);
    assert.deepEqual(board.read(0, 5).ok, false);
    assert.deepEqual(
      notes(board.read(4, 5)),
      notes(board.read(0, 0)),
      'string 1 at 5 still gives the fifth string',
    );
    const open = board.read(0, 0);
    assert.ok(open.ok && open.stopFret === 7, 'the spike stands at fret 7');
  });

  it('T7 and T14: shapes in standard and high-strung tuning (computed)', () => {
    const shapes: readonly (readonly [string, string, string])[] = [
      ['standard', 'x32010', 'C3 E3 G3 C4 E4'],
      ['standard', '133211', 'F2 C3 F3 A3 C4 F4'],
      ['standard', 'x21202', 'B2 D#3 A3 B3 F#4'],
      ['high strung', 'x32010', 'C4 E4 G4 C4 E4'],
      ['open G', '202012', 'E2 G2 E3 G3 C4 E4'],
      ['DADGAD', '520020', 'G2 B2 D3 G3 B3 D4'],
      ['open D', 'x20120', 'B2 D3 G3 B3 D4'],
    ];
    for (const [name, shape, sounds] of shapes) {
      const board = createFingerboard(tuning(name), undefined, 22);
      const midis = Array.from(shape).flatMap((sign, index) =>
        sign === 'x' ? [] : notes(board.read(index, Number(sign))),
      );
      assert.deepEqual(midis, sounds.split(' ').map(midi), `${name} ${shape}`);
    }
  });

  it('a partial capo: 0 2 2 2 0 0 opens E B E A B E, and frets above it stay (read in a partial-capo page, computed)', () => {
    const board = createFingerboard(tuning('standard'), { fret: 2, strings: [5, 4, 3] }, 22);
    const opens = [0, 1, 2, 3, 4, 5].map((index) => board.openMidi(index));
    assert.deepEqual(opens, ['E2', 'B2', 'E3', 'A3', 'B3', 'E4'].map(midi));
    assert.deepEqual(board.read(1, 0), {
      ok: true,
      midis: [47],
      openMidis: [47],
      stopFret: 2,
      zero: 'partial capo',
    });
    assert.deepEqual(notes(board.read(1, 2)), [47]);
    assert.deepEqual(board.read(1, 1), { ok: false, reason: 'below-capo', least: 2, most: 22, limit: 2 });
    assert.deepEqual(notes(board.read(1, 3)), [48]);
    assert.deepEqual(notes(board.read(0, 1)), [41]);
    assert.equal(board.fretFor(1, 47), 0);
    assert.equal(board.fretFor(1, 46), undefined);
    assert.equal(board.fretFor(1, 48), 3);
    assert.equal(board.positionMm(1, 0, 648), fretDistance(2, 648));
    assert.equal(board.positionMm(1, 1, 648), undefined);
  });

  it('a partial capo below the start of the banjo’s fifth string leaves it alone', () => {
    const banjo = tuning('open G', 'banjo');
    assert.equal(createFingerboard(banjo, { fret: 2, strings: [5, 4] }, 22).openMidi(0), 67);
    assert.equal(createFingerboard(banjo, { fret: 7, strings: [5, 4] }, 22).openMidi(0), 69);
  });

  it('a course sounds both its notes', () => {
    const board = createFingerboard(tuning('standard', '12-string guitar'), FULL(1), 20);
    assert.deepEqual(notes(board.read(0, 3)), ['G#2', 'G#3'].map(midi));
    assert.deepEqual(notes(board.read(5, 0)), ['F4', 'F4'].map(midi));
  });

  it('ends with the neck', () => {
    const board = createFingerboard(tuning('standard'), FULL(3), 20);
    assert.deepEqual(notes(board.read(5, 17)), [84]);
    assert.deepEqual(board.read(5, 18), { ok: false, reason: 'past-neck', least: 1, most: 17, limit: 3 });
    assert.equal(board.fretFor(5, 85), undefined);
    assert.deepEqual(board.read(6, 0).ok, false);
    assert.equal(board.read(-1, 0).ok, false);
    assert.deepEqual(board.midisAt(5, 24), [88], 'a bend may go on past the last fret');
  });

  it('cents of a string carry to its frets, and the nearest fret is found', () => {
    const board = createFingerboard(tuning('E2 A2 D3 G#3-14c B3 E4'), undefined, 22);
    assert.equal(board.pitches(3, 0)?.[0], 55.86);
    assert.equal(board.fretFor(3, 58), 2);
  });

  it('counts the touching place of a harmonic from where frets count', () => {
    const capo = createFingerboard(tuning('standard'), FULL(2), 22);
    assert.equal(capo.absoluteFret(0, 12), 14);
    assert.equal(capo.absoluteFret(0, 0), 2);
    const banjo = createFingerboard(tuning('open G', 'banjo'), undefined, 22);
    assert.equal(banjo.absoluteFret(0, 17) - banjo.absoluteFret(0, 0), 12);
  });

  it('makes one board for one tuning, capo and number of frets', () => {
    const standard = tuning('standard');
    assert.equal(createFingerboard(standard, FULL(2), 22), createFingerboard(standard, FULL(2), 22));
    assert.notEqual(
      createFingerboard(standard, FULL(2), 22),
      createFingerboard(standard, { fret: 2, strings: [3] }, 22),
    );
  });

  it('law: what fretFor writes sounds the pitch, and every playable number is found again', () => {
    const tunings = allTunings().map((each) => tuning(each.name, each.instrument));
    const capos = fc.option(
      fc.record({
        fret: fc.integer({ min: 1, max: 9 }),
        strings: fc.option(fc.uniqueArray(fc.integer({ min: 1, max: 4 }), { minLength: 1 }), {
          nil: undefined,
        }),
      }),
      { nil: undefined },
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...tunings),
        capos,
        fc.integer({ min: 10, max: 36 }),
        (each, capo, frets) => {
          const board = createFingerboard(each, capo, frets);
          each.strings.forEach((string, index) => {
            for (let fret = 0; fret <= frets; fret++) {
              const reading = board.read(index, fret);
              if (!reading.ok) continue;
              const [sound = NaN] = reading.midis;
              const written = board.fretFor(index, sound);
              assert.ok(written !== undefined);
              assert.deepEqual(board.pitches(index, written), reading.midis);
              const own = written === fret || (reading.zero === 'partial capo' && written === 0);
              assert.ok(own, `${fret} became ${written}`);
              assert.equal(sound - string.pitches[0].midi, reading.stopFret - string.firstFret);
            }
          });
        },
      ),
      { numRuns: 500 },
    );
  });

  it('fits every instrument’s own neck', () => {
    for (const each of INSTRUMENTS) {
      const board = createFingerboard(tuning('standard', each.name), undefined, each.frets);
      each.firstFrets.forEach((_, index) => assert.ok(board.read(index, each.frets).ok, each.name));
    }
  });
});
