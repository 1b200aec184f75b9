import { formatNoteName } from '../../music/noteName';
import { fingerboardOf } from '../../notation/headerViews';
import { rewriteSystem } from '../../notation/print/rewriteSystem';
import type { NoteReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { equal } from '../../music/fraction';
import { editTo } from '../change/edits';
import { placeAsItIs } from '../change/rewrite';
import { noteAtCursor } from '../locate';
import type { Place } from '../records';
import type { ChangeResult } from '../serviceApi';
import { linesWith } from './putFretsChange';

/** Where a note goes: the same sound on the line above or below, or an octave away. */
export const SHIFTS = ['string above', 'string below', 'octave up', 'octave down'] as const;
export type Shift = (typeof SHIFTS)[number];

/**
 * Takes the note at a cursor to the next string with the same sound, or an octave up or down: on its own string where that
 * has the fret, else on the nearest string that has it and is free. Everything else stays as it is. An error says why it
 * cannot go there.
 * @example shiftNote(document, { line: 4, character: 9 }, 'octave up')
 */
export function shiftNote(document: TabDocument, place: Place, shift: Shift): ChangeResult {
  const found = noteAtCursor(document, place);
  if (!found) return { error: 'There is no note here: put the cursor on a fret.' };
  const { system, note } = found;
  if (note.kind !== 'fretted' || note.fret === undefined)
    return { error: 'This is no plain fret: only a fret can go to another string or octave.' };
  const goals = goalsOf(system, note, shift);
  if (typeof goals === 'string') return { error: goals };
  const index = system.reading.notes.indexOf(note);
  for (const goal of goals) {
    const lines = rewriteSystem({
      system,
      firstBar: 0,
      lastBar: system.reading.bars.length - 1,
      header: system.header,
      place: (i) => (i === index ? goal : placeAsItIs(system, i)),
      keepLabels: true,
      strings: system.reading.strings.map(({ number }) => number),
      position: system,
    });
    if (!lines) continue;
    return {
      edits: editTo(document, linesWith(document, { system, lines, before: [note] })),
      report: {
        notesIn: 1,
        kept: 0,
        moved: 1,
        unplaced: [],
        remarks: [`${nameOf(note)} is now fret ${goal.fret} on string ${goal.string}.`],
      },
    };
  }
  return {
    error:
      'It cannot go there: a sign joins this note to another one, or another note would begin at another time.',
  };
}

interface Goal {
  readonly string: number;
  readonly fret: number;
}

function goalsOf({ header, reading }: System, note: NoteReading, shift: Shift): readonly Goal[] | string {
  const board = fingerboardOf(header);
  const count = header.tuning.strings.length;
  const midis = (string: number, fret: number): readonly number[] =>
    board.pitches(count - string, fret) ?? [];
  const own = midis(note.string, note.fret ?? 0);
  const by = shift === 'octave up' ? 12 : shift === 'octave down' ? -12 : 0;
  const sounds = (string: number, fret: number): boolean => {
    const there = midis(string, fret);
    return (
      there.length > 0 &&
      there.length === own.length &&
      there.every((midi, i) => Math.abs(midi - (own[i] ?? NaN) - by) < 0.5)
    );
  };
  const written = reading.strings.map(({ number }) => number);
  const asked =
    by === 0
      ? [note.string + (shift === 'string above' ? -1 : 1)]
      : [...written].sort((a, b) => Math.abs(a - note.string) - Math.abs(b - note.string));
  const [next] = asked;
  if (by === 0 && (next === undefined || !written.includes(next)))
    return `There is no string ${shift === 'string above' ? 'above' : 'below'} this one here.`;
  const goals = asked.flatMap((string) => {
    for (let fret = 0; fret <= header.frets; fret++) if (sounds(string, fret)) return [{ string, fret }];
    return [];
  });
  if (goals.length === 0)
    return by === 0
      ? `String ${next ?? ''} does not have this note on its neck.`
      : `No string has this note an octave ${by > 0 ? 'higher' : 'lower'}.`;
  const isFree = ({ string }: Goal): boolean =>
    string === note.string ||
    !reading.notes.some((other) => other.string === string && equal(other.onset, note.onset));
  const free = goals.filter(isFree);
  return free.length > 0 ? free : `Another note begins on string ${goals[0]?.string ?? ''} at the same time.`;
}

function nameOf({ pitches, fret }: NoteReading): string {
  return pitches.length > 0
    ? pitches.map(({ name }) => formatNoteName(name)).join('/')
    : `Fret ${fret ?? ''}`;
}
