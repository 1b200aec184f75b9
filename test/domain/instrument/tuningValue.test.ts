import assert from 'node:assert/strict';
import fc from 'fast-check';
import { GUITAR, INSTRUMENTS } from '../../../src/instrument/instruments';
import { formatTuning, formatTuningNotes } from '../../../src/instrument/tuningFormat';
import { readTuning } from '../../../src/instrument/tuningValue';
import { allTunings, tuningsFor } from '../../../src/instrument/tunings';
import { formatNoteName, midiOf, type Letter } from '../../../src/music/noteName';
import { errorOf, instrument, tuning, valueOf } from './read';

/** Readings that the notation's cases 31–40 and 60 hold, and the same rules on further values. */
const READ: readonly (readonly [
  value: string,
  notes: string,
  name: string | undefined,
  instrument?: string,
])[] = [
  // case 31
  ['D-A-D-G-A-D', 'D2 A2 D3 G3 A3 D4', 'DADGAD'],
  // case 32
  ['EADGBe', 'E2 A2 D3 G3 B3 E4', 'standard'],
  ['eadgbe', 'E2 A2 D3 G3 B3 E4', 'standard'],
  // case 33
  ['C6', 'C2 A2 C3 G3 C4 E4', 'C6'],
  ['C6', 'G4 C4 E4 A4', 'C6', 'ukulele'],
  ['C6', 'C3 E3 G3 A3 C4 E4', 'C6', 'lap steel'],
  // case 35
  ['open A', 'E2 A2 E3 A3 C#4 E4', 'open A'],
  // case 36
  ['standard down 1', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4', 'half step down'],
  ['standard down 1 step', 'D2 G2 C3 F3 A3 D4', 'whole step down'],
  // case 38
  ['B E A D G B E', 'B1 E2 A2 D3 G3 B3 E4', undefined],
  // case 39
  ['G D G B D', 'G2 D3 G3 B3 D4', 'five-string open G'],
  // case 40
  ['A E A D F# B', 'A1 E2 A2 D3 F#3 B3', undefined],
  ['C G D A E B', 'C2 G2 D3 A3 E4 B4', 'all fifths'],
  // case 60
  ['DADGAD', 'D2/D3 A2/A3 D3/D4 G3/G4 A3/A3 D4/D4', 'DADGAD', '12-string guitar'],
  // names
  ['  Drop d ', 'D2 A2 D3 G3 B3 E4', 'drop D'],
  ['OPEN-G tuning', 'D2 G2 D3 G3 B3 D4', 'open G'],
  ['new standard', 'C2 G2 D3 A3 E4 G4', 'CGDAEG'],
  ['half step down', 'F#4 B3 D#4 G#4', 'half step down', 'ukulele'],
  // steps
  ['standard -2 0 0 0 -2 -2', 'D2 A2 D3 G3 A3 D4', 'DADGAD'],
  ['standard −2, 0, 0, 0, −2, −2', 'D2 A2 D3 G3 A3 D4', 'DADGAD'],
  ['standard 0 +2 2 1 0 0', 'E2 B2 E3 G#3 B3 E4', 'open E'],
  ['open E -2', 'D2 A2 D3 F#3 A3 D4', 'open D'],
  ['open G down 1', 'Db2 Gb2 Db3 Gb3 Bb3 Db4', undefined],
  ['open G up 1', 'Eb2 Ab2 Eb3 Ab3 C4 Eb4', undefined],
  ['open E -1 step', 'D2 A2 D3 F#3 A3 D4', 'open D'],
  ['standard down a half step', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4', 'half step down'],
  ['standard down 1/2 step', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4', 'half step down'],
  ['standard down half a step', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4', 'half step down'],
  ['standard, down two half steps', 'D2 G2 C3 F3 A3 D4', 'whole step down'],
  ['standard 2 steps down', 'C2 F2 Bb2 Eb3 G3 C4', undefined],
  ['standard down 1 1/2 steps', 'C#2 F#2 B2 E3 G#3 C#4', undefined],
  ['standard up 1 whole step', 'F#2 B2 E3 A3 C#4 F#4', undefined],
  // notes
  ['E2 B2 E3 G#3 B3 E4', 'E2 B2 E3 G#3 B3 E4', 'open E'],
  ['EBEG#BE', 'E2 B2 E3 G#3 B3 E4', 'open E'],
  ['ebeg#be', 'E2 B2 E3 G#3 B3 E4', 'open E'],
  ['EADGbe', 'E2 A2 D3 G3 B3 E4', 'standard'],
  ['EbAbDbGbBbEb', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4', 'half step down'],
  ['ebabdbgbbbeb', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4', 'half step down'],
  ['E♭ A♭ D♭ G♭ B♭ E♭', 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4', 'half step down'],
  ['GDGBbD', 'G2 D3 G3 Bb3 D4', undefined],
  ['e a d gb b e', 'E2 A2 D3 Gb3 B3 E4', 'lute'],
  ['D, A, D, G, B, E', 'D2 A2 D3 G3 B3 E4', 'drop D'],
  ['E2A2D3G3B3E4', 'E2 A2 D3 G3 B3 E4', 'standard'],
  ['E2 A D3 G B E', 'E2 A2 D3 G3 B3 E4', 'standard'],
  ['F# B E A D G B E', 'F#1 B1 E2 A2 D3 G3 B3 E4', undefined],
  ['E4', 'E4', undefined],
  ['g D G B D', 'G4 D3 G3 B3 D4', 'open G', 'banjo'],
  ['D G B D', 'D3 G3 B3 D4', undefined, 'banjo'],
  ['G C E A', 'G4 C4 E4 A4', 'C6', 'ukulele'],
  ['E A D G C', 'E1 A1 D2 G2 C3', undefined, 'bass'],
  // cents and courses
  ['D A D F#-14c A D', 'D2 A2 D3 F#3-14c A3 D4', undefined],
  ['E2/E3 A2/A3 D3 G3 B3 E4', 'E2/E3 A2/A3 D3 G3 B3 E4', undefined],
  ['E/E A D/D G3/G3 B E', 'E2/E3 A2/A3 D3/D4 G3/G3 B3/B3 E4/E4', undefined, '12-string guitar'],
  ['G D A E', 'G3/G3 D4/D4 A4/A4 E5/E5', 'standard', 'mandolin'],
  // notes in brackets
  ['DADGAD (D A D G A D)', 'D2 A2 D3 G3 A3 D4', 'DADGAD'],
  ['half step down (D# G# C# F# A# D#)', 'D#2 G#2 C#3 F#3 A#3 D#4', 'half step down'],
  ['drop D (D2 A2 D3 G3 B3 E4)', 'D2 A2 D3 G3 B3 E4', 'drop D'],
];

/** Values that cannot be read: kind, the stretch it points at, and what it offers first. */
const ERRORS: readonly (readonly [
  value: string,
  kind: string,
  at: string,
  offer: string | undefined,
  on?: string,
])[] = [
  // case 34
  ['A', 'one-note', 'A', 'open A'],
  // case 37
  ['standard -2 0 0', 'step-count', '-2 0 0', 'standard -2 0 0 0 0 0'],
  ['C', 'one-note', 'C', 'drop C', 'banjo'],
  ['  D ', 'one-note', 'D', 'drop D'],
  ['', 'no-tuning', '', 'standard'],
  ['standrad', 'unknown-name', 'standrad', 'standard'],
  [' drop H', 'unknown-name', 'drop H', 'drop D'],
  ['upside down', 'unknown-name', 'upside down', undefined],
  ['low G', 'unknown-name', 'low G', undefined],
  ['E A D G H E', 'bad-note', 'H', 'E A D G B E'],
  ['E2 A2 D3 G3 B3 E10', 'bad-note', 'E10', undefined],
  ['DADGAX', 'bad-note', 'X', 'DADGAD'],
  ['E A D/ G B E', 'bad-note', '/', undefined],
  ['E A D G-120c B E', 'bad-cents', 'G-120c', undefined],
  ['A A A A A A A A A A A A A A B', 'too-many-strings', 'B', 'A A A A A A A A A A A A A A'],
  ['standard down', 'steps-amount', 'down', 'standard down 1'],
  ['open E 2', 'steps-sign', '2', 'open E -2'],
  ['standard down 1/3 step', 'steps-whole', 'down 1/3 step', undefined],
  ['standard -0.5', 'steps-whole', '-0.5', undefined],
  ['standard -30', 'steps-range', '-30', undefined],
  ['standard -24', 'out-of-range', '-24', undefined, 'six-string bass'],
  ['-2 0 0 0 -2 -2', 'steps-without-name', '-2 0 0 0 -2 -2', 'standard -2 0 0 0 -2 -2'],
  ['E A D G B E -2', 'steps-without-name', 'E A D G B E', 'D2 G2 C3 F3 A3 D4'],
  ['DADGAD (D A D G B D)', 'disagrees-with-notes', 'B', 'DADGAD'],
  ['DADGAD (D A D G A)', 'disagrees-with-notes', 'D A D G A', 'DADGAD'],
  ['open G (D2 G2 D3 G2 B3 D4)', 'disagrees-with-notes', 'G2', 'open G'],
  ['DADGAD (mine)', 'bad-note', 'mine', undefined],
];

describe('the value of tuning', () => {
  for (const [value, notes, name, on = 'guitar'] of READ) {
    it(`reads “${value}” on ${on}`, () => {
      const read = tuning(value, on);
      assert.equal(formatTuningNotes(read), notes);
      assert.equal(read.name, name);
      assert.equal(read.text, value);
    });
  }

  for (const [value, kind, at, offer, on = 'guitar'] of ERRORS) {
    it(`tells what is wrong with “${value}” on ${on}`, () => {
      const error = errorOf(readTuning(value, { instrument: instrument(on) }), value);
      assert.equal(error.kind, kind, error.message);
      assert.equal(value.slice(error.start, error.end), at, error.message);
      if (offer !== undefined) assert.ok(error.suggestions.includes(offer), error.suggestions.join(' · '));
      assert.match(error.message, /[.?]$/);
    });
  }

  it('offers values that can be read', () => {
    for (const [value, , , , on = 'guitar'] of ERRORS) {
      for (const suggestion of errorOf(readTuning(value, { instrument: instrument(on) })).suggestions) {
        const again = readTuning(suggestion, { instrument: instrument(on) });
        assert.ok(again.ok, `${value} → ${suggestion}: ${again.ok ? '' : again.error.message}`);
      }
    }
  });

  it('tells a text that is far too long instead of reading it', () => {
    const text = 'E '.repeat(20000);
    assert.equal(errorOf(readTuning(text, { instrument: GUITAR })).kind, 'too-long');
  });

  it('keeps strings 5 to 1 where a guitar has five notes', () => {
    assert.equal(tuning('G D G B D').strings.length, 5);
    assert.equal(tuning('five-string open G').strings.length, 5);
  });

  it('begins the banjo’s fifth string at its fifth fret, and no string of four', () => {
    assert.deepEqual(
      tuning('open G', 'banjo').strings.map(({ firstFret }) => firstFret),
      [5, 0, 0, 0, 0],
    );
    assert.deepEqual(
      tuning('D G B D', 'banjo').strings.map(({ firstFret }) => firstFret),
      [0, 0, 0, 0],
    );
  });

  it('says which octaves were worked out', () => {
    assert.deepEqual(
      tuning('E2 A D3 G B E4').strings.map(({ octaveInferred }) => octaveInferred),
      [false, true, false, true, true, false],
    );
  });

  it('tells when a small b could be a flat, and no known tuning decides', () => {
    const read = readTuning('ebdgbe', { instrument: GUITAR });
    assert.ok(read.ok);
    assert.deepEqual(
      read.notices.map(({ kind }) => kind),
      ['flat-or-b'],
    );
    const clear = readTuning('eadgbe', { instrument: GUITAR });
    assert.ok(clear.ok);
    assert.deepEqual(clear.notices, []);
  });

  describe('the user’s own tunings', () => {
    const userTunings = {
      'Tide Mill': 'C G D G C D',
      'open G': 'open G -2',
      Ferry: 'Tide Mill +2',
      Wrong: 'E A Q G B E',
    };
    const read = (value: string, own: Readonly<Record<string, string>> = userTunings) =>
      readTuning(value, { instrument: GUITAR, userTunings: own });

    it('come first, in the user’s letters', () => {
      const mill = valueOf(read('tide-mill'));
      assert.equal(mill.name, 'Tide Mill');
      assert.equal(formatTuningNotes(mill), 'C2 G2 D3 G3 C4 D4');
      assert.equal(formatTuningNotes(valueOf(read('open G'))), 'C2 F2 C3 F3 A3 C4');
    });

    it('may start from one another and carry steps', () => {
      assert.equal(formatTuningNotes(valueOf(read('Ferry'))), 'D2 A2 E3 A3 D4 E4');
      assert.equal(formatTuningNotes(valueOf(read('Tide Mill +2'))), 'D2 A2 E3 A3 D4 E4');
      assert.equal(valueOf(read('D2 A2 E3 A3 D4 E4')).name, 'Ferry');
    });

    it('do not loop', () => {
      const error = errorOf(read('dawn', { dawn: 'dusk', dusk: 'night down 2', night: 'dawn' }));
      assert.equal(error.kind, 'loop');
      assert.deepEqual([error.start, error.end], [0, 4]);
      assert.equal(errorOf(read('dawn', { dawn: 'dawn' })).kind, 'loop');
    });

    it('are named when they cannot be read', () => {
      const error = errorOf(read(' Wrong'));
      assert.equal(error.kind, 'user-tuning');
      assert.match(error.message, /Wrong.*“Q”/);
      assert.deepEqual([error.start, error.end], [1, 6]);
    });

    it('are among the names offered', () => {
      assert.ok(errorOf(read('Tied Mill')).suggestions.includes('Tide Mill'));
    });
  });
});

describe('laws of tuning values', () => {
  const anyInstrument = fc.constantFrom(...INSTRUMENTS);
  const note = fc.record({
    letter: fc.constantFrom<Letter>('C', 'D', 'E', 'F', 'G', 'A', 'B'),
    alter: fc.constantFrom(-1, 0, 1),
    octave: fc.integer({ min: 0, max: 8 }),
    cents: fc.constantFrom(0, 0, 0, -14, 3, -13.69, 50),
    written: fc.boolean(),
    course: fc.boolean(),
  });
  const list = fc.array(note, { minLength: 2, maxLength: 14 });
  const textOf = (notes: readonly (typeof note extends fc.Arbitrary<infer N> ? N : never)[]): string =>
    notes
      .map(({ letter, alter, octave, cents, written, course }) => {
        const name = letter + (alter < 0 ? 'b' : alter > 0 ? '#' : '');
        const bend = cents === 0 ? '' : `${cents > 0 ? '+' : ''}${cents}c`;
        return `${name}${written ? octave : ''}${bend}${course ? `/${name}${octave}` : ''}`;
      })
      .join(' ');

  it('what is written reads again: readTuning(formatTuning(t)) is t', () => {
    fc.assert(
      fc.property(list, anyInstrument, (notes, on) => {
        const read = readTuning(textOf(notes), { instrument: on });
        if (!read.ok) return assert.equal(read.error.kind, 'out-of-range');
        for (const text of [formatTuning(read.value, on), formatTuningNotes(read.value)]) {
          const again = valueOf(readTuning(text, { instrument: on }), text);
          assert.deepEqual(bare(again.strings), bare(read.value.strings));
          assert.equal(again.name, read.value.name);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('so does every named tuning, by its name', () => {
    for (const each of allTunings()) {
      const on = instrument(each.instrument);
      const read = valueOf(readTuning(each.notes, { instrument: on }));
      const text = formatTuning(read, on);
      assert.equal(text, each.name);
      assert.deepEqual(bare(valueOf(readTuning(text, { instrument: on })).strings), bare(read.strings));
    }
  });

  it('octaves are inferred as a search over all of them says', () => {
    // An independent oracle: every choice of octaves for up to five strings, by the words of the notation.
    fc.assert(
      fc.property(
        fc.array(note, { minLength: 2, maxLength: 5 }),
        fc.constantFrom('guitar', 'ukulele', 'banjo', 'bass'),
        (notes, on) => {
          const usual = instrument(on)
            .usualTuning.split(' ')
            .map((text) => {
              const [, letter = 'C', sign = '', octave = '0'] = /^([A-G])(#?)(\d)$/.exec(text) ?? [];
              return midiOf({
                letter: letter as Letter,
                alter: sign === '#' ? 1 : 0,
                octave: Number(octave),
              });
            });
          const used = notes.slice(0, usual.length);
          const near = usual.slice(usual.length - used.length);
          let best: { readonly midis: readonly number[]; readonly cost: number } | undefined;
          const visit = (midis: readonly number[]): void => {
            const next = used[midis.length];
            if (!next) {
              const distance = midis.reduce((sum, midi, at) => sum + Math.abs(midi - (near[at] ?? 0)), 0);
              const cost = distance * 10000 + midis.reduce((sum, midi) => sum + midi, 0);
              if (best === undefined || cost < best.cost) best = { midis, cost };
              return;
            }
            for (let octave = 0; octave <= 8; octave++) {
              const midi = midiOf({ letter: next.letter, alter: next.alter, octave });
              const before = midis.at(-1);
              const rise = (near[midis.length] ?? 0) - (near[midis.length - 1] ?? 0);
              if (before !== undefined && (midi - before) * rise < 0) continue;
              visit([...midis, midi]);
            }
          };
          visit([]);
          const text = textOf(used.map((each) => ({ ...each, written: false, cents: 0, course: false })));
          const read = tuning(text, on).strings.map(({ pitches }) => midiOf(pitches[0].name));
          const cost = read.reduce(
            (sum, midi, at) => sum + Math.abs(midi - (near[at] ?? 0)) * 10000 + midi,
            0,
          );
          assert.equal(
            cost,
            best?.cost,
            `${text} on ${on}: ${read.join(' ')} for ${best?.midis.join(' ') ?? ''}`,
          );
          assert.deepEqual(tuning(text, on).strings, tuning(text, on).strings);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('no text throws, and errors lie inside it', () => {
    const words = fc.constantFrom(
      'standard',
      'open',
      'down',
      'up',
      'step',
      'half',
      '-2',
      '+1',
      '0',
      'E',
      'a',
      'bb',
      'G#3',
      '-14c',
      '/',
      '(',
      ')',
      ',',
      'DADGAD',
      '½',
      '1/0',
      '−',
      '♭',
      'x',
      'drop D',
      '14',
      'c',
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(words, { maxLength: 18 }).map((all) => all.join(' ')),
      fc.array(words, { maxLength: 18 }).map((all) => all.join('')),
      fc.string({ unit: fc.constantFrom(...'ABCDEFGabcdefg#-/ 0123') }),
    );
    fc.assert(
      fc.property(
        text,
        anyInstrument,
        fc.dictionary(words, text, { maxKeys: 3 }),
        (value, on, userTunings) => {
          const read = readTuning(value, { instrument: on, userTunings });
          const notices = read.ok ? read.notices : [read.error];
          for (const { start, end } of notices) {
            assert.ok(
              start >= 0 && start <= end && end <= Math.max(value.length, 1),
              `${start}–${end} in “${value}”`,
            );
          }
          if (!read.ok) return;
          assert.ok(read.value.strings.length >= 1 && read.value.strings.length <= 14);
          for (const { pitches } of read.value.strings) {
            for (const { name, midi } of pitches) {
              assert.ok(midi >= 0 && midi <= 127.99, formatNoteName(name));
              assert.ok(Math.abs(midi - midiOf(name)) < 1);
            }
          }
        },
      ),
      { numRuns: 5000 },
    );
  });

  it('names of one instrument are read as names, never as notes', () => {
    for (const on of INSTRUMENTS) {
      for (const { name, aliases } of tuningsFor(on)) {
        for (const each of aliases) assert.equal(tuning(each, on.name).name, name, `${on.name}: ${each}`);
      }
    }
  });
});

/** Strings without the remark how their octave was found. */
function bare(strings: ReturnType<typeof tuning>['strings']): unknown {
  return strings.map(({ pitches, firstFret }) => ({ pitches, firstFret }));
}
