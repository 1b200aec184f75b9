import type { System, TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import { midisBetween } from '../sounding';
import type { ChordEvent, ChordSystem } from './chordEvents';
import { chooseShapes } from './chooseShapes';
import { pitchesOf } from './register';
import type { SecondGuitarRequest } from './songAnswer';

/** What the first player sounds while a chord holds, as sounding MIDI numbers. */
export type FirstPlayer = (system: System, event: ChordEvent) => readonly number[];

/** Reads the tab where there is some; elsewhere the first player has the shapes that filling would write. */
export function firstPlayer(
  document: TabDocument,
  systems: readonly ChordSystem[],
  { style, open, highestFret }: SecondGuitarRequest,
  settings: Settings,
): FirstPlayer {
  const wishes = {
    ...(style && { style }),
    ...(open !== undefined && { open }),
    ...(highestFret !== undefined && { highestFret }),
  };
  const bare = systems.filter(({ strings }) => strings !== 'tab');
  const known = new Map<number, Map<System, readonly number[]>>();
  const keep = (system: System, start: number, midis: readonly number[]): void => {
    const bySystem = known.get(start) ?? new Map<System, readonly number[]>();
    bySystem.set(system, midis);
    known.set(start, bySystem);
  };
  for (const { event, system, header, played } of chooseShapes(bare, {
    document,
    wishes,
    settings,
  }).played)
    keep(system, event.mark.start, played ? pitchesOf(played.shape, header) : []);
  for (const { slice, events, strings } of systems) {
    if (strings !== 'tab') continue;
    const { system } = slice;
    events.forEach(({ time, mark }, i) => {
      const end = events[i + 1]?.time ?? system.reading.length;
      keep(system, mark.start, midisBetween(document, system, time, end));
    });
  }
  return (system, { mark }) => known.get(mark.start)?.get(system) ?? [];
}
