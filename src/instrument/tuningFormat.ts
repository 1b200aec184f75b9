import { GUITAR } from './instruments';
import type { Instrument } from './instrument';
import { formatNoteList } from './noteList';
import { stringNumber, type Tuning, type TuningString } from './tuning';
import { tuningsFor } from './tunings';

/**
 * The value that reads back to the same strings, in the same spelling: the trade's name on this instrument where it
 * has one, else notes with octaves.
 * @example formatTuning(tuning) // 'DADGAD'
 */
export function formatTuning(tuning: Tuning, instrument: Instrument = GUITAR): string {
  const notes = formatTuningNotes(tuning);
  const named = tuningsFor(instrument).find(({ strings }) => formatNoteList(strings) === notes);
  return named?.name ?? notes;
}

/** Notes with octaves, low string first: `D2 A2 D3 G3 A3 D4`; courses with a slash. */
export function formatTuningNotes(tuning: Tuning): string {
  return formatNoteList(tuning.strings);
}

/** The trade's name of the tuning on this instrument, however it is spelled; undefined where it has none. */
export function nameOfTuning(tuning: Tuning, instrument: Instrument): string | undefined {
  return nameOfStrings(tuning.strings, instrument);
}

const NAMES = new WeakMap<Instrument, ReadonlyMap<string, string>>();

/** The trade's name of these strings on this instrument. */
export function nameOfStrings(strings: readonly TuningString[], instrument: Instrument): string | undefined {
  let names = NAMES.get(instrument);
  if (names === undefined) {
    // Reversed, so that of two names for the same pitches the first of the table stays.
    const entries = [...tuningsFor(instrument)].reverse();
    names = new Map(entries.map((tuning) => [soundKey(tuning.strings), tuning.name]));
    NAMES.set(instrument, names);
  }
  return names.get(soundKey(strings));
}

/** Whether two tunings sound the same string by string; spelling and names do not count. */
export function sameTuning(a: Tuning, b: Tuning): boolean {
  return a === b || soundKey(a.strings) === soundKey(b.strings);
}

function soundKey(strings: readonly TuningString[]): string {
  return strings
    .map(({ pitches, firstFret }) => `${pitches.map(({ midi }) => midi).join('/')}@${firstFret}`)
    .join(' ');
}

/** What a string that only one of two tunings has counts in their distance. */
const MISSING = 12;

/**
 * How far two tunings are apart, to order them nearest first: the half steps of retuning, summed over strings of the
 * same number; a string that only one of them has counts 12. Of a course the first string counts.
 */
export function tuningDistance(a: Tuning, b: Tuning): number {
  const [more, fewer] = a.strings.length >= b.strings.length ? [a, b] : [b, a];
  return stepsFrom(fewer, more).reduce<number>((sum, steps) => sum + Math.abs(steps ?? MISSING), 0);
}

/**
 * For each string of `b`, low string first, the half steps by which it lies above the string of the same number in
 * `a`; undefined where `a` has no such string. Cents are decimals.
 * @example stepsFrom(standard, dropD) // [-2, 0, 0, 0, 0, 0]
 */
export function stepsFrom(a: Tuning, b: Tuning): (number | undefined)[] {
  return b.strings.map((string, index) => {
    const before = a.strings[a.strings.length - stringNumber(b, index)];
    return before && Math.round((string.pitches[0].midi - before.pitches[0].midi) * 10000) / 10000;
  });
}
