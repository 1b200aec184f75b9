import { stringNumber, type Tuning } from '../tuning';
import type { StringChange } from './stringChanges';

/** What a player of one tuning already knows of another. Strings by number, the highest first. */
export interface CarriesOver {
  readonly unchanged: readonly number[];
  /** Strings that now have the note names that other strings had before. */
  readonly renamed: readonly { readonly number: number; readonly as: readonly number[] }[];
  /** Strings whose open note no string had before. */
  readonly fresh: readonly number[];
  /** Two or more strings that moved by the same whole half steps, not 0: what lies on them keeps its shape. */
  readonly together: readonly { readonly strings: readonly number[]; readonly halfSteps: number }[];
}

/**
 * What carries over from one tuning to another: two strings with the same open note, in whatever octave, have the same
 * note names at every fret.
 * @example carriesOver(stringChanges(standard, openE), standard)
 * // unchanged 6, 2, 1; 5 as 2; 4 as 6 and 1; fresh 3
 */
export function carriesOver(changes: readonly StringChange[], from: Tuning): CarriesOver {
  const unchanged: number[] = [];
  const renamed: { number: number; as: readonly number[] }[] = [];
  const fresh: number[] = [];
  const groups = new Map<number, number[]>();
  for (const { number, to, kind, halfSteps } of changes) {
    if (!to) continue;
    if (kind === 'stays') {
      unchanged.push(number);
      continue;
    }
    const wanted = pitchClass(to.pitches[0].midi);
    const as = from.strings.flatMap(({ pitches }, index) =>
      pitchClass(pitches[0].midi) === wanted ? [stringNumber(from, index)] : [],
    );
    if (as.length > 0) renamed.push({ number, as });
    else fresh.push(number);
    if (kind === 'up' || kind === 'down') groups.set(halfSteps, [...(groups.get(halfSteps) ?? []), number]);
  }
  const together = [...groups].flatMap(([halfSteps, strings]) =>
    strings.length > 1 && halfSteps !== 0 && Number.isInteger(halfSteps) ? [{ strings, halfSteps }] : [],
  );
  return { unchanged, renamed, fresh, together };
}

function pitchClass(midi: number): number {
  return ((Math.round(midi) % 12) + 12) % 12;
}
