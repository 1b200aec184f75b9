import { compare, type Fraction } from '../../music/fraction';
import type { HandAnswer } from '../../playing/hand/handSearch';
import type { MomentNote } from './fingered';
import type { Put } from './layIn';

/**
 * The signs that notes become where the hand plays them, and a stop on every string that they left ringing where there
 * is to be silence. Times are those of the canvas.
 */
export function putsOf(
  notes: readonly MomentNote[],
  answer: HandAnswer,
  silences: readonly Fraction[],
): readonly Put[] {
  const frets = answer.placements.flatMap(({ id, string, fret }): Put[] => {
    const note = notes[id];
    return note ? [{ string, onset: note.moment.onset, text: String(fret) }] : [];
  });
  const puts: Put[] = [];
  const rings = new Set<number>();
  const stops = silences.map((onset) => ({ onset, string: undefined, text: '.' }));
  // A silence comes before what begins at its time: there is nothing left to stop.
  const order = [...stops, ...frets].sort((a, b) => compare(a.onset, b.onset));
  for (const sign of order) {
    if (sign.string !== undefined) {
      puts.push(sign);
      rings.add(sign.string);
      continue;
    }
    for (const string of rings) puts.push({ ...sign, string });
    rings.clear();
  }
  return puts;
}
