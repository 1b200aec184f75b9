import { GUITAR, INSTRUMENTS, readInstrument } from '../../instrument/instruments';
import { formatTuningNotes } from '../../instrument/tuningFormat';
import { usualTuning } from '../../notation/headerViews';
import type { Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import { openStringsOf } from '../tuningAnswer';
import { offeredTunings } from '../tuningChoices';
import type { InstrumentChoice, StartingTuning } from './startAnswer';

/** Every instrument, the guitar first. */
export function instruments(): readonly InstrumentChoice[] {
  return [GUITAR, ...INSTRUMENTS.filter((instrument) => instrument !== GUITAR)].map((instrument) => ({
    name: instrument.name,
    notes: formatTuningNotes(usualTuning(instrument)),
  }));
}

/** Tunings to begin with on an instrument (a guitar where none is named): the nearest to its usual one first. */
export function startingTunings(
  name: string | undefined,
  settings: Settings,
): readonly StartingTuning[] | ServiceError {
  const read = name === undefined ? { ok: true as const, value: GUITAR } : readInstrument(name);
  if (!read.ok) return { error: read.error.message };
  return offeredTunings(read.value, usualTuning(read.value), settings).map(
    ({ value, notes, steps, remark = '', tuning }) => {
      const { kind, names } = openStringsOf(tuning);
      const chord = kind === 'chord' || kind === 'power' ? (names[0]?.name ?? '') : '';
      return { value, notes, steps, chord, remark };
    },
  );
}
