import assert from 'node:assert/strict';
import fc from 'fast-check';
import { createFingerboard } from '../../../../src/instrument/sounding';
import type { Tuning } from '../../../../src/instrument/tuning';
import { compareChord } from '../../../../src/music/chord/compareChord';
import { readChordName } from '../../../../src/music/chord/readChordName';
import { fingerGrip } from '../../../../src/playing/hand/grips';
import { handOptions } from '../../../../src/playing/hand/options';
import { findShapes } from '../../../../src/playing/shapes/findShapes';
import { nearestShape } from '../../../../src/playing/shapes/nearestShape';
import type { Target } from '../../../../src/playing/target';
import { textOf, wanted } from './known';

const ROOTS = ['C', 'C#', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const QUALITIES = [
  ...[
    '',
    'm',
    '7',
    'maj7',
    'm7',
    'sus2',
    'sus4',
    'dim',
    'aug',
    '5',
    '6',
    'm6',
    'dim7',
    'm7b5',
    '7sus4',
    'add9',
  ],
  ...[
    '9',
    'maj9',
    'm9',
    '7b9',
    '7#9',
    '11',
    'm11',
    '13',
    '6/9',
    'm(maj7)',
    '7b5',
    '7#5',
    '7alt',
    'm(add9)',
    '7(no3)',
  ],
];
const chord = fc
  .tuple(
    fc.constantFrom(...ROOTS),
    fc.constantFrom(...QUALITIES),
    fc.option(fc.constantFrom(...ROOTS), { nil: undefined, freq: 3 }),
  )
  .map(([root, quality, bass]) => `${root}${quality}${bass === undefined ? '' : `/${bass}`}`);

const string = fc.record({
  midi: fc.integer({ min: 28, max: 72 }),
  partner: fc.option(fc.constantFrom(0, 12, -12), { nil: undefined, freq: 5 }),
  cents: fc.constantFrom(0, 0, 0, 0, -14),
  firstFret: fc.constantFrom(0, 0, 0, 0, 0, 0, 0, 5),
});
const scene = fc
  .record({
    strings: fc.array(string, { minLength: 4, maxLength: 8 }),
    capo: fc.option(fc.record({ fret: fc.integer({ min: 1, max: 7 }), partial: fc.boolean() }), {
      nil: undefined,
    }),
    chord,
    slide: fc.boolean(),
    thumb: fc.boolean(),
    scaleLength: fc.constantFrom(345, 572, 648, 864),
  })
  .map(({ strings, capo, ...rest }) => {
    const tuning: Tuning = {
      strings: strings.map(({ midi, partner, cents, firstFret }) => {
        const name = { letter: 'C' as const, alter: 0, octave: 4 };
        const first = { name, midi: midi + cents / 100 };
        return {
          pitches: partner === undefined ? [first] : [first, { name, midi: first.midi + partner }],
          firstFret,
          octaveInferred: false,
        };
      }),
      name: undefined,
      text: '',
    };
    const numbers = strings.length > 4 ? [2, 3, 4] : [2, 3];
    const board = createFingerboard(
      tuning,
      capo && { fret: capo.fret, strings: capo.partial ? numbers : undefined },
      20,
    );
    const target: Target = {
      fingerboard: board,
      scaleLength: rest.scaleLength,
      reach: 130,
      slide: rest.slide,
    };
    return { ...rest, target, shift: capo && !capo.partial ? capo.fret : 0 };
  });

/** Sounding MIDI numbers of frets, low-placed string first, straight from the fingerboard. */
function soundOf(frets: readonly (number | undefined)[], { fingerboard }: Target): number[] {
  return frets.flatMap((fret, index) => {
    if (fret === undefined) return [];
    const midis = fingerboard.pitches(index, fret);
    assert.ok(midis, `string ${index} has no fret ${fret}`);
    return [...midis];
  });
}

const SCENES = 150;

const classOf = (midi: number): number => ((Math.round(midi) % 12) + 12) % 12;

describe('an offered shape sounds the chord asked for, always', () => {
  it('in tunings of 4 to 8 strings, courses, short strings, capos, under fingers and under a bar', function () {
    this.timeout(60_000);
    let shapes = 0;
    fc.assert(
      fc.property(scene, ({ target, chord: name, shift, thumb }) => {
        const read = readChordName(name);
        assert.ok(read.ok);
        const asked = wanted(name, shift);
        const options = { hand: handOptions({ thumb }), limit: 12, highestFret: 9 };
        for (const shape of findShapes(asked, target, options)) {
          shapes++;
          const midis = soundOf(shape.frets, target);
          const sounding = midis.reduce((mask, midi) => mask | (1 << classOf(midi)), 0);
          assert.equal(
            sounding & ~(asked.required | asked.optional),
            0,
            `${name}: ${textOf(shape)} has foreign tones`,
          );
          assert.equal(asked.required & ~sounding, 0, `${name}: ${textOf(shape)} lacks a tone`);
          assert.equal(shape.leftOut, (asked.required | asked.optional) & ~sounding);
          assert.ok(asked.oneOf === 0 || (sounding & asked.oneOf) !== 0);
          const lowest = Math.min(...midis.map(Math.round));
          assert.equal(shape.bass, classOf(lowest));
          if (asked.bass !== undefined)
            assert.equal(classOf(lowest), asked.bass, `${name}: ${textOf(shape)}`);
          // What reads written names against sounds says the same.
          const played = midis.map((midi) => midi - shift);
          const { verdict } = compareChord(read.value, played);
          assert.equal(verdict, 'agrees', `${name}: ${textOf(shape)} ${verdict}`);
          // The hand holds it.
          const places = shape.grip.placements;
          assert.ok(fingerGrip(places, target, options.hand).best);
        }
      }),
      { numRuns: SCENES },
    );
    console.log(`      ${shapes} shapes in ${SCENES} scenes`);
    assert.ok(shapes > 3 * SCENES);
  });

  it('the nearest one, too, and it is no farther than any other of the finder', function () {
    this.timeout(60_000);
    fc.assert(
      fc.property(scene, fc.integer({ min: 0, max: 11 }), ({ target, chord: name, shift, thumb }, pick) => {
        const asked = wanted(name, shift);
        const options = { hand: handOptions({ thumb }), highestFret: 9 };
        const all = findShapes(asked, target, { ...options, limit: 12 });
        const other = all[pick % Math.max(1, all.length)];
        if (!other) return;
        const from = other.frets.map((fret, index) => (index === 1 ? 1 : fret));
        const near = nearestShape(from, asked, target, options);
        assert.ok(near);
        const sounding = soundOf(near.shape.frets, target).reduce(
          (mask, midi) => mask | (1 << classOf(midi)),
          0,
        );
        assert.equal(sounding & ~(asked.required | asked.optional), 0);
        assert.equal(asked.required & ~sounding, 0);
        const changes = (frets: readonly (number | undefined)[]): number =>
          frets.filter((fret, index) => fret !== from[index]).length;
        assert.equal(near.changed, changes(near.shape.frets));
        for (const one of all)
          if (near.shape.leftOut === 0 || one.leftOut !== 0)
            if (near.shape.leftOut !== 0 || one.leftOut === 0) assert.ok(near.changed <= changes(one.frets));
      }),
      { numRuns: 40 },
    );
  });
});
