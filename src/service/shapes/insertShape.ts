import { nameChord } from '../../music/chord/nameChord';
import { playedContext } from '../../notation/chordContext';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf } from '../../notation/headerViews';
import type { TabDocument } from '../../notation/tabDocument';
import { editTo } from '../change/edits';
import type { Place } from '../records';
import type { ChangeResult, ServiceError } from '../serviceApi';
import { putFretsChange } from '../typing/putFretsChange';
import type { StringSign, StringSigns } from '../typing/putFretsRequest';
import { headerAt } from './shapes';
import type { InsertShapeRequest } from './shapesAnswer';
import { labelsOf, shapeTab } from './shapeTab';

/**
 * Writes a shape as a column at the cursor's moment in a system, one change: strings that are not played are cleared
 * there, those between two that sound get a muted stroke. Outside systems a system of one column is written at the line.
 * An error says what about the frets or the place is to be changed.
 * @example insertShape(document, place, { frets: [null, 3, 2, 0, 1, 0] })
 */
export function insertShape(
  document: TabDocument,
  place: Place,
  { frets, chord }: InsertShapeRequest,
): ChangeResult {
  const header = headerAt(document, place);
  const trouble = fretsTrouble(frets, header);
  if (trouble) return trouble;
  const text = frets.map((fret) => fret ?? 'x').join(' ');
  if (document.systemAt(place.line))
    return putFretsChange(document, place, signsOf(frets), `The shape ${text} is written`);
  const lines = Array.from({ length: document.lineCount }, (_, i) => document.line(i).text);
  const name = chord?.trim() === '' || chord === undefined ? nameOf(frets, header) : chord.trim();
  const tab = shapeTab(name, frets, innerMutedOf(frets), labelsOf(header.tuning)).split('\n');
  const isBlank = (at: number): boolean => (lines[at] ?? '').trim() === '';
  // A blank line keeps it apart from what stands before and after.
  const at = isBlank(place.line) ? place.line : place.line + 1;
  const before = at > 0 && !isBlank(at - 1) ? [''] : [];
  const next = isBlank(place.line) ? at + 1 : at;
  const after = next < lines.length && !isBlank(next) ? [''] : [];
  lines.splice(at, next - at, ...before, ...tab, ...after);
  return {
    edits: editTo(document, lines),
    report: {
      notesIn: 0,
      kept: 0,
      moved: 0,
      unplaced: [],
      remarks: [`The shape ${text} is written as a system of its own.`],
    },
  };
}

/** What each string is to do, by player's number. */
export function signsOf(frets: readonly (number | null)[]): StringSigns {
  const inner = innerMutedOf(frets);
  return new Map(
    frets.map((fret, index): [number, StringSign] => {
      const string = frets.length - index;
      return [string, fret ?? (inner.includes(string) ? 'x' : 'nothing')];
    }),
  );
}

/** Numbers of the strings between two that sound. */
function innerMutedOf(frets: readonly (number | null)[]): readonly number[] {
  const first = frets.findIndex((fret) => fret !== null);
  const last = frets.findLastIndex((fret) => fret !== null);
  return frets.flatMap((fret, index) =>
    fret === null && index > first && index < last ? [frets.length - index] : [],
  );
}

/** What is wrong with a list of frets for the strings of a tuning. */
export function fretsTrouble(frets: readonly (number | null)[], header: Header): ServiceError | undefined {
  const count = header.tuning.strings.length;
  if (frets.length !== count)
    return {
      error: `${frets.length} ${frets.length === 1 ? 'fret is' : 'frets are'} given for ${count} strings: give one for each, x for a string that is not played.`,
    };
  if (frets.every((fret) => fret === null))
    return { error: 'No string of the shape is played: give at least one fret.' };
  const board = fingerboardOf(header);
  for (const [index, fret] of frets.entries()) {
    if (fret === null || board.read(index, fret).ok) continue;
    return { error: `String ${count - index} has no fret ${fret} that can be played in this tuning.` };
  }
  return undefined;
}

/** What the strings sound, as played. */
function nameOf(frets: readonly (number | null)[], header: Header): string {
  const board = fingerboardOf(header);
  const shift = capoShift(header);
  const midis = frets.flatMap((fret, index) => (fret === null ? [] : (board.pitches(index, fret) ?? [])));
  const naming = nameChord(
    midis.map((midi) => midi - shift),
    playedContext(header),
  );
  const [first] = naming.names;
  return naming.kind === 'chord' || naming.kind === 'power' ? (first?.name ?? '') : '';
}
