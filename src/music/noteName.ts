/** Names of notes: a letter, an accidental and, for a pitch, an octave (scientific pitch, C4 = middle C). */

export type Letter = 'C' | 'D' | 'E' | 'F' | 'G' | 'A' | 'B';

/** A note name without octave, as in a key or a chord root. */
export interface PitchName {
  readonly letter: Letter;
  /** Half steps from the letter: -1 flat, 1 sharp; −3…3. */
  readonly alter: number;
}

/** A note name with its octave, as in `G#3`. */
export interface NoteName extends PitchName {
  readonly octave: number;
}

export const LETTERS: readonly Letter[] = ['C', 'D', 'E', 'F', 'G', 'A', 'B'];

const HALF_STEPS: Readonly<Record<Letter, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/**
 * The pitch class of a name, 0 (C) … 11 (B).
 * @example pitchClassOf({ letter: 'B', alter: -1 }) // 10
 */
export function pitchClassOf(name: PitchName): number {
  return (((HALF_STEPS[name.letter] + name.alter) % 12) + 12) % 12;
}

/**
 * The MIDI number of a note, C4 = 60, A4 = 69 (MIDI 1.0: note 60 is middle C).
 * B#3 and C4 give the same number.
 * @example midiOf({ letter: 'E', alter: 0, octave: 2 }) // 40
 */
export function midiOf(note: NoteName): number {
  return (note.octave + 1) * 12 + HALF_STEPS[note.letter] + note.alter;
}

/**
 * Reads `G`, `g#`, `Bb`, `b♭` and the like; the letter may be in either case and, after it, `b` is a flat.
 * Returns undefined for anything else.
 */
export function parsePitchName(text: string): PitchName | undefined {
  const match = /^([A-Ga-g])(##|bb|♯♯|♭♭|[#b♯♭x𝄪𝄫]?)$/u.exec(text);
  if (!match) return undefined;
  return { letter: (match[1] ?? '').toUpperCase() as Letter, alter: alterOf(match[2] ?? '') };
}

/**
 * Reads `G#3`, `eb-1` and the like.
 * @example parseNoteName('G#3') // { letter: 'G', alter: 1, octave: 3 }
 */
export function parseNoteName(text: string): NoteName | undefined {
  const match = /^(.*?)(-?\d)$/u.exec(text);
  const name = match && parsePitchName(match[1] ?? '');
  return name ? { ...name, octave: Number(match[2]) } : undefined;
}

function alterOf(sign: string): number {
  switch (sign) {
    case '#':
    case '♯':
      return 1;
    case 'b':
    case '♭':
      return -1;
    case '##':
    case '♯♯':
    case 'x':
    case '𝄪':
      return 2;
    case 'bb':
    case '♭♭':
    case '𝄫':
      return -2;
    default:
      return 0;
  }
}

/** `G#`, `Bb`, `C`: plain ASCII, as tab is. */
export function formatPitchName(name: PitchName): string {
  return name.letter + (name.alter < 0 ? 'b'.repeat(-name.alter) : '#'.repeat(name.alter));
}

/** `G#3`: plain ASCII, as tab is. */
export function formatNoteName(note: NoteName): string {
  return formatPitchName(note) + String(note.octave);
}
