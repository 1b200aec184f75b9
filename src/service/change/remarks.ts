import type { Capo } from '../../instrument/capo';

/** `12 of 14 notes`, or `All 14 notes`. */
export function notesOutOf(count: number, all: number): string {
  if (count === all && all > 0) return all === 1 ? 'The only note' : `All ${all} notes`;
  return `${count} of ${all} ${all === 1 ? 'note' : 'notes'}`;
}

/** `keeps` after one note, `keep` after more. */
export function verb(count: number, all: number, plural: string, singular: string): string {
  return (count === all ? all : count) === 1 ? singular : plural;
}

/** What is said of notes without a place; nothing when there are none. */
export function leftOut(count: number): string[] {
  if (count === 0) return [];
  return [
    count === 1 ? '1 note has no place and is left out.' : `${count} notes have no place and are left out.`,
  ];
}

/** `up 2 half steps`, `down 1 half step`. */
export function halfStepWords(halfSteps: number): string {
  const size = Math.abs(halfSteps);
  return `${halfSteps < 0 ? 'down' : 'up'} ${size} half ${size === 1 ? 'step' : 'steps'}`;
}

/** `without a capo`, `with the capo at fret 2 on strings 5 4 3`. */
export function capoWords(capo: Capo | undefined): string {
  if (capo === undefined) return 'without a capo';
  const { fret, strings } = capo;
  const where = strings && ` on ${strings.length === 1 ? 'string' : 'strings'} ${strings.join(' ')}`;
  return `with the capo at fret ${fret}${where ?? ''}`;
}
