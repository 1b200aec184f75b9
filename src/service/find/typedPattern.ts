import { formatNoteName, midiOf, parseNoteName, parsePitchName, type NoteName } from '../../music/noteName';
import type { ServiceError } from '../serviceApi';
import type { SoundPattern } from './findAnswer';

/** The octave of a first note that has none: that of middle C. */
const FIRST_OCTAVE = 4;

/**
 * A tune by its notes, to look for: `D4 E4 F#4`. A note without an octave lies as near as can be to the one before it.
 * Error: a word that is no note, or fewer than two notes.
 * @example typedPattern('B3 C') // moments [[59], [60]]
 */
export function typedPattern(text: string): SoundPattern | ServiceError {
  const words = text.split(/[\s,]+/).filter((word) => word !== '');
  const notes: NoteName[] = [];
  for (const word of words) {
    const note = noteOf(word, notes.at(-1));
    if (!note) return { error: `“${word}” is no note; write notes such as D4 E4 F#4, with a space between.` };
    notes.push(note);
  }
  if (notes.length < 2) return { error: 'Write two or more notes to look for, such as D4 E4 F#4.' };
  return {
    moments: notes.map((note) => [midiOf(note)]),
    onsets: undefined,
    together: false,
    name: notes.map(formatNoteName).join(' '),
    places: [],
  };
}

function noteOf(word: string, before: NoteName | undefined): NoteName | undefined {
  const whole = parseNoteName(word);
  if (whole) return whole;
  const name = parsePitchName(word);
  if (!name) return undefined;
  if (!before) return { ...name, octave: FIRST_OCTAVE };
  const near = [-1, 0, 1].map((octaves) => ({ ...name, octave: before.octave + octaves }));
  const apart = (note: NoteName): number => Math.abs(midiOf(note) - midiOf(before));
  return near.reduce((best, note) => (apart(note) < apart(best) ? note : best));
}
