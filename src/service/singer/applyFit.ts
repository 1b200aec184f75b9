import { retuningCaution } from '../../instrument/retuningCaution';
import { stepsFrom } from '../../instrument/tuningFormat';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import type { Header } from '../../notation/header';
import { usualTuning } from '../../notation/headerViews';
import type { TabDocument } from '../../notation/tabDocument';
import { changeOf, NOTHING_THERE, wideningCuts, type Attempt } from '../change/change';
import { leftOut, notesOutOf } from '../change/remarks';
import { slicesIn, type Slice } from '../change/slices';
import { stayOnStrings } from '../change/stayOnStrings';
import type { Settings } from '../records';
import type { ChangeResult, Report } from '../serviceApi';
import { createMover, type Move } from './moveAll';
import { higherWords, shapesWords } from './shapesWords';
import type { FitRequest } from './singerAnswer';

/** The farthest that all strings are moved: an octave. */
const FARTHEST = 12;

/**
 * Moves the sound of a passage to where a singer has it, by its capo, its tuning or both. Every string and fret stays as
 * it is written, and each note sounds `capoBy + tuningBy` half steps higher. One edit.
 */
export function applyFit(document: TabDocument, request: FitRequest, settings: Settings): ChangeResult {
  const slices = slicesIn(document, request.range);
  if (slices.length === 0) return { error: NOTHING_THERE };
  const trouble = troubleOf(slices, request);
  if (trouble !== undefined) return { error: trouble };
  return wideningCuts(document, slices, (wider) => attempt(document, wider, request, settings));
}

function attempt(document: TabDocument, slices: readonly Slice[], move: Move, settings: Settings): Attempt {
  const headerFor = createMover(settings)(move);
  const { capoBy, tuningBy } = move;
  const staying = stayOnStrings(
    document,
    slices,
    headerFor,
    (_, note) => `fret ${note.fret ?? 0} cannot be played on string ${note.string} there`,
  );
  const report = (unwritten: ReadonlySet<string>): Report => {
    const counted = staying.count(unwritten);
    const { moved, notesIn, unplaced } = counted;
    const cautions = cautionsFor(slices, headerFor, tuningBy);
    const remarks = [
      `Every string and fret stays; ${notesOutOf(moved, notesIn).toLowerCase()} ${moved === 1 ? 'sounds' : 'sound'} ${higherWords(capoBy + tuningBy)}.`,
      ...leftOut(unplaced.length),
      `${shapesWords(slices, move).words}.`,
      ...cautions,
    ];
    return { ...counted, remarks, ...(cautions.length > 0 && { cautions }) };
  };
  return changeOf(
    document,
    slices,
    {
      header: ({ system }) => headerFor(system.header),
      place: staying.place,
      keepLabels: tuningBy === 0,
      rewrite: ({ system: { header } }, row, mark) =>
        row.row === 'chords' && tuningBy !== 0
          ? transposeWrittenChord(mark.text, tuningBy, headerFor(header).key)
          : mark.text,
    },
    report,
    settings,
  );
}

function troubleOf(slices: readonly Slice[], { capoBy, tuningBy }: Move): string | undefined {
  if (!Number.isInteger(tuningBy) || Math.abs(tuningBy) > FARTHEST)
    return `All strings are moved by a whole number of half steps from −${FARTHEST} to ${FARTHEST}, such as -2.`;
  if (!Number.isInteger(capoBy)) return 'A capo is moved by a whole number of frets, such as 3 or -2.';
  if (capoBy === 0) return undefined;
  for (const { system } of slices) {
    const { capo, frets } = system.header;
    if (capo?.strings)
      return 'A partial capo stays where it is, since there is no second one; move the tuning instead.';
    const fret = (capo?.fret ?? 0) + capoBy;
    if (fret < 0) return `The capo is at fret ${capo?.fret ?? 0} and cannot go down by ${-capoBy}.`;
    if (fret >= frets)
      return `A capo stands at a fret from 1 to ${Math.max(frets - 1, 1)} on this neck of ${frets}; ${fret} is none of them.`;
  }
  return undefined;
}

/** The usual cautions where all strings go up, and some above what the instrument is usually strung for. */
export function cautionsFor(
  slices: readonly Slice[],
  headerFor: (header: Header) => Header,
  tuningBy: number,
): string[] {
  const caution = retuningCaution(raisedBy(slices, headerFor, tuningBy));
  return caution === undefined ? [] : [caution];
}

/** The most half steps by which strings that go up end above the instrument's usual tuning; 0 for none. */
export function raisedBy(
  slices: readonly Slice[],
  headerFor: (header: Header) => Header,
  tuningBy: number,
): number {
  if (tuningBy <= 0) return 0;
  const raised = slices.flatMap(({ system: { header } }) =>
    stepsFrom(usualTuning(header.instrument), headerFor(header).tuning).map((step) => step ?? 0),
  );
  return Math.max(0, ...raised);
}
