import type { System, TabDocument } from '../../notation/tabDocument';
import { editTo } from '../change/edits';
import { slicesIn, type Slice } from '../change/slices';
import type { Place, Range, Settings } from '../records';
import type { ChangeResult, ServiceError, UnplacedNote } from '../serviceApi';
import { arrangeBars } from './arrangeBars';
import type { ColumnsRequest } from './columnsRequest';
import { fitWidth } from './fitWidth';
import { joinSystems } from './joinSystems';
import { moveColumn } from './moveColumn';
import { moveBeat } from './moveBeat';
import { pasteBars } from './pasteBars';
import { shiftNotes } from './shiftNotes';

/** What a tool does to a document: lines in place of others. */
export interface ColumnsDone {
  readonly from: number;
  /** Lines that go. */
  readonly count: number;
  readonly lines: readonly string[];
  /** What was done, as a sentence. */
  readonly said: string;
  /** Notes in the systems concerned. */
  readonly notesIn: number;
  readonly moved?: number;
  readonly unplaced?: readonly UnplacedNote[];
  readonly counted?: boolean;
  /** Where the cursor goes, in the text after the change. */
  readonly goesOn: Place;
  /** What is selected there, if not that place alone. */
  readonly selects?: readonly Range[];
}

export const NO_SYSTEM: ServiceError = {
  error: 'There are no bars here: place the cursor in a system of tab.',
};

/**
 * Changes columns, beats or bars on all lines and rows of a system at once. What is not concerned keeps its sound and
 * its exact time; where the columns alone would not say it any more, the count is written. The text is read again before
 * it is believed; what cannot be written so is refused with a sentence.
 * @example columns(document, { action: 'duplicateBars', range }, DEFAULT_SETTINGS)
 */
export function columns(document: TabDocument, request: ColumnsRequest, _settings: Settings): ChangeResult {
  const done = doneBy(document, request);
  if ('error' in done) return done;
  const { from, count, lines, said, notesIn, moved = 0, unplaced = [], goesOn, selects } = done;
  const all = Array.from({ length: document.lineCount }, (_, i) => document.line(i).text);
  all.splice(from, count, ...lines);
  const remarks = [
    said,
    ...(done.counted ? ['The count is written, so that every note keeps its time.'] : []),
  ];
  return {
    edits: editTo(document, all),
    report: { notesIn, kept: notesIn - moved - unplaced.length, moved, unplaced, remarks },
    goesOn,
    ...(selects && { selects }),
  };
}

function doneBy(document: TabDocument, request: ColumnsRequest): ColumnsDone | ServiceError {
  // A repeat by a remark holds for the system, whatever its bars; an empty bar between joined notes leaves them joined.
  const widening = { repeated: false, joined: request.action !== 'insertBar' };
  const slices = slicesIn(document, request.range, widening);
  const [slice] = slices;
  if (!slice) return NO_SYSTEM;
  switch (request.action) {
    case 'insertColumn':
    case 'removeColumn':
      return moveColumn(slice.system, request);
    case 'insertBeat':
    case 'removeBeat':
      return moveBeat(document, slice.system, request);
    case 'shiftLater':
    case 'shiftSooner':
      return shiftNotes(document, request);
    case 'insertBar':
    case 'removeBars':
    case 'duplicateBars':
    case 'splitSystem':
      return oneSystem(slices) ?? arrangeBars(document, slice, request);
    case 'joinSystems':
      return joinSystems(document, slices, request.range);
    case 'fitWidth':
      return fitWidth(document, slices, request);
    case 'pasteBetween':
    case 'pasteOver':
      return pasteBars(document, slice, request);
  }
}

function oneSystem(slices: readonly Slice[]): ServiceError | undefined {
  return slices.length > 1 ? { error: 'Select bars of one system for this.' } : undefined;
}

/** How many notes some systems have. */
export function notesIn(systems: readonly System[]): number {
  return systems.reduce((sum, { reading }) => sum + reading.notes.length, 0);
}
