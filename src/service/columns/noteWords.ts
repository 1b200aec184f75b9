import type { NoteReading } from '../../notation/reading';

/**
 * A note as a sentence begins with it, by what is written.
 * @example noteInWords(note) // 'Fret 5 on string 2'
 */
export function noteInWords({ kind, fret, string }: NoteReading): string {
  if (kind === 'muted') return `The x on string ${string}`;
  if (kind !== 'fretted') return `The harmonic on string ${string}`;
  return `Fret ${fret ?? 0} on string ${string}`;
}
