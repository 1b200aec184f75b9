import { Interval, Note, Scale } from 'tonal';
import type { PitchName } from './noteName';
import { formatPitchName, parsePitchName } from './noteName';
import { failed, ok, type Result } from './result';

/**
 * The one place that imports tonal (6.4.3 exactly: 6.5.0 and 6.5.1 do not load). tonal answers what it cannot read
 * with empty texts and empty records; here they become errors. Naming, spelling and keys are our own, since they
 * must follow a tuning's text and answer on every keystroke; tonal is their judge in the tests.
 */

/**
 * The notes of a scale by its usual name, such as `minor pentatonic`.
 * @example scaleNotes({ letter: 'A', alter: 0 }, 'minor pentatonic') // A C D E G
 */
export function scaleNotes(tonic: PitchName, name: string): Result<readonly PitchName[]> {
  const scale = Scale.get(`${formatPitchName(tonic)} ${name}`);
  const notes = scale.notes.map(parsePitchName);
  const known = notes.filter((note) => note !== undefined);
  if (scale.empty || known.length === 0 || known.length !== notes.length) {
    return failed('scale', `"${name}" is no scale that is known by name.`, 0, name.length, [
      'major',
      'minor pentatonic',
    ]);
  }
  return ok(Object.freeze(known));
}

/**
 * Half steps of an interval in tonal's short form, such as `3M` or `5P`.
 * @example intervalHalfSteps('3M') // 4
 */
export function intervalHalfSteps(text: string): Result<number> {
  const halfSteps = Interval.semitones(text);
  if (typeof halfSteps !== 'number' || Number.isNaN(halfSteps)) {
    return failed(
      'interval',
      `"${text}" is no interval; a number and a quality such as 3M, 5P or 7m is expected.`,
      0,
      text.length,
    );
  }
  return ok(halfSteps);
}

/** MIDI number of a note by tonal, such as 60 for C4. */
export function midiOfText(text: string): Result<number> {
  const midi = Note.midi(text);
  if (midi === null)
    return failed('note', `"${text}" is no note with an octave, such as G#3.`, 0, text.length, ['C4']);
  return ok(midi);
}
