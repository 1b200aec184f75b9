import type { Header } from '../../notation/header';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { Change, ChangeResult, Report } from '../serviceApi';
import { editTo } from './edits';
import { stateFields } from './fieldsInForce';
import { replaced, rewriteSlices, type Rewriting } from './rewrite';
import type { Slice } from './slices';

/** What came of trying to change some slices: a slice that cannot be cut out of its system is told. */
export type Attempt = ChangeResult | { readonly cut: Slice };

/**
 * Rewrites slices, states the fields they need, and puts the edits beside their report.
 * @param report made when it is known which notes could not be written, by `keyOf`
 */
export function changeOf(
  document: TabDocument,
  slices: readonly Slice[],
  rewriting: Rewriting,
  report: (unwritten: ReadonlySet<string>) => Report,
  settings: Settings,
): Attempt {
  const result = rewriteSlices(slices, rewriting);
  if (!result.ok) {
    if (result.cut) return { cut: result.slice };
    const bar = document.placeOf(result.slice.system).firstBar;
    return { error: cannotBeWritten(bar) };
  }
  const { lines, required } = replaced(document, result.replacements);
  const edits = editTo(document, stateFields(lines, required, settings.tunings));
  const { remarks, ...counts } = report(result.unwritten);
  const fingers = namesOldFingers(slices, rewriting) ? [OLD_FINGERS] : [];
  return { edits, report: { ...counts, remarks: [...remarks, ...fingers] } } satisfies Change;
}

/**
 * Tries a change, and again with the whole system where a cut through it cannot be written: a bar may owe its times to
 * its neighbours.
 */
export function wideningCuts(
  document: TabDocument,
  slices: readonly Slice[],
  attempt: (slices: readonly Slice[]) => Attempt,
): ChangeResult {
  let current = slices;
  const remarks: string[] = [];
  for (;;) {
    const result = attempt(current);
    if ('error' in result) return result;
    if (!('cut' in result)) {
      const { edits, report } = result;
      return { edits, report: { ...report, remarks: [...report.remarks, ...remarks] } };
    }
    const { index, system } = result.cut;
    const lastBar = system.reading.bars.length - 1;
    const { firstBar } = document.placeOf(system);
    remarks.push(
      `Bars ${firstBar}–${firstBar + lastBar} are changed together; cut apart, their times could not be written.`,
    );
    current = current.map((slice) => (slice.index === index ? { ...slice, firstBar: 0, lastBar } : slice));
  }
}

/** Why a system stays as it is. */
export function cannotBeWritten(bar: number): string {
  return `The system that begins at bar ${bar} cannot be written with the same times; write a count row above it, or give its columns more room, and try again.`;
}

export const OLD_FINGERS = 'The fingers row still names the fingers of the old frets; see to it.';

/** Whether a row of fingers stands over notes that went elsewhere. */
export function namesOldFingers(slices: readonly Slice[], rewriting: Rewriting): boolean {
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
