import { formatKey, transposeKey } from '../../music/key';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import { capoShift } from '../../notation/headerViews';
import { chordMarksIn } from '../change/chordMarks';
import type { Slice } from '../change/slices';
import { baseOf } from './movedTuning';
import type { Move } from './moveAll';

/** What the hand plays and what is heard. */
export interface ShapesWords {
  /** `Shapes of G major sound in Bb major`. */
  readonly words: string;
  /** The key of the shapes as in the tuning's own place; null where no key is written. */
  readonly shapes: string | null;
  readonly sounds: string | null;
}

/** `3 half steps higher`, `1 half step lower`. */
export function higherWords(halfSteps: number): string {
  const size = Math.abs(halfSteps);
  if (size === 0) return 'as before';
  return `${size} half ${size === 1 ? 'step' : 'steps'} ${halfSteps < 0 ? 'lower' : 'higher'}`;
}

/**
 * Of which key the shapes are and in which they sound after a move. Shapes are named as in the instrument's usual tuning
 * where all strings lie alike from it, so that shapes of G stay shapes of G when everything is tuned down; else as they
 * are written. Without a key the first chord tells it.
 * @example shapesWords(slices, { capoBy: 3, tuningBy: 0 }).words // 'Shapes of G major sound in Bb major'
 */
export function shapesWords(slices: readonly Slice[], { capoBy, tuningBy }: Move): ShapesWords {
  const keyed = slices.find(({ system }) => system.header.key);
  const header = (keyed ?? slices[0])?.system.header;
  if (!header) return { words: '', shapes: null, sounds: null };
  const lies = baseOf(header.tuning, header.instrument)?.by ?? 0;
  const capo = capoShift(header) + capoBy;
  const up = lies + tuningBy + capo;
  if (header.key) {
    const shapes = formatKey(transposeKey(header.key, -lies));
    const sounds = formatKey(transposeKey(transposeKey(header.key, tuningBy), capo));
    return { words: `Shapes of ${shapes} sound in ${sounds}`, shapes, sounds };
  }
  const chorded = slices.find((slice) => chordMarksIn(slice).length > 0);
  const chord = chorded && chordMarksIn(chorded)[0]?.mark.text;
  if (chord === undefined)
    return {
      words: up === 0 ? 'Shapes sound as they are named' : `Shapes sound ${higherWords(up)} than their names`,
      shapes: null,
      sounds: null,
    };
  const shape = transposeWrittenChord(chord, -lies);
  const sounding = transposeWrittenChord(chord, tuningBy + capo);
  return { words: `A shape of ${shape} sounds as ${sounding}`, shapes: null, sounds: null };
}
