import type { NoteReading } from '../../notation/reading';

/** `fret 2`, `open`, `natural harmonic at 12`. */
export function stopWords(note: NoteReading): string {
  if (note.kind === 'muted' || note.fret === undefined) return 'muted';
  if (note.kind === 'natural-harmonic') return `natural harmonic at ${note.touched ?? ''}`;
  const fret = note.fret === 0 ? 'open' : `fret ${note.fret}`;
  return note.kind === 'artificial-harmonic' ? `${fret}, harmonic touched at ${note.touched ?? ''}` : fret;
}
