import type { TuningString } from '../tuning';
import type { EarCheck } from '../tuningFrets';

/** A string by its player's number. */
export interface NumberedString {
  readonly number: number;
  readonly string: TuningString;
}

/** An ear check and how hard it is to hear or reach; only to be compared. */
export interface RatedCheck {
  readonly check: EarCheck;
  readonly cost: number;
}

/* How hard a check is: open strings are easiest, and a same note is easier than an octave. Engineering values. */
const OCTAVE_APART = 1;
const TWO_OCTAVES_APART = 4;
const STOPPED = 2;
const STOPPED_ITSELF = 2.5;
const PER_FRET = 0.1;
const PER_STRING = 0.3;
/** Frets that are easy to reach with one hand while the other turns the peg (engineering value). */
const MOST_FRET = 9;
/** Half steps by which notes may differ and still be heard as the same. */
const EXACT = 0.005;

/**
 * The easiest way to hear that a string has come to its pitch, by strings that are in tune already; undefined where
 * none of them tells it, and only a tuner or a fork does.
 * @param frets how many the neck has
 * @example earCheckFor(string6AtD2, [string4AtD3], 22)?.check // { string: 6, by: 4, fret: 0, apart: -12, … }
 */
export function earCheckFor(
  wanted: NumberedString,
  tuned: readonly NumberedString[],
  frets: number,
): RatedCheck | undefined {
  let best: RatedCheck | undefined;
  const offer = (check: EarCheck, cost: number): void => {
    if (!best || cost < best.cost) best = { check, cost };
  };
  for (const other of tuned) {
    const strings = { string: wanted.number, by: other.number };
    const above = wanted.string.pitches[0].midi - other.string.pitches[0].midi;
    const whole = Math.round(above);
    if (Math.abs(above - whole) > EXACT) continue;
    const far = PER_STRING * Math.abs(wanted.number - other.number);
    for (const apart of [0, 12, -12, 24, -24]) {
      const octaves = apart === 0 ? 0 : Math.abs(apart) === 12 ? OCTAVE_APART : TWO_OCTAVES_APART;
      const fret = whole - apart;
      if (fret === 0) offer({ ...strings, fret, stops: 'by', apart }, octaves + far);
      const reach = fret + other.string.firstFret;
      if (fret > 0 && reach <= Math.min(MOST_FRET, frets))
        offer(
          { ...strings, fret: reach, stops: 'by', apart },
          STOPPED + 2 * octaves + PER_FRET * reach + far,
        );
      const own = wanted.string.firstFret - fret;
      if (apart === 0 && fret < 0 && own <= Math.min(MOST_FRET, frets))
        offer({ ...strings, fret: own, stops: 'string', apart }, STOPPED_ITSELF + PER_FRET * own + far);
    }
  }
  return best;
}
