import { compare, type Fraction } from '../music/fraction';
import type { NoteReading } from '../notation/reading';
import type { System, TabDocument } from '../notation/tabDocument';

/** A note that sounds at some moment. */
export interface SoundingNote {
  readonly system: System;
  readonly note: NoteReading;
  /** Whether it begins at that moment; else it rings. */
  readonly begins: boolean;
  /** MIDI numbers at that moment, with what bends have done; two for a course, none for `x`. */
  readonly midis: readonly number[];
}

/**
 * What sounds at a moment of a system, what rings into it included; the highest string number first. Muted strokes
 * that begin there are in it, without pitches.
 * @param time quarter notes from the system's start
 */
export function soundingAt(document: TabDocument, system: System, time: Fraction): readonly SoundingNote[] {
  const { notes, stops } = system.reading;
  const sounding: SoundingNote[] = [];
  const spoken = new Set<number>();
  for (const note of notes) {
    if (compare(note.onset, time) > 0) continue;
    spoken.add(note.string);
    const begins = compare(note.onset, time) === 0;
    const over = note.ends !== undefined && compare(note.ends, time) <= 0;
    if (begins || (!over && note.pitches.length > 0))
      sounding.push({ system, note, begins, midis: midisAt(note, time) });
  }
  for (const stop of stops) if (compare(stop.onset, time) <= 0) spoken.add(stop.string);
  for (const ringing of document.ringingInto(system)) {
    if (!spoken.has(ringing.note.string) && ringing.note.pitches.length > 0)
      sounding.push({ ...ringing, begins: false, midis: midisAt(ringing.note, undefined) });
  }
  return sounding.sort((a, b) => b.note.string - a.note.string);
}

/** All that sounds at some time from one moment to another, as MIDI numbers by string, the highest number first. */
export function midisBetween(
  document: TabDocument,
  system: System,
  from: Fraction,
  to: Fraction,
): readonly number[] {
  const sounding = [...soundingAt(document, system, from)];
  for (const note of system.reading.notes) {
    if (compare(note.onset, from) > 0 && compare(note.onset, to) < 0)
      sounding.push({ system, note, begins: true, midis: midisAt(note, note.onset) });
  }
  return sounding.sort((a, b) => b.note.string - a.note.string).flatMap(({ midis }) => midis);
}

/**
 * The pitches of a note at a moment, or when everything on it has happened: a bend written right after a number has
 * risen by the next moment, one bent before it sounds begins there.
 */
function midisAt(note: NoteReading, time: Fraction | undefined): readonly number[] {
  const [first] = note.pitches;
  if (!first) return [];
  let now = first.midi;
  for (const { kind, to, onset } of note.techniques) {
    if (to === undefined || (kind !== 'bend' && kind !== 'pre-bend' && kind !== 'release')) continue;
    const happened =
      kind === 'pre-bend' ||
      time === undefined ||
      (onset ? compare(onset, time) <= 0 : compare(note.onset, time) < 0);
    if (happened) now = to;
  }
  return note.pitches.map(({ midi }) => midi + now - first.midi);
}
