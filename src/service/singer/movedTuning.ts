import { usualStrings } from '../../instrument/stringsFromNotes';
import { retune } from '../../instrument/retune';
import type { Instrument } from '../../instrument/instrument';
import type { Tuning, TuningString } from '../../instrument/tuning';
import { formatTuningNotes, nameOfStrings, sameTuning } from '../../instrument/tuningFormat';
import { tuningsFor } from '../../instrument/tunings';
import { readTuning } from '../../instrument/tuningValue';
import type { Header } from '../../notation/header';
import type { Settings } from '../records';

/** A tuning that players think of as another one, all strings higher or lower. */
export interface BaseTuning {
  readonly name: string;
  /** Half steps by which the tuning lies above it. */
  readonly by: number;
}

/**
 * What a player would say a tuning is: the instrument's usual tuning some half steps off, its own name, or a named
 * tuning some half steps off, the nearest; undefined where it is none.
 * @example baseOf(halfStepDown, GUITAR) // { name: 'standard', by: -1 }
 */
export function baseOf(tuning: Tuning, instrument: Instrument): BaseTuning | undefined {
  const fromUsual = uniformSteps(usualStrings(instrument), tuning.strings);
  if (fromUsual !== undefined) {
    const name = nameOfStrings(usualStrings(instrument), instrument);
    return name === undefined ? undefined : { name, by: fromUsual };
  }
  if (tuning.name !== undefined) return { name: tuning.name, by: 0 };
  let base: BaseTuning | undefined;
  for (const { name, strings } of tuningsFor(instrument)) {
    const by = uniformSteps(strings, tuning.strings);
    if (by !== undefined && (!base || Math.abs(by) < Math.abs(base.by))) base = { name, by };
  }
  return base;
}

/**
 * The tuning in force with all strings up or down, written as players would: by a name of its own, as steps from a
 * named tuning (`DADGAD -2`), else by its notes.
 * @param by half steps
 */
export function movedTuning({ tuning, instrument }: Header, by: number, settings: Settings): Tuning {
  if (by === 0) return tuning;
  const strings = retune(
    tuning.strings,
    tuning.strings.map(() => by),
  );
  const plain: Tuning = { strings, name: undefined, text: '' };
  const base = baseOf(tuning, instrument);
  const steps = base && base.by + by;
  const named = nameOfStrings(strings, instrument);
  const texts = [
    ...(named === undefined ? [] : [named]),
    ...(base && steps !== undefined ? [steps === 0 ? base.name : `${base.name} ${signed(steps)}`] : []),
    formatTuningNotes(plain),
  ];
  for (const text of texts) {
    const read = readTuning(text, { instrument, userTunings: settings.tunings });
    if (read.ok && sameTuning(read.value, plain)) return read.value;
  }
  return plain;
}

/** By how many half steps all strings lie above others; undefined where they are not alike. */
export function uniformSteps(from: readonly TuningString[], to: readonly TuningString[]): number | undefined {
  if (from.length !== to.length) return undefined;
  const shifts = new Set<number>();
  from.forEach(({ pitches, firstFret }, index) => {
    const other = to[index];
    const alike = other?.pitches.length === pitches.length && other.firstFret === firstFret;
    pitches.forEach((pitch, course) => {
      const midi = alike ? other.pitches[course]?.midi : undefined;
      shifts.add(midi === undefined ? NaN : Math.round((midi - pitch.midi) * 10000) / 10000);
    });
  });
  const [shift, ...others] = shifts;
  return others.length === 0 && shift !== undefined && Number.isInteger(shift) ? shift : undefined;
}

function signed(by: number): string {
  return by > 0 ? `+${by}` : String(by);
}
