import { readCapo, type Capo } from '../../instrument/capo';
import { formatKey, transposeKey } from '../../music/key';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf } from '../../notation/headerViews';
import type { NotePlace } from '../../notation/print/pieces';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ChangeResult, MoveCapoRequest, Report } from '../serviceApi';
import { changeOf, mapHeaders, NOTHING_THERE, wideningCuts, type Attempt } from './change';
import {
  entriesOf,
  needsFinger,
  unplacedNotes,
  withTargets,
  type PassageEntry,
  type Places,
} from './placing';
import { capoWords, halfStepWords, leftOut, notesOutOf, verb } from './remarks';
import { keyOf, placeAsItIs } from './rewrite';
import { slicesIn, type Slice } from './slices';
import { placeNotes } from './ways';
import { stayOnStrings } from './stayOnStrings';

/**
 * Puts, moves or takes off the capo of a passage. Keeping the sound, frets move, and so do the written key and chords,
 * since they are named as played; keeping the shapes, what is written stays and all of it sounds elsewhere.
 */
export function moveCapo(document: TabDocument, request: MoveCapoRequest, settings: Settings): ChangeResult {
  const slices = slicesIn(document, request.range);
  const [first] = slices;
  if (!first) return { error: NOTHING_THERE };
  const capos = new Map<Header, Capo | undefined>();
  for (const { system } of slices) {
    const { header } = system;
    const read = readCapo(request.capo, header.tuning.strings.length, header.frets);
    if (!read.ok) return { error: read.error.message };
    capos.set(header, read.value);
  }
  const capoFor = (header: Header): Capo | undefined => capos.get(header);
  const words = capoWords(capoFor(first.system.header));
  const attempt = request.keep === 'sound' ? keepSound : keepShapes;
  return wideningCuts(document, slices, (wider) => attempt(document, wider, capoFor, words, settings));
}

function keepSound(
  document: TabDocument,
  slices: readonly Slice[],
  capoFor: (header: Header) => Capo | undefined,
  words: string,
  settings: Settings,
): Attempt {
  const headerFor = mapHeaders((header) => {
    const next = { ...header, capo: capoFor(header) };
    const shift = capoShift(header) - capoShift(next);
    return { ...next, key: header.key && shift !== 0 ? transposeKey(header.key, shift) : header.key };
  });
  const places =
    onTheirStrings(document, slices, headerFor) ?? placeNotes(document, slices, headerFor, 0, settings);
  const report = (unwritten: ReadonlySet<string>): Report => {
    const { entries, reasonOf, fitsAt } = places;
    const unplaced = unplacedNotes(document, entries, reasonOf, unwritten);
    const notesIn = entries.length;
    const kept = notesIn - unplaced.length;
    const remarks = [
      `${notesOutOf(kept, notesIn)} ${verb(kept, notesIn, 'keep their', 'keeps its')} pitch ${words}.`,
      ...leftOut(unplaced.length),
      ...(fitsAt === undefined
        ? []
        : [`Moved ${halfStepWords(fitsAt)} as a whole, the passage fits without a gap.`]),
      ...soundsIn(slices, headerFor),
    ];
    return { notesIn, kept, moved: 0, unplaced, remarks };
  };
  return changeOf(
    document,
    slices,
    {
      header: ({ system }) => headerFor(system.header),
      place: places.at,
      keepLabels: true,
      rewrite: ({ system: { header } }, row, mark) =>
        row.row === 'chords'
          ? transposeWrittenChord(
              mark.text,
              capoShift(header) - capoShift(headerFor(header)),
              headerFor(header).key,
            )
          : mark.text,
    },
    report,
    settings,
  );
}

/** Every note on the string it has, at another fret; undefined when some note cannot stay. */
function onTheirStrings(
  document: TabDocument,
  slices: readonly Slice[],
  headerFor: (header: Header) => Header,
): Places | undefined {
  const entries = entriesOf(document, slices);
  const places = new Map<string, NotePlace>();
  for (const entry of entries) {
    const place = sameString(entry, headerFor);
    if (!place) return undefined;
    places.set(keyOf(entry.slice, entry.index), place);
  }
  return {
    entries,
    reasonOf: () => undefined,
    fitsAt: undefined,
    at: (slice, index) => places.get(keyOf(slice, index)),
  };
}

function sameString(entry: PassageEntry, headerFor: (header: Header) => Header): NotePlace | undefined {
  const { slice, index, note } = entry;
  const { header } = slice.system;
  if (note.kind === 'muted') return placeAsItIs(slice.system, index);
  // Harmonics and notes that a technique binds to a stopped string are left to the search.
  const [pitch] = note.pitches;
  if (note.kind !== 'fretted' || !pitch) return undefined;
  const at = header.tuning.strings.length - note.string;
  const fret = fingerboardOf(headerFor(header)).fretFor(at, pitch.midi);
  const opens = fret === 0 && needsFinger(slice, note);
  return fret === undefined || opens
    ? undefined
    : withTargets(entry, headerFor(header), { string: note.string, fret });
}

function keepShapes(
  document: TabDocument,
  slices: readonly Slice[],
  capoFor: (header: Header) => Capo | undefined,
  words: string,
  settings: Settings,
): Attempt {
  const headerFor = mapHeaders((header) => ({ ...header, capo: capoFor(header) }));
  const staying = stayOnStrings(
    document,
    slices,
    headerFor,
    (_, note) => `fret ${note.fret ?? 0} cannot be played on string ${note.string} ${words}`,
  );
  const report = (unwritten: ReadonlySet<string>): Report => {
    const counted = staying.count(unwritten);
    const { moved, notesIn, unplaced } = counted;
    const remarks = [
      `Every string and fret stays; ${notesOutOf(moved, notesIn).toLowerCase()} ${moved === 1 ? 'sounds' : 'sound'} another pitch ${words}.`,
      ...leftOut(unplaced.length),
      ...soundsIn(slices, headerFor),
    ];
    return { ...counted, remarks };
  };
  return changeOf(
    document,
    slices,
    {
      header: ({ system }) => headerFor(system.header),
      place: staying.place,
      keepLabels: true,
    },
    report,
    settings,
  );
}

/** `Shapes of G sound in Bb.`, where a key is written and the capo is a full one. */
function soundsIn(slices: readonly Slice[], headerFor: (header: Header) => Header): string[] {
  const header = slices[0] && headerFor(slices[0].system.header);
  if (!header?.key) return [];
  const shift = capoShift(header);
  if (header.capo?.strings) return [];
  return shift === 0
    ? [`Without a capo it sounds as it is written, in ${formatKey(header.key)}.`]
    : [
        `Shapes of ${formatKey(header.key)} sound in ${formatKey(transposeKey(header.key, shift))}, ${halfStepWords(shift)}.`,
      ];
}
