import type { Instrument } from '../../instrument/instrument';
import type { Tuning } from '../../instrument/tuning';
import { readTuning } from '../../instrument/tuningValue';
import { formatPitchName } from '../../music/noteName';
import { usualTuning } from '../../notation/headerViews';
import type { TuningClaim } from './claims';

/** Reads a value of the field `tuning`; undefined where it cannot be read. */
export type TuningReader = (value: string, instrument: Instrument) => Tuning | undefined;

/**
 * Reads tunings with the user's own among them, each value once: a long text says the same ones over and over.
 * @param userTunings name and value
 */
export function tuningReader(userTunings: Readonly<Record<string, string>>): TuningReader {
  const known = new Map<string, Tuning | undefined>();
  return (value, instrument) => {
    const key = `${instrument.name}: ${value}`;
    if (!known.has(key)) {
      const read = readTuning(value, { instrument, userTunings });
      known.set(key, read.ok ? read.value : undefined);
    }
    return known.get(key);
  };
}

/**
 * What a claim comes to on an instrument; undefined where it says nothing of it.
 * @param n how many lines there are
 */
export function tuningOfClaim(
  claim: TuningClaim,
  instrument: Instrument,
  n: number,
  read: TuningReader,
): Tuning | undefined {
  const usual = usualTuning(instrument);
  switch (claim.kind) {
    case 'name':
      return read(claim.value, instrument);
    case 'steps':
      return read(`standard ${claim.steps > 0 ? '+' : ''}${claim.steps}`, instrument);
    case 'notes': {
      const notes = claim.value.match(/[A-Ga-g](?:#|b|♯|♭)?\d?/g) ?? [];
      const low = claim.highFirst ? notes.toReversed() : notes;
      return low.length === Math.max(n, instrument.firstFrets.length)
        ? read(low.map(noteOf).join(' '), instrument)
        : undefined;
    }
    case 'string': {
      const at = claim.string === 0 ? 0 : usual.strings.length - claim.string;
      if (!usual.strings[at]) return undefined;
      const notes = usual.strings.map(({ pitches }, i) =>
        i === at ? claim.value : formatPitchName(pitches[0].name),
      );
      return read(notes.join(' '), instrument);
    }
  }
}

/** `e` is E, `eb` Eb. */
export function noteOf(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
