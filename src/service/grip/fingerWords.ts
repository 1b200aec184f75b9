import type { Barre, Grip } from '../../playing/hand/grips';
import type { Finger } from '../../playing/hand/handAnswer';
import { capital, listed } from '../hover/text';

/** Fretting fingers by the names players call them, as the `fingers` row numbers them. */
const NAMES: Readonly<Record<Exclude<Finger, 0>, string>> = {
  1: 'index',
  2: 'middle',
  3: 'ring',
  4: 'little finger',
  T: 'thumb',
};

const ORDER = [1, 2, 3, 4, 'T'] as const;

/**
 * What each finger does, index first.
 * @example fingerWords(grip) // 'Index at fret 2, barre over strings 1–3; ring at fret 4 on string 5'
 */
export function fingerWords({ placements, barres }: Pick<Grip, 'placements' | 'barres'>): string {
  const told = ORDER.flatMap((finger) => {
    const places = placements.filter((place) => place.finger === finger);
    const [first] = places;
    if (!first) return [];
    const barre = barres.find((one) => one.finger === finger);
    return [`${NAMES[finger]} at fret ${first.fret}${barre ? barreWords(barre) : onString(places)}`];
  });
  return capital(told.join('; '));
}

function barreWords({ from, to }: Barre): string {
  return `, barre over ${stringRange(from, to)}`;
}

function onString(places: readonly { readonly string: number }[]): string {
  return ` on ${stringList(places.map(({ string }) => string))}`;
}

/** `strings 1–3`, from low number to high. */
export function stringRange(from: number, to: number): string {
  return from === to ? `string ${from}` : `strings ${to}–${from}`;
}

/** `string 5`, `strings 1, 3 and 4`. */
export function stringList(strings: readonly number[]): string {
  const sorted = [...strings].sort((a, b) => a - b);
  return `${sorted.length === 1 ? 'string' : 'strings'} ${listed(sorted.map(String))}`;
}
