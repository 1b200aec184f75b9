import type { Fingerboard } from '../../instrument/sounding';
import { stringNumber } from '../../instrument/tuning';
import { formatPitchName } from '../../music/noteName';
import type { SheetScaleSet } from './sheetAnswer';

/** How far up the neck a scale is told: an octave, after which it comes again. */
const LAST_FRET = 12;
/** A pitch farther from a half step than this, in half steps, is no note of a scale. */
const OFF_PITCH = 0.25;

/**
 * The frets at which each string sounds a note of a scale, strings with the same frets in one set; the set of the
 * lowest-placed string comes first. Frets are as written under the capo; a number that cannot be played is left out.
 * @param pitchClasses of the scale as it sounds, 0 (C) … 11
 * @param last the highest fret that is told, 12 unless said otherwise
 * @example scaleSets(openG, [7, 9, 11, 0, 2, 4, 6]) // 0 2 4 5 7 9 10 12 on strings 6, 4 and 1; …
 */
export function scaleSets(
  board: Fingerboard,
  pitchClasses: readonly number[],
  last = LAST_FRET,
): readonly SheetScaleSet[] {
  const wanted = new Set(pitchClasses.map((one) => ((one % 12) + 12) % 12));
  const sets = new Map<string, { strings: number[]; frets: readonly number[]; names: string[] }>();
  board.tuning.strings.forEach(({ pitches }, index) => {
    const frets: number[] = [];
    for (let fret = 0; fret <= Math.min(last, board.frets); fret++) {
      const midi = board.pitches(index, fret)?.[0];
      if (midi === undefined || Math.abs(midi - Math.round(midi)) > OFF_PITCH) continue;
      if (wanted.has(((Math.round(midi) % 12) + 12) % 12)) frets.push(fret);
    }
    const key = frets.join(' ');
    const set = sets.get(key) ?? { strings: [], frets, names: [] };
    set.strings.push(stringNumber(board.tuning, index));
    const name = formatPitchName(pitches[0].name);
    if (!set.names.includes(name)) set.names.push(name);
    sets.set(key, set);
  });
  return [...sets.values()];
}

/**
 * The sets in words, to copy. The strings are told by number, or by the note of the open string where that is asked
 * for: it says more where several strings share a note.
 * @example scaleSetsInWords(sets) // '0 2 3 5 7 9 10 12 on strings 5, 3 and 1; 0 2 4 5 7 9 11 12 on the others'
 * @example scaleSetsInWords(sets, 'notes') // '0 2 3 … on the A strings; 0 2 4 … on the D strings'
 */
export function scaleSetsInWords(
  sets: readonly SheetScaleSet[],
  by: 'numbers' | 'notes' = 'numbers',
): string {
  // Under a partial capo strings of one note may stand in two sets: then only numbers tell them apart.
  const names = sets.flatMap((set) => set.names);
  if (new Set(names).size < names.length) by = 'numbers';
  return sets
    .map((set, at) => `${fretsOf(set)} on ${stringsOf(set, sets.length > 1 && at === sets.length - 1, by)}`)
    .join('; ');
}

function fretsOf({ frets }: SheetScaleSet): string {
  return frets.length === 0 ? 'nothing' : frets.join(' ');
}

function stringsOf({ strings, names }: SheetScaleSet, last: boolean, by: 'numbers' | 'notes'): string {
  const one = strings.length === 1;
  if (by === 'notes') return `the ${inWords(names)} ${one ? 'string' : 'strings'}`;
  if (last && !one) return 'the others';
  return `${one ? 'string' : 'strings'} ${inWords(strings.map(String))}`;
}

function inWords(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
}
