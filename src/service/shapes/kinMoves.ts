import type { StringMove } from './shapesAnswer';

type Frets = readonly (number | undefined)[];

/**
 * What each string must do to come from one shape to another, the highest number first. Strings are those of the same
 * number; frets by index, low-placed string first.
 */
export function movesBetween(from: Frets, to: Frets): readonly StringMove[] {
  const count = Math.max(from.length, to.length);
  return Array.from({ length: count }, (_, i): StringMove => {
    const string = count - i;
    const old = string <= from.length ? (from[from.length - string] ?? null) : undefined;
    const now = string <= to.length ? (to[to.length - string] ?? null) : undefined;
    const words = moveWords(old, now);
    return { string, from: old, to: now, changed: (old ?? null) !== (now ?? null), words };
  });
}

function moveWords(from: number | null | undefined, to: number | null | undefined): string {
  if (to === undefined) return from === null || from === undefined ? 'is not there' : 'is not there any more';
  if ((from ?? null) === to) return 'stays';
  if (to === null) return 'mute';
  if (to === 0) return 'open';
  if (from === null || from === undefined) return `fret ${to}`;
  return to > from ? `+${to - from}` : `−${from - to}`;
}

/** The strings that change, in words: `string 5 +2, string 1 mute`. */
export function movesInWords(moves: readonly StringMove[]): string {
  const told = moves.filter(({ changed }) => changed).map(({ string, words }) => `string ${string} ${words}`);
  return told.length === 0 ? 'nothing changes' : told.join(', ');
}
