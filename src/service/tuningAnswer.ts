import { findInstrument, GUITAR, readInstrument } from '../instrument/instruments';
import { stringNumber, type Tuning } from '../instrument/tuning';
import { formatNoteList } from '../instrument/noteList';
import { stepsFrom } from '../instrument/tuningFormat';
import { readTuning } from '../instrument/tuningValue';
import { nameChord, type ChordNaming } from '../music/chord/nameChord';
import { frequencyOf } from '../music/frequency';
import { usualTuning } from '../notation/headerViews';
import { tuningContext } from '../notation/chordContext';
import type { Settings } from './records';
import type { ServiceError, TuningAnswer } from './serviceApi';

/**
 * What a tuning value means on an instrument (a guitar when none is named): its strings, low string first, and what
 * they make when all are played open. Frequencies in hertz at A4 = 440 Hz (ISO 16:1975), to a hundredth.
 * @example tuning('DADGAD', undefined, settings).chord // 'Dsus4'
 */
export function tuning(
  value: string,
  instrumentName: string | undefined,
  settings: Settings,
): TuningAnswer | ServiceError {
  const read = instrumentName === undefined ? undefined : readInstrument(instrumentName);
  if (read && !read.ok) return { error: read.error.message };
  const instrument = (instrumentName === undefined ? undefined : findInstrument(instrumentName)) ?? GUITAR;
  const result = readTuning(value, { instrument, userTunings: settings.tunings });
  if (!result.ok) return { error: result.error.message };
  const steps = stepsFrom(usualTuning(instrument), result.value);
  const [chord = 'unnamed', ...alternatives] = openStringsOf(result.value).names.map(({ name }) => name);
  return {
    strings: result.value.strings.map((string, index) => ({
      number: stringNumber(result.value, index),
      note: formatNoteList([string]),
      midi: string.pitches[0].midi,
      frequency: Math.round(frequencyOf(string.pitches[0].midi) * 100) / 100,
      steps: steps[index] ?? null,
    })),
    chord,
    alternatives,
  };
}

/** What the open strings of a tuning make together, without a capo. */
export function openStringsOf(value: Tuning): ChordNaming {
  const midis = value.strings.flatMap(({ pitches }) => pitches.map(({ midi }) => midi));
  return nameChord(midis, tuningContext(value));
}
