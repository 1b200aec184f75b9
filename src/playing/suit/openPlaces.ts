import { retune } from '../../instrument/retune';
import type { Tuning } from '../../instrument/tuning';
import { handPlaceFinder } from '../hand/handPlaces';
import type { PassageNote } from '../passage';
import type { Place, Places } from '../places';
import { targetFor } from './describe';
import type { SuitRequest } from './suitAnswer';

/** Where one note can be played in any of the tunings: by string, then by the index of the string's offer. */
export interface OpenPlaces {
  readonly byString: readonly (readonly (readonly Place[])[])[];
  /** The number of a list's first place among all of the note's places, in the same order. */
  readonly first: readonly (readonly number[])[];
}

/** Finds the places of notes in all tunings at once; equal keys, equal places. */
export interface OpenPlaceFinder {
  readonly find: (note: PassageNote) => { readonly found: Places; readonly key: number };
  /** What was found under a key. */
  readonly byKey: readonly OpenPlaces[];
}

/**
 * A place depends on its own string alone, so it is enough to look at the tunings that move every string alike, one
 * for each number of half steps.
 * @param offers for each string the half steps from the start that it may be at
 */
export function openPlaceFinder(
  request: SuitRequest,
  offers: readonly (readonly number[])[],
): OpenPlaceFinder {
  const finders = new Map<number, ReturnType<typeof handPlaceFinder>>();
  for (const relative of new Set(offers.flat())) {
    const target = targetFor(request, evenly(request.start, relative));
    finders.set(relative, handPlaceFinder(target, request.options));
  }
  const byKey: OpenPlaces[] = [];
  const memo = new Map<string, { readonly found: Places; readonly key: number }>();
  const find = (note: PassageNote): { readonly found: Places; readonly key: number } => {
    const stroke = note.midi === undefined ? note.string : '';
    const signature = [note.midi, stroke, note.need, note.reaches.join(' ')].join(';');
    const old = memo.get(signature);
    if (old) return old;
    let why: Places | undefined;
    const all: Place[] = [];
    const first: number[][] = [];
    const byString = offers.map((own, index) => {
      const starts: number[] = [];
      first.push(starts);
      return own.map((relative) => {
        const places = finders.get(relative)?.(note).found;
        if (places?.why) why = places;
        const here = (places?.places ?? []).filter((place) => place.index === index);
        starts.push(all.length);
        all.push(...here);
        return here;
      });
    });
    const found: Places = all.length > 0 || !why ? { places: all, why: undefined } : why;
    const answer = { found, key: byKey.length };
    byKey.push({ byString, first });
    memo.set(signature, answer);
    return answer;
  };
  return { find, byKey };
}

/** Every string moved alike. */
function evenly(start: Tuning, by: number): Tuning {
  if (by === 0) return start;
  return {
    strings: retune(
      start.strings,
      start.strings.map(() => by),
    ),
    name: undefined,
    text: '',
  };
}
