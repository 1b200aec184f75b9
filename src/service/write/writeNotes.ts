import { readKey } from '../../music/key';
import type { Failed } from '../../music/result';
import type { Place, System, TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ChangeResult, ServiceError } from '../serviceApi';
import { canvasIn, hasStringLines, type Canvas } from './canvas';
import { fingered, notesOfMoments } from './fingered';
import { barInTheWay, freeStrings, noteBefore } from './inTheWay';
import { lineBehind, newBarsBehind, newBarsNear, type NewBars } from './newBarsPlace';
import { notesReport, omittedOf, unplacedOf } from './notesReport';
import { readNoteText, type TypedPiece } from './noteText';
import { readNoteValue, USUAL_VALUE } from './noteValue';
import { putsOf } from './placedPuts';
import { timed } from './timedNotes';
import { hasDegrees, middleOf, pitched, type PitchedPiece } from './typedPitches';
import type { WriteNotesRequest } from './writeRequest';
import { writeOn } from './writeOn';

/**
 * Writes notes by their names from a place on, fingered by the same search as every other passage. In a system they go
 * on dashes, from the column on; what does not fit into the bars of the system, and those that follow under the same
 * heading and fields, goes into new bars. Elsewhere new bars are laid down. The lines are read again before they are
 * believed. A note that has no place is told in the report.
 * Errors: a text, value or key that cannot be read; degrees without a key (`asks: 'key'`); notes in the way
 * (`asks: 'new bars'`); times that cannot be written; no note with a place.
 * @example writeNotes(document, { line: 3, character: 5 }, { text: 'D3 E3 F#3' }, settings)
 */
export function writeNotes(
  document: TabDocument,
  place: Place,
  request: WriteNotesRequest,
  settings: Settings,
): ChangeResult {
  const pieces = readNoteText(request.text);
  if (!pieces.ok) return refused(pieces);
  const value = readNoteValue(request.value ?? USUAL_VALUE);
  if (!value.ok) return refused(value);
  const system = document.systemAt(place.line);
  const trouble = system && systemTrouble(system);
  if (trouble) return trouble;
  const { canvas, at } = canvasAt(document, place, system, request);
  const sounding = withPitches(pieces.value, canvas, request);
  if ('error' in sounding) return sounding;
  const { moments, silences, end } = timed(sounding.pieces, value.value, canvas);
  const occupied = barInTheWay(canvas, canvas.from, end);
  if (occupied) return inTheWayError(occupied.number);
  const notes = notesOfMoments(moments);
  const strings = freeStrings(canvas, canvas.from, end);
  const answer = fingered(notes, canvas, { strings }, settings);
  const unplaced = unplacedOf(canvas, notes, answer);
  const [lost] = unplaced;
  if (lost && unplaced.length === notes.length)
    return { error: `${lost.name} has no place here: ${lost.reason}.` };
  const omitted = omittedOf(notes, answer);
  const written = writeOn(document, canvas, putsOf(notes, answer, silences), end, at, { omitted });
  if ('error' in written) return written;
  return { ...written, report: notesReport(canvas, moments, unplaced, hasDegrees(pieces.value)) };
}

/** A reader's own sentence, with what it offers. */
export function refused({ error: { message, suggestions } }: Failed): ServiceError {
  const [first] = suggestions;
  return { error: first === undefined || message.includes(first) ? message : `${message} Such as ${first}.` };
}

/** Where lines do not say which strings they are, nothing can be written on them. */
function systemTrouble({ reading: { problems } }: System): ServiceError | undefined {
  if (!problems.some(({ kind }) => kind === 'strings-left-out' || kind === 'too-many-strings'))
    return undefined;
  return {
    error:
      'The labels do not say which strings these lines are; label each line by its note and octave first.',
  };
}

function canvasAt(
  document: TabDocument,
  place: Place,
  system: System | undefined,
  { inTheWay }: WriteNotesRequest,
): NewBars {
  if (!system || !hasStringLines(system)) return newBarsNear(document, place);
  if (inTheWay === 'new bars') return newBarsBehind(document, system, place);
  const canvas = canvasIn(document, system, place);
  const last = canvas.stretches.at(-1)?.system ?? system;
  return { canvas, at: { line: lineBehind(last) } };
}

function withPitches(
  pieces: readonly TypedPiece[],
  canvas: Canvas,
  request: WriteNotesRequest,
): { readonly pieces: readonly PitchedPiece[] } | ServiceError {
  const { header } = canvas;
  let { key } = header;
  if (request.key !== undefined) {
    const read = readKey(request.key);
    if (!read.ok) return refused(read);
    key = read.value;
  }
  if (!key && hasDegrees(pieces))
    return {
      error: 'Degrees are counted in a key, and none is in force here; write a field such as key: D above.',
      asks: 'key',
    };
  const before = noteBefore(canvas, canvas.from) ?? middleOf(header);
  return { pieces: pitched(pieces, key, before, header) };
}

function inTheWayError(bar: number): ServiceError {
  return {
    error: `Bar ${bar} has notes where these would go, and nothing is written over; put the cursor on dashes behind them, or ask for new bars.`,
    asks: 'new bars',
  };
}
