import { stepsFrom } from '../../instrument/tuningFormat';
import type { Tuning } from '../../instrument/tuning';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import { transposeKey } from '../../music/key';
import type { Header } from '../../notation/header';
import type { RowMark } from '../../notation/parsedLine';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { Report } from '../serviceApi';
import { changeOf, mapHeaders, type Attempt } from './change';
import { chordMarksIn, chordUnder } from './chordMarks';
import type { Goal } from './convertGoal';
import { halfStepWords, leftOut, notesOutOf } from './remarks';
import { stayOnStrings } from './stayOnStrings';
import type { Slice } from './slices';

/**
 * Keeps every string and fret under another tuning. Where all strings move alike, the key and the chords move with
 * them; else the chords are named anew from what sounds, and the key stays as it is written.
 */
export function convertShapes(
  document: TabDocument,
  slices: readonly Slice[],
  { tuningFor, headerFor: fieldsFor, name, cautions }: Goal,
  settings: Settings,
): Attempt {
  const shiftOf = (header: Header): number | undefined => uniformShift(header.tuning, tuningFor(header));
  const headerFor = mapHeaders((header) => {
    const shift = shiftOf(header);
    const key = header.key && shift ? transposeKey(header.key, shift) : header.key;
    return { ...fieldsFor(header), key };
  });
  const staying = stayOnStrings(document, slices, headerFor, (header, note) =>
    note.string > tuningFor(header).strings.length
      ? `there is no string ${note.string}`
      : `fret ${note.fret ?? 0} cannot be played on string ${note.string}`,
  );
  const chords = new Map<RowMark, string | undefined>();
  for (const slice of slices) {
    const { header } = slice.system;
    const shift = shiftOf(header);
    for (const { row, mark } of chordMarksIn(slice)) {
      const named =
        shift === undefined
          ? chordUnder(slice.system, headerFor(header), row, mark)
          : transposeWrittenChord(mark.text, shift, headerFor(header).key);
      chords.set(mark, named);
    }
  }
  const shifts = new Set(slices.map(({ system }) => shiftOf(system.header)));
  const report = (unwritten: ReadonlySet<string>): Report => {
    const counted = staying.count(unwritten);
    const { moved, notesIn, unplaced } = counted;
    const remarks = [
      `Every string and fret stays; ${notesOutOf(moved, notesIn).toLowerCase()} ${moved === 1 ? 'sounds' : 'sound'} another pitch in ${name}.`,
      ...leftOut(unplaced.length),
      ...wordsOfNames(slices, shifts, [...chords.values()]),
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
      keepLabels: false,
      rewrite: (_, _row, mark) => chords.get(mark) ?? mark.text,
    },
    report,
    settings,
  );
}

/** What becomes of the key and of chord names. */
function wordsOfNames(
  slices: readonly Slice[],
  shifts: ReadonlySet<number | undefined>,
  chords: readonly (string | undefined)[],
): string[] {
  const keyed = slices.some(({ system }) => system.header.key);
  const [shift] = shifts;
  if (shifts.size === 1 && shift !== undefined) {
    const what = [...(keyed ? ['the key'] : []), ...(chords.length > 0 ? ['the chord names'] : [])].join(
      ' and ',
    );
    if (what === '' || shift === 0) return [];
    const move = keyed && chords.length === 0 ? 'moves' : 'move';
    return [
      `${what.charAt(0).toUpperCase()}${what.slice(1)} ${move} ${halfStepWords(shift)} with the strings.`,
    ];
  }
  const unnamed = chords.filter((name) => name === undefined).length;
  return [
    ...(keyed
      ? [
          'The strings do not all move alike, so the key is left as it is written; see whether it still says what sounds.',
        ]
      : []),
    ...(chords.length > 0 ? ['The chord names are worked out anew from what sounds.'] : []),
    ...(unnamed > 0
      ? [
          `${unnamed} of them could not be named and ${unnamed === 1 ? 'stays' : 'stay'} as written; see to ${unnamed === 1 ? 'it' : 'them'}.`,
        ]
      : []),
  ];
}

/** By how many half steps all strings move; undefined when they do not move alike. */
function uniformShift(from: Tuning, to: Tuning): number | undefined {
  if (from.strings.length !== to.strings.length) return undefined;
  const steps = stepsFrom(from, to);
  const [first] = steps;
  return first !== undefined && Number.isInteger(first) && steps.every((step) => step === first)
    ? first
    : undefined;
}
