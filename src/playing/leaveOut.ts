import type { Moment } from './moments';
import type { Place } from './places';

/** One note left out weighs more than any choice of which; sums stay exact for a million notes. */
export const ONE_NOTE = 2 ** 32;
const OUTER_VOICE = 64;
const PITCH_CLASS = 1;

/**
 * What is lost at a moment: first how many notes, then how many of its outer voices (lowest and highest pitch), then
 * how many pitch classes. So an inner doubled note goes before an inner single one, and that before bass or top. A
 * muted stroke has no pitch and goes first. A sum of losses is compared as a whole.
 */
export function lossOf(moment: Moment, places: readonly (Place | undefined)[]): number {
  const kept: number[] = [];
  const lost: number[] = [];
  let count = 0;
  moment.own.forEach(({ note }, position) => {
    if (!places[position]) count++;
    if (note.midi !== undefined) (places[position] ? kept : lost).push(note.midi);
  });
  const pitches = moment.pitches.filter((midi) => midi !== undefined);
  const outer = [Math.min(...pitches), Math.max(...pitches)];
  const outerLost = outer.filter((midi) => lost.includes(midi) && !kept.includes(midi)).length;
  const keptClasses = new Set(kept.map(pitchClass));
  const lostClasses = new Set(lost.map(pitchClass).filter((one) => !keptClasses.has(one)));
  return count * ONE_NOTE + outerLost * OUTER_VOICE + lostClasses.size * PITCH_CLASS;
}

/** Cents are kept: a quarter tone doubles only its like. */
function pitchClass(midi: number): number {
  return Math.round((midi - 12 * Math.floor(midi / 12)) * 100) % 1200;
}
