import type { Fraction } from '../../music/fraction';
import { fingerboardOf } from '../../notation/headerViews';
import type { Header } from '../../notation/header';
import type { NoteReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { soundingAt } from '../sounding';

/** What one string does at a moment, before anyone thinks of fingers. */
export interface StringAt {
  /** Player's number. */
  readonly string: number;
  /**
   * `touched` is a natural harmonic, `tapped` a note that the picking hand stops, `unplayable` a number that the neck
   * does not have there.
   */
  readonly state: 'stopped' | 'open' | 'muted' | 'touched' | 'tapped' | 'unplayable' | 'silent';
  /** The number written; 0 for an open string; undefined for a silent and a muted one. */
  readonly fret: number | undefined;
  /** Where a harmonic is touched, counted as frets are written. */
  readonly touched: number | undefined;
  /** Whether it begins at the moment; else it rings on from before. */
  readonly struck: boolean;
}

/**
 * Every string of the tuning at a moment, the highest number first: what begins there, and what is still held under
 * the hand because it rings or because a joined note has come to it.
 * @param time quarter notes from the system's start
 */
export function stringsAt(document: TabDocument, system: System, time: Fraction): readonly StringAt[] {
  const { header } = system;
  const count = header.tuning.strings.length;
  const all: StringAt[] = Array.from({ length: count }, (_, index) => silent(count - index));
  for (const { note, begins } of soundingAt(document, system, time)) {
    const index = count - note.string;
    if (index >= 0 && index < count && note.string > 0) all[index] = stringOf(note, begins, header);
  }
  return all;
}

function silent(string: number): StringAt {
  return { string, state: 'silent', fret: undefined, touched: undefined, struck: false };
}

function stringOf(note: NoteReading, struck: boolean, header: Header): StringAt {
  const { string, fret, touched } = note;
  if (fret === undefined || note.kind === 'muted')
    return { string, state: 'muted', fret: undefined, touched: undefined, struck };
  if (note.kind === 'natural-harmonic') return { string, state: 'touched', fret: 0, touched, struck };
  const board = fingerboardOf(header);
  const index = header.tuning.strings.length - string;
  const read = board.read(index, fret);
  if (!read.ok) return { string, state: 'unplayable', fret, touched, struck };
  if (note.techniques.some(({ kind }) => kind === 'tap'))
    return { string, state: 'tapped', fret, touched, struck };
  // Under a partial capo the capo's own number is the open string too.
  if (read.stopFret === board.absoluteFret(index, 0))
    return { string, state: 'open', fret: 0, touched, struck };
  return { string, state: 'stopped', fret, touched, struck };
}
