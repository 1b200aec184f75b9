import { neckOf } from '../neck';
import { onlyAt, placesOf, type Place, type Places } from '../places';
import { stringCount, type Target } from '../target';
import type { PassageNote, Placement } from '../passage';
import type { HandOptions } from './options';

/**
 * Finds the places of notes under the options, once for all notes that are alike.
 * @param only fixes places beforehand, by note id; notes without one have none
 */
export function handPlaceFinder(
  target: Target,
  options: HandOptions,
  only?: ReadonlyMap<number, Placement>,
): (note: PassageNote) => { readonly found: Places; readonly key: number } {
  const neck = neckOf(target);
  const strings = stringCount(target);
  const memo = new Map<string, { found: Places; key: number }>();
  return (note) => {
    const fixed = only?.get(note.id);
    const wanted = only ? `${fixed?.string} ${fixed?.fret} ${fixed?.touched}` : '';
    const stroke = note.midi === undefined ? note.string : '';
    const signature = [note.midi, stroke, note.need, note.reaches.join(' '), wanted].join(';');
    const old = memo.get(signature);
    if (old) return old;
    let found = placesOf(note, target, neck);
    if (!found.why) found = allowed(note, found.places, strings, options);
    if (only && !found.why) found = onlyAt(found.places, fixed, strings);
    const answer = { found, key: memo.size };
    memo.set(signature, answer);
    return answer;
  };
}

/** Drops what the player does not want; the sentence says which wish took the last place. */
function allowed(note: PassageNote, all: readonly Place[], strings: number, options: HandOptions): Places {
  const wished = options.strings;
  let places = all;
  if (wished && note.midi !== undefined) {
    places = places.filter(({ index }) => wished.includes(strings - index));
    if (places.length === 0) return none(`None of the strings asked for (${wished.join(', ')}) sounds it.`);
  }
  const harmonic = note.need === 'natural-harmonic' || note.need === 'artificial-harmonic';
  if (!options.openStrings && note.midi !== undefined && !harmonic) {
    places = places.filter(({ stoppedFret }) => stoppedFret !== undefined);
    if (places.length === 0) return none('Only an open string sounds it, and open strings are not wanted.');
  }
  const highest = options.caps.highestFret;
  if (highest !== undefined) {
    places = places.filter(({ fret, touched }) => Math.max(fret, touched ?? 0) <= highest);
    if (places.length === 0) return none(`It lies above fret ${highest} on every string that is allowed.`);
  }
  return { places, why: undefined };
}

function none(detail: string): Places {
  return { places: [], why: { reason: 'out of reach', detail } };
}
