import { readGauges, type Gauge } from '../gauges';
import type { Instrument } from '../instrument';
import { GUITAR } from '../instruments';
import { usualStrings } from '../stringsFromNotes';
import type { TuningString } from '../tuning';
import { findTuning } from '../tunings';
import { usualGauges } from '../usualGauges';

/** Strings that are sold together, and the tuning that they are made for. */
export interface UsualSet {
  /** `octave`: a guitar strung high, with the octave strings of a 12-string set for strings 6 to 3. */
  readonly kind: 'usual' | 'octave';
  /** Low string first. */
  readonly strings: readonly TuningString[];
  /** As many, low string first; undefined where no set is usual. */
  readonly gauges: readonly Gauge[] | undefined;
}

/**
 * The octave strings of a 12-string set in place of strings 6 to 3, the guitar's own strings 2 and 1. The trade's
 * octave sets, from memory.
 */
const OCTAVE_GAUGES = '27w 18 12 8 13 10';

let octave: UsualSet | undefined;

/**
 * The set that is usual for a tuning on an instrument: the instrument's own, but on a guitar tuned nearer to `high
 * strung` than to standard the octave set.
 * @example usualSetFor(GUITAR, highStrung.strings).kind // 'octave'
 */
export function usualSetFor(instrument: Instrument, strings: readonly TuningString[]): UsualSet {
  const usual = usualSet(instrument);
  if (instrument !== GUITAR) return usual;
  const other = octaveSet();
  return apart(other.strings, strings) < apart(usual.strings, strings) ? other : usual;
}

/** The instrument's own usual set in its usual tuning. */
export function usualSet(instrument: Instrument): UsualSet {
  return { kind: 'usual', strings: usualStrings(instrument), gauges: usualGauges(instrument) };
}

/**
 * The entry for a string by its number, string 1 being the last of a list; undefined where the list has no such string.
 * @example ofString(['46w', '36w'], 1) // '36w'
 */
export function ofString<T>(list: readonly T[] | undefined, number: number): T | undefined {
  return list?.[list.length - number];
}

function octaveSet(): UsualSet {
  if (octave) return octave;
  const tuning = findTuning('high strung', GUITAR);
  const gauges = readGauges(OCTAVE_GAUGES, 6);
  if (!tuning || !gauges.ok) throw new Error('The octave set of the guitar cannot be read.');
  octave = { kind: 'octave', strings: tuning.strings, gauges: gauges.value };
  return octave;
}

/** Half steps between strings of the same number, summed. */
function apart(a: readonly TuningString[], b: readonly TuningString[]): number {
  return b.reduce((sum, string, index) => {
    const other = ofString(a, b.length - index);
    return sum + (other ? Math.abs(other.pitches[0].midi - string.pitches[0].midi) : 0);
  }, 0);
}
