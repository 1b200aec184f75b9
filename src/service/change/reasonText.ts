import { spellMidi } from '../../music/spelling';
import { formatNoteName } from '../../music/noteName';
import type { Header } from '../../notation/header';
import { soundingSpelling } from '../../notation/headerViews';
import type { Unplaced } from '../../playing/passage';

/**
 * Why a note has no place, as the end of a sentence: `it lies 2 half steps below the lowest open string`.
 * @param header the fields it was to be played under: they spell the notes that are named
 */
export function reasonText({ reason, detail }: Unplaced, header: Header): string {
  if (reason === 'no such harmonic') return 'no string has a harmonic of this pitch';
  const named = detail.replace(/MIDI (\d+(?:\.\d+)?(?:, \d+(?:\.\d+)?)*)/g, (_, numbers: string) =>
    numbers
      .split(', ')
      .map((number) => nameOfMidi(Number(number), header))
      .join(', '),
  );
  return named.charAt(0).toLowerCase() + named.slice(1).replace(/\.$/, '');
}

/** `G#3`, or `G#3-14c` for a pitch 14 cents below it. */
function nameOfMidi(midi: number, header: Header): string {
  const name = formatNoteName(spellMidi(midi, soundingSpelling(header)));
  const cents = Math.round((midi - Math.round(midi)) * 100);
  return cents === 0 ? name : `${name}${cents > 0 ? '+' : '-'}${Math.abs(cents)}c`;
}
