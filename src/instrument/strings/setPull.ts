import { frequencyOf } from '../../music/frequency';
import type { Instrument } from '../instrument';
import { usualStrings } from '../stringsFromNotes';
import type { Tuning } from '../tuning';
import { stringLoads, type StrungNeck } from './stringLoads';

/** How the same strings pull in whatever tuning. */
export interface SetPull {
  /**
   * `newtons` where every string's weight is known; else `shares`: each string pulls 1 in the usual tuning, since the
   * strings of a set are made to pull about alike (common practice, no source).
   */
  readonly unit: 'newtons' | 'shares';
  /** The pull of string `number`, a course's strings together, at MIDI numbers with decimals for cents; 0 for none. */
  pull(number: number, midis: readonly number[]): number;
  /** The pull of every string of a tuning, low string first. */
  pulls(tuning: Tuning): readonly number[];
  /** All of them together. */
  total(tuning: Tuning): number;
}

/** A set without its tuning. */
export type StrungSet = Omit<StrungNeck, 'tuning'>;

/**
 * The pull of one set in any tuning, for the steps of retuning: T = μ(2Lf)², so that a string's pull grows with the
 * square of its frequency. The strings stay those that `tuning` is strung with.
 * @param tuning what the set is on for; it decides which set is usual
 * @example setPull(neck, standard).total(dropD) // newtons
 */
export function setPull(set: StrungSet, tuning: Tuning): SetPull {
  const loads = stringLoads({ ...set, tuning });
  const known = loads.total !== undefined;
  /** Newtons (or shares) at one hertz, by the string's number, one for each string of the course. */
  const weights = new Map<number, number[]>();
  for (const { number, tension, hertz, usual } of loads.strings) {
    const usualHertz = usual ? frequencyOf(usual.midi) : hertz;
    const weight = known && tension !== undefined ? tension / hertz ** 2 : 1 / usualHertz ** 2;
    weights.set(number, [...(weights.get(number) ?? []), weight]);
  }
  // Strings that are not on now, as those of the usual set.
  const { strings: others } = stringLoads({
    ...set,
    gauges: undefined,
    tuning: usualTuningOf(set.instrument),
  });
  const off = others.filter(({ number }) => !weights.has(number));
  for (const { number, tension, hertz } of off) {
    const weight = known ? (tension ?? 0) / hertz ** 2 : 1 / hertz ** 2;
    weights.set(number, [...(weights.get(number) ?? []), weight]);
  }
  const pull = (number: number, midis: readonly number[]): number => {
    const own = weights.get(number) ?? [];
    return midis.reduce((sum, midi, course) => {
      const hertz = frequencyOf(midi, set.referencePitch);
      return sum + (own[course] ?? own[0] ?? 0) * hertz ** 2;
    }, 0);
  };
  const pulls = (other: Tuning): readonly number[] =>
    other.strings.map(({ pitches }, index) =>
      pull(
        other.strings.length - index,
        pitches.map(({ midi }) => midi),
      ),
    );
  return {
    unit: known ? 'newtons' : 'shares',
    pull,
    pulls,
    total: (other) => pulls(other).reduce((sum, one) => sum + one, 0),
  };
}

function usualTuningOf(instrument: Instrument): Tuning {
  return { strings: usualStrings(instrument), name: undefined, text: instrument.usualTuning };
}
