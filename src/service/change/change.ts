import type { Header } from '../../notation/header';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { Change, ChangeResult, Report } from '../serviceApi';
import { editTo } from './edits';
import { stateFields } from './fieldsInForce';
import { replaced, rewriteSlices, type Rewriting } from './rewrite';
import type { Slice } from './slices';

/** Rewrites slices, states the fields they need, and puts the edits beside their report. */
export function changeOf(
  document: TabDocument,
  slices: readonly Slice[],
  rewriting: Rewriting,
  report: Report,
  settings: Settings,
): ChangeResult {
  const result = rewriteSlices(slices, rewriting);
  if (!result.ok) {
    const bar = document.placeOf(result.system).firstBar;
    return {
      error: `The system that begins at bar ${bar} cannot be written with the same times; write a count row above it, or give its columns more room, and try again.`,
    };
  }
  const { lines, required } = replaced(document, result.replacements);
  const remarks = namesOldFingers(slices, rewriting)
    ? [...report.remarks, 'The fingers row still names the fingers of the old frets; see to it.']
    : report.remarks;
  const edits = editTo(document, stateFields(lines, required, settings.tunings));
  return { edits, report: { ...report, remarks } } satisfies Change;
}

/** Whether a row of fingers stands over notes that went elsewhere. */
function namesOldFingers(slices: readonly Slice[], rewriting: Rewriting): boolean {
  return slices.some((slice) => {
    const { reading } = slice.system;
    if (!reading.rows.some((row) => row.row === 'fingers' && row.marks.length > 0)) return false;
    return reading.notes.some((note, index) => {
      const place = rewriting.place(slice, index);
      return (
        place !== undefined &&
        note.fret !== undefined &&
        (place.string !== note.string || place.fret !== note.fret)
      );
    });
  });
}

/** One new header for each old one, so that what hangs on a header's identity is worked out once. */
export function mapHeaders(change: (header: Header) => Header): (header: Header) => Header {
  const known = new Map<Header, Header>();
  return (header) => {
    let next = known.get(header);
    if (!next) known.set(header, (next = change(header)));
    return next;
  };
}

export const NOTHING_THERE =
  'There is no tab in the passage; put the cursor in a system, or select some bars.';
