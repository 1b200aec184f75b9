import type { PassageNote } from '../passage';

const TOGETHER = 1e-9;
/** From here on a moment is a strum: the hand holds it as a grip, not note by note. */
const STRUM = 4;

/**
 * A passage with each `end` cut back to what a player means to hold. In tab a note rings until the next event on its
 * string, so every note of a scale would have to be held; here
 * - a note alone, the highest of a moment and the notes of a strum end where the next note begins;
 * - the lower notes of two or three that begin together are held under what follows, up to the next moment of several
 *   notes or the next note at their pitch or below it, and never past their own end.
 * A reading of tab, not a rule of the notation (engineering choice): a caller that knows better sets `end` itself.
 */
export function heldEnds(notes: readonly PassageNote[]): PassageNote[] {
  const sorted = [...notes].sort((a, b) => a.onset - b.onset);
  const moments: PassageNote[][] = [];
  for (const note of sorted) {
    const last = moments.at(-1);
    if (last?.[0] && note.onset - last[0].onset <= TOGETHER) last.push(note);
    else moments.push([note]);
  }
  const ends = new Map<number, number>();
  moments.forEach((moment, at) => {
    const pitched = moment.flatMap(({ midi }) => midi ?? []);
    const top = Math.max(...pitched);
    for (const { id, midi, end } of moment) {
      const held = midi !== undefined && midi < top && pitched.length < STRUM;
      let next = at + 1;
      while (held && next < moments.length && !endsHeld(moments[next] ?? [], midi)) next++;
      const until = moments[next];
      ends.set(id, Math.min(end, until?.[0]?.onset ?? end));
    }
  });
  return notes.map((note) => ({ ...note, end: ends.get(note.id) ?? note.end }));
}

/** Several notes at once begin anew, and so does the voice with a note at its pitch or below. */
function endsHeld(moment: readonly PassageNote[], midi: number): boolean {
  return moment.length > 1 || moment.some((other) => (other.midi ?? Infinity) <= midi);
}
