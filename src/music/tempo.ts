import { failed, ok, type Result } from './result';

/** A tempo, and how it was written. */
export interface Tempo {
  /** Quarter notes a minute, 1…999; decimals where the written note is not a quarter. */
  readonly quartersPerMinute: number;
  /** As written. */
  readonly text: string;
}

/** What holds where no tempo is written. */
export const DEFAULT_TEMPO: Tempo = Object.freeze({ quartersPerMinute: 100, text: '100' });

/** Lengths of the notes that can be a beat, in quarter notes. */
const NOTE_LENGTHS: Readonly<Record<string, number>> = {
  whole: 4,
  half: 2,
  quarter: 1,
  eighth: 1 / 2,
  sixteenth: 1 / 4,
};

/**
 * Reads a tempo: a number of quarter notes a minute, or of another note, dotted or not.
 * @example readTempo('dotted quarter = 60') // 90 quarter notes a minute
 */
export function readTempo(text: string): Result<Tempo> {
  const start = text.length - text.trimStart().length;
  const end = text.trimEnd().length;
  const match =
    /^(?:(dotted[ -]+)?(\p{L}+)(?:[ -]+notes?)?\s*=\s*)?(\d+(?:\.\d+)?)(?:\s*(?:bpm|beats? (?:a|per) minute))?$/iu.exec(
      text.trim(),
    );
  if (!match) {
    return failed(
      'tempo',
      'A tempo is a number of beats a minute, such as 96, 96 bpm or dotted quarter = 60.',
      start,
      end,
      ['96', 'quarter = 96'],
    );
  }
  const [, dotted, note = 'quarter', number = ''] = match;
  const length = NOTE_LENGTHS[note.toLowerCase()];
  if (length === undefined) {
    const at = start + text.trim().indexOf(note);
    return failed(
      'tempo-note',
      `"${note}" is no note length: whole, half, quarter, eighth or sixteenth is expected, dotted or not.`,
      at,
      at + note.length,
      [`quarter = ${number}`],
    );
  }
  const quartersPerMinute = Number(number) * length * (dotted ? 1.5 : 1);
  if (quartersPerMinute < 1 || quartersPerMinute > 999) {
    return failed('tempo-range', 'A tempo is 1 to 999 quarter notes a minute.', start, end, [
      '60',
      '96',
      '120',
    ]);
  }
  return ok(Object.freeze({ quartersPerMinute, text: text.trim() }));
}
