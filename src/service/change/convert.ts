import { formatTuning, nameOfTuning, stepsFrom } from '../../instrument/tuningFormat';
import { retuningCaution } from '../../instrument/retuningCaution';
import { readTuning } from '../../instrument/tuningValue';
import type { Tuning } from '../../instrument/tuning';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import { transposeKey } from '../../music/key';
import type { Header } from '../../notation/header';
import { fingerboardOf, usualTuning } from '../../notation/headerViews';
import type { NotePlace } from '../../notation/print/pieces';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ChangeResult, ConvertRequest, UnplacedNote } from '../serviceApi';
import { changeOf, mapHeaders, NOTHING_THERE } from './change';
import { chordUnder } from './chordMarks';
import { halfStepWords } from './halfStepWords';
import { entriesOf, nameOf, placeNotes } from './placing';
import { placeAsItIs } from './rewrite';
import { slicesIn, type Slice } from './slices';

/** Carries a passage to another tuning: its sound, or its shapes. */
export function convert(document: TabDocument, request: ConvertRequest, settings: Settings): ChangeResult {
  const slices = slicesIn(document, request.range);
  const [first] = slices;
  if (!first) return { error: NOTHING_THERE };
  const read = readTuning(request.tuning, {
    instrument: first.system.header.instrument,
    userTunings: settings.tunings,
  });
  if (!read.ok) return { error: read.error.message };
  const tuning = read.value;
  const trouble = slices
    .map((slice) => capoTrouble(slice, tuning))
    .find((sentence) => sentence !== undefined);
  if (trouble) return { error: trouble };
  return request.keep === 'sound'
    ? keepSound(document, slices, tuning, settings)
    : keepShapes(document, slices, tuning, settings);
}

/** A partial capo sits on strings that the new tuning must have. */
function capoTrouble({ system }: Slice, tuning: Tuning): string | undefined {
  const missing = system.header.capo?.strings?.find((number) => number > tuning.strings.length);
  return missing === undefined
    ? undefined
    : `The partial capo lies on string ${missing}, which a tuning of ${tuning.strings.length} strings does not have; change capo first.`;
}

function keepSound(
  document: TabDocument,
  slices: readonly Slice[],
  tuning: Tuning,
  settings: Settings,
): ChangeResult {
  const headerFor = mapHeaders((header) => ({ ...header, tuning }));
  const places = placeNotes(document, slices, headerFor, 0, settings);
  const notesIn = places.entries.length;
  const { unplaced, fitsAt } = places;
  const kept = notesIn - unplaced.length;
  const remarks = [`${kept} of ${notesIn} notes keep their pitch in ${nameFor(tuning, slices)}.`];
  if (unplaced.length > 0)
    remarks.push(
      `${unplaced.length} ${unplaced.length === 1 ? 'has' : 'have'} no place and ${unplaced.length === 1 ? 'is' : 'are'} left out.`,
    );
  if (fitsAt !== undefined)
    remarks.push(`Moved ${halfStepWords(fitsAt)} as a whole, the passage fits without a gap.`);
  return changeOf(
    document,
    slices,
    { header: ({ system }) => headerFor(system.header), place: places.at, keepLabels: false },
    { notesIn, kept, moved: 0, unplaced, remarks: [...remarks, ...cautions(slices, tuning)] },
    settings,
  );
}

function keepShapes(
  document: TabDocument,
  slices: readonly Slice[],
  tuning: Tuning,
  settings: Settings,
): ChangeResult {
  const headerFor = mapHeaders((header) => shapesHeader(header, tuning));
  const entries = entriesOf(document, slices);
  const unplaced: UnplacedNote[] = [];
  let kept = 0;
  const dropped = new Set<string>();
  for (const { slice, index, note, bar } of entries) {
    const header = headerFor(slice.system.header);
    const board = fingerboardOf(header);
    const at = tuning.strings.length - note.string;
    const midis = note.fret === undefined ? [] : board.pitches(at, note.fret);
    if (at < 0 || midis === undefined) {
      dropped.add(`${slice.index}:${index}`);
      unplaced.push({
        bar,
        name: nameOf(note),
        reason:
          at < 0
            ? `there is no string ${note.string}`
            : `fret ${note.fret ?? 0} cannot be played on string ${note.string}`,
      });
    } else if (
      note.kind === 'muted' ||
      fingerboardOf(slice.system.header)
        .pitches(indexOf(slice, note.string), note.fret ?? 0)
        ?.join() === midis.join()
    )
      kept += 1;
  }
  const place = (slice: Slice, index: number): NotePlace | undefined =>
    dropped.has(`${slice.index}:${index}`) ? undefined : placeAsItIs(slice.system, index);
  const notesIn = entries.length;
  const moved = notesIn - kept - unplaced.length;
  const remarks = [
    `Every string and fret stays; ${moved} of ${notesIn} notes sound another pitch in ${nameFor(tuning, slices)}.`,
  ];
  const shift = uniformShift(slices[0]?.system.header.tuning, tuning);
  if (shift === undefined && slices.some(({ system }) => system.header.key)) {
    remarks.push(
      'The strings do not all move alike, so the key is left as it is written; see whether it still says what sounds.',
    );
  }
  return changeOf(
    document,
    slices,
    {
      header: ({ system }) => headerFor(system.header),
      place,
      keepLabels: false,
      rewrite: (slice, row, mark) => {
        if (row.row !== 'chords') return mark.text;
        const { header } = slice.system;
        const half = uniformShift(header.tuning, tuning);
        if (half !== undefined) return transposeWrittenChord(mark.text, half, headerFor(header).key);
        return chordUnder(slice.system, headerFor(header), row, mark) ?? mark.text;
      },
    },
    { notesIn, kept, moved, unplaced, remarks: [...remarks, ...cautions(slices, tuning)] },
    settings,
  );
}

function indexOf({ system }: Slice, string: number): number {
  return system.header.tuning.strings.length - string;
}

function shapesHeader(header: Header, tuning: Tuning): Header {
  const shift = uniformShift(header.tuning, tuning);
  return { ...header, tuning, key: header.key && shift ? transposeKey(header.key, shift) : header.key };
}

/** By how many half steps all strings move; undefined when they do not move alike. */
function uniformShift(from: Tuning | undefined, to: Tuning): number | undefined {
  if (!from || from.strings.length !== to.strings.length) return undefined;
  const steps = stepsFrom(from, to);
  const [first] = steps;
  return first !== undefined && Number.isInteger(first) && steps.every((step) => step === first)
    ? first
    : undefined;
}

function nameFor(tuning: Tuning, slices: readonly Slice[]): string {
  const instrument = slices[0]?.system.header.instrument;
  return (instrument && nameOfTuning(tuning, instrument)) ?? formatTuning(tuning, instrument);
}

/** The usual cautions where a string goes above the pitch it is usually strung for. */
function cautions(slices: readonly Slice[], tuning: Tuning): string[] {
  const instrument = slices[0]?.system.header.instrument;
  if (!instrument) return [];
  const caution = retuningCaution(
    Math.max(0, ...stepsFrom(usualTuning(instrument), tuning).map((step) => step ?? 0)),
  );
  return caution ? [caution] : [];
}
