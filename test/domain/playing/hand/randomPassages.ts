import fc from 'fast-check';
import type { PassageNote } from '../../../../src/playing/passage';
import { note, OPENS } from '../boards';
import type { OracleHand, OracleNote } from './handOracle';

export interface Case {
  readonly hand: OracleHand;
  readonly notes: readonly OracleNote[];
}

const TUNINGS: readonly { readonly opens: readonly number[]; readonly length: number }[] = [
  { opens: OPENS.standard, length: 648 },
  { opens: OPENS.dadgad, length: 648 },
  { opens: OPENS.openG, length: 648 },
  { opens: OPENS.ukulele, length: 345 },
  { opens: OPENS.bass, length: 864 },
];

/**
 * Small passages on short necks: 2 to 4 moments of 1 to 4 notes, at most six in all, some of them ringing on through
 * later moments, joined to earlier ones or stopped by need.
 */
export const cases: fc.Arbitrary<Case> = fc
  .record({
    tuning: fc.constantFrom(...TUNINGS),
    frets: fc.integer({ min: 4, max: 7 }),
    slide: fc.constantFrom(false, false, false, false, false, true),
    thumb: fc.constantFrom(false, false, false, true),
    openStrings: fc.constantFrom(true, true, true, false),
    seconds: fc.constantFrom(0.1, 0.3, 0.6),
    sizes: fc.constantFrom(
      [1, 1, 1],
      [1, 1, 1, 1],
      [2, 1],
      [2, 1, 1],
      [1, 2, 1],
      [2, 2],
      [3, 1],
      [4, 1],
      [1, 4],
      [3, 2],
    ),
    raw: fc.array(
      fc.record({
        offset: fc.integer({ min: -1, max: 26 }),
        step: fc.integer({ min: 1, max: 4 }),
        ring: fc.constantFrom(0, 0, 0, 1, 2),
        stopped: fc.constantFrom(false, false, false, false, true),
        join: fc.constantFrom(false, false, false, true),
      }),
      { minLength: 6, maxLength: 6 },
    ),
  })
  .map(({ tuning, frets, slide, thumb, openStrings, seconds, sizes, raw }) => {
    const notes: OracleNote[] = [];
    sizes.forEach((size, moment) => {
      for (let i = 0; i < size; i++) {
        const one = raw[notes.length];
        if (!one) return;
        const source = notes.findLast((n) => n.onset < moment);
        const joined =
          source && one.join && !notes.some((n) => n.joinedTo === source.id) ? source : undefined;
        notes.push({
          id: notes.length,
          midi: joined ? joined.midi + one.step - 2 : Math.min(...tuning.opens) + one.offset,
          onset: moment,
          end: moment + 1 + one.ring,
          joinedTo: joined?.id,
          stopped: one.stopped,
        });
      }
    });
    const hand = { ...tuning, frets, slide, thumb, openStrings, secondsPerQuarter: seconds };
    return { hand, notes };
  });

/** The same notes as the search takes them. */
export function passageOf(notes: readonly OracleNote[]): PassageNote[] {
  return notes.map(({ id, midi, onset, end, joinedTo, stopped }) =>
    note(id, midi, onset, { end, joinedTo, need: stopped ? 'stopped' : 'any' }),
  );
}
