import type { NoteReading, SystemReading } from '../notation/reading';
import type { System, TabDocument } from '../notation/tabDocument';
import { noteAtCursor, rangeIn } from './locate';
import type { Place, Range } from './records';

/** More marks than a reader takes in; those nearest to the cursor are kept. */
const MOST = 1000;

/**
 * Every note of the part that sounds the pitch under the cursor, in the order of the text; courses by either of their
 * pitches, cents rounded to the half step. Empty where no note with a pitch stands.
 */
export function highlights(document: TabDocument, place: Place): readonly Range[] {
  const found = noteAtCursor(document, place);
  if (!found) return [];
  const wanted = found.note.pitches.map(({ midi }) => Math.round(midi));
  const { part } = found.system.header;
  const kept: { readonly system: System; readonly notes: readonly NoteReading[] }[] = [];
  let count = 0;
  for (const system of outwards(document.systems, document.systems.indexOf(found.system))) {
    if (system.header.part !== part) continue;
    const notes = notesSounding(system.reading, wanted);
    if (notes.length > 0) kept.push({ system, notes });
    count += notes.length;
    if (count >= MOST) break;
  }
  return kept
    .flatMap(({ system, notes }) => notes.map((note) => rangeIn(system, note)))
    .sort((a, b) => a.start.line - b.start.line || a.start.character - b.start.character)
    .slice(0, MOST);
}

/** The systems from one on, the nearest first. */
function* outwards(systems: readonly System[], from: number): Generator<System> {
  for (let step = 0; step < systems.length; step++) {
    for (const at of step === 0 ? [from] : [from + step, from - step]) {
      const system = systems[at];
      if (system) yield system;
    }
  }
}

const indices = new WeakMap<SystemReading, ReadonlyMap<number, readonly NoteReading[]>>();

/** The notes of a system by half step; worked out once for each reading. */
function notesByPitch(reading: SystemReading): ReadonlyMap<number, readonly NoteReading[]> {
  let index = indices.get(reading);
  if (!index) {
    const made = new Map<number, NoteReading[]>();
    for (const note of reading.notes) {
      for (const midi of new Set(note.pitches.map((pitch) => Math.round(pitch.midi)))) {
        const list = made.get(midi);
        if (list) list.push(note);
        else made.set(midi, [note]);
      }
    }
    indices.set(reading, (index = made));
  }
  return index;
}

function notesSounding(reading: SystemReading, wanted: readonly number[]): readonly NoteReading[] {
  const index = notesByPitch(reading);
  return [...new Set(wanted.flatMap((midi) => index.get(midi) ?? []))];
}
