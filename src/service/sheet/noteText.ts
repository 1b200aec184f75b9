import { formatNoteList } from '../../instrument/noteList';
import { createFingerboard } from '../../instrument/sounding';
import { stringIndex, type Tuning, type TuningString } from '../../instrument/tuning';
import { frequencyOf } from '../../music/frequency';
import { formatNoteName } from '../../music/noteName';
import { spellMidi } from '../../music/spelling';
import { halfSteps, listed } from '../hover/text';

/** Frets that a check by ear may name; the neck's own end is minded where the check is made. */
const ALL_FRETS = 36;

/** The note of an open string by its number, of a course the first: `G#3`. */
export function noteOfString(tuning: Tuning, number: number): string {
  const string = tuning.strings[stringIndex(tuning, number)];
  return string ? formatNoteName(string.pitches[0].name) : '';
}

/** What a string sounds at a fret without a capo, by name: `C#3`. */
export function soundAt(tuning: Tuning, number: number, fret: number): string {
  const board = createFingerboard(tuning, undefined, ALL_FRETS);
  const midi = board.pitches(stringIndex(tuning, number), fret)?.[0];
  if (midi === undefined) return '';
  const tuningNames = tuning.strings.flatMap(({ pitches }) => pitches.map(({ name }) => name));
  return formatNoteName(spellMidi(midi, { key: undefined, tuningNames }));
}

/** A string's note and how it is set with a tuner: `G#3-14c (205.97 Hz)`, both of a course. */
export function noteWithHertz(string: TuningString, referencePitch: number): string {
  const frequencies = string.pitches.map(({ midi }) => frequencyOf(midi, referencePitch).toFixed(2));
  return `${formatNoteList([string])} (${listed(frequencies)} Hz)`;
}

/** `string 5`, `strings 6, 4 and 1`. */
export function stringsWords(numbers: readonly number[]): string {
  return `${numbers.length === 1 ? 'string' : 'strings'} ${listed(numbers.map(String))}`;
}

/** A tuning as a sentence has it: its name, else its notes. */
export function tuningWords(name: string | null | undefined, notes: string): string {
  return name ?? notes;
}

/**
 * How far a string moves, whichever way: `2 half steps`, `86 cents`, `1 half step and 14 cents`.
 * @param steps half steps, decimals for cents
 */
export function movedBy(steps: number): string {
  const hundredths = Math.round(Math.abs(steps) * 10000) / 100;
  const whole = Math.floor(hundredths / 100);
  const cents = Math.round((hundredths - 100 * whole) * 100) / 100;
  if (cents === 0) return halfSteps(whole);
  const few = `${cents} ${cents === 1 ? 'cent' : 'cents'}`;
  return whole === 0 ? few : `${halfSteps(whole)} and ${few}`;
}
