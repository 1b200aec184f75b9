import { halfStepWords } from '../change/remarks';
import type { PlayedChord } from './chooseShapes';
import type { FirstPlayer } from './firstPlayer';
import { overlapOf, pitchesOf, type Side } from './register';

/** How a second player keeps out of the first one's way, with the measure that was taken. */
export function overlapRemarks(
  sounding: readonly PlayedChord[],
  first: FirstPlayer,
  side: Side,
): readonly string[] {
  if (sounding.length === 0) return ['No chord here has a shape, so that the new part is empty.'];
  let [notes, shared, within, distance, compared] = [0, 0, 0, 0, 0];
  for (const { event, system, header, played } of sounding) {
    if (!played) continue;
    const own = pitchesOf(played.shape, header);
    const others = first(system, event);
    const overlap = overlapOf(own, others);
    notes += overlap.notes;
    shared += overlap.shared;
    within += overlap.within;
    if (others.length === 0) continue;
    distance += mean(own) - mean(others);
    compared++;
  }
  const count = sounding.length === 1 ? 'The only chord stays' : `${sounding.length} chords stay`;
  const apart = compared > 0 ? Math.round(distance / compared) : 0;
  const size = halfStepWords(Math.abs(apart)).replace('up ', '');
  const lies = apart === 0 ? 'as high as' : `${size} ${apart > 0 ? 'higher' : 'lower'} than`;
  const doubled =
    shared === 0 ? 'none has' : shared === notes ? 'all have' : `${shared} ${shared === 1 ? 'has' : 'have'}`;
  return [
    `${count} ${side} what the first player sounds, as far as shapes within reach allow: of ${notes} notes ${doubled} a pitch that sounds there at the same time, and ${within} ${within === 1 ? 'lies' : 'lie'} between its lowest and highest note.`,
    `On the whole they lie ${lies} those of the first player.`,
  ];
}

function mean(midis: readonly number[]): number {
  return midis.reduce((sum, midi) => sum + midi, 0) / Math.max(1, midis.length);
}
