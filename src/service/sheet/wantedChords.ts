import { readChordName } from '../../music/chord/readChordName';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import type { WrittenChord } from '../../music/chord/writtenChord';
import { keyScale, type Key } from '../../music/key';
import { formatPitchName, pitchClassOf, type PitchName } from '../../music/noteName';
import type { Header } from '../../notation/header';
import { failed, ok, type Result } from '../../music/result';
import { openChord } from './openStrings';
import { plainName } from './plainName';

/** Places in the scale of the three main chords: the first, fourth and fifth degree (common practice, no source). */
const MAIN = [0, 3, 4] as const;

/** Half steps from the chord of the open strings up to its three main ones. */
const MAIN_ABOVE_OPEN = [0, 5, 7] as const;

/**
 * The chords that a slide player looks for: the one asked for; else the three main chords of the key; else the chord of
 * the open strings and the same a fourth and a fifth above. Names are as played under a full capo.
 * Errors: those of `readChordName`; `no-chord` where there is nothing to go by.
 */
export function wantedChords(header: Header, asked: string | undefined): Result<readonly WrittenChord[]> {
  if (asked !== undefined) {
    const read = readChordName(asked);
    if (!read.ok) return read;
    if (read.value.root) return ok([read.value]);
    return failed('no-chord', `${asked} is no chord to look for; name one such as G or Am.`, 0, asked.length);
  }
  const { key, tuning } = header;
  const open = openChord(tuning);
  const names = key
    ? MAIN.map((degree) => triadName(key, degree))
    : open === undefined
      ? []
      : MAIN_ABOVE_OPEN.map((steps) => transposeWrittenChord(plainName(open), steps));
  const chords = names.flatMap((name) => {
    const read = readChordName(name);
    return read.ok ? [read.value] : [];
  });
  if (chords.length > 0) return ok(chords);
  const message =
    'The open strings make no everyday chord and no key is written; write a key, or name the chord to look for.';
  return failed('no-chord', message, 0, 0);
}

/**
 * The triad on a place of a key's scale, 0 to 6.
 * @example triadName(eMinor, 3) // 'Am'
 */
export function triadName(key: Key, place: number): string {
  const scale = keyScale(key);
  const root = scale[place % 7] ?? key.tonic;
  const third = above(root, scale[(place + 2) % 7]);
  const fifth = above(root, scale[(place + 4) % 7]);
  const symbol = third === 3 ? (fifth === 6 ? 'dim' : 'm') : fifth === 8 ? 'aug' : '';
  return formatPitchName(root) + symbol;
}

function above(root: PitchName, note: PitchName | undefined): number {
  return note ? (pitchClassOf(note) - pitchClassOf(root) + 12) % 12 : 0;
}
