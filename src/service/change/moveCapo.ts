import { formatCapo, readCapo, type Capo } from '../../instrument/capo';
import { formatKey, transposeKey } from '../../music/key';
import { transposeWrittenChord } from '../../music/chord/transposeChord';
import type { Header } from '../../notation/header';
import { capoShift, fingerboardOf } from '../../notation/headerViews';
import type { NotePlace } from '../../notation/print/pieces';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ChangeResult, MoveCapoRequest, UnplacedNote } from '../serviceApi';
import { changeOf, mapHeaders, NOTHING_THERE } from './change';
import { halfStepWords } from './halfStepWords';
import { entriesOf, nameOf, placeNotes, type PassageEntry, type Places } from './placing';
import { placeAsItIs } from './rewrite';
import { slicesIn, type Slice } from './slices';

/**
 * Puts, moves or takes off the capo of a passage. Keeping the sound, frets move, and so do the written key and chords,
 * since they are named as played; keeping the shapes, what is written stays and all of it sounds elsewhere.
 */
export function moveCapo(document: TabDocument, request: MoveCapoRequest, settings: Settings): ChangeResult {
  const slices = slicesIn(document, request.range);
  const [first] = slices;
  if (!first) return { error: NOTHING_THERE };
  const { header } = first.system;
  const read = readCapo(request.capo, header.tuning.strings.length, header.frets);
  if (!read.ok) return { error: read.error.message };
  const capo = read.value;
  return request.keep === 'sound'
    ? keepSound(document, slices, capo, settings)
    : keepShapes(document, slices, capo, settings);
}

function keepSound(
  document: TabDocument,
  slices: readonly Slice[],
  capo: Capo | undefined,
  settings: Settings,
): ChangeResult {
  const headerFor = mapHeaders((header) => {
    const next = { ...header, capo };
    const shift = capoShift(header) - capoShift(next);
    return { ...next, key: header.key && shift !== 0 ? transposeKey(header.key, shift) : header.key };
  });
  const places =
    onTheirStrings(document, slices, headerFor) ?? placeNotes(document, slices, headerFor, 0, settings);
  const notesIn = places.entries.length;
  const kept = notesIn - places.unplaced.length;
  const remarks = [
    `${kept} of ${notesIn} notes keep their pitch with capo ${formatCapo(capo)}.`,
    ...soundsIn(slices, headerFor),
  ];
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
    { notesIn, kept, moved: 0, unplaced: places.unplaced, remarks },
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
    places.set(`${entry.slice.index}:${entry.index}`, place);
  }
  return {
    entries,
    unplaced: [],
    fitsAt: undefined,
    at: (slice, index) => places.get(`${slice.index}:${index}`),
  };
}

function sameString(
  { slice, index, note }: PassageEntry,
  headerFor: (header: Header) => Header,
): NotePlace | undefined {
  const { header } = slice.system;
  if (note.kind === 'muted') return placeAsItIs(slice.system, index);
  // Harmonics and notes that a technique binds to a stopped string are left to the search.
  const [pitch] = note.pitches;
  if (note.kind !== 'fretted' || !pitch) return undefined;
  const at = header.tuning.strings.length - note.string;
  const fret = fingerboardOf(headerFor(header)).fretFor(at, pitch.midi);
  const opens =
    fret === 0 &&
    note.techniques.some(({ kind }) => kind === 'bend' || kind === 'pre-bend' || kind === 'vibrato');
  return fret === undefined || opens ? undefined : { string: note.string, fret };
}

function keepShapes(
  document: TabDocument,
  slices: readonly Slice[],
  capo: Capo | undefined,
  settings: Settings,
): ChangeResult {
  const headerFor = mapHeaders((header) => ({ ...header, capo }));
  const entries = entriesOf(document, slices);
  const unplaced: UnplacedNote[] = [];
  const dropped = new Set<string>();
  let kept = 0;
  for (const { slice, index, note, bar } of entries) {
    const { header } = slice.system;
    const at = header.tuning.strings.length - note.string;
    if (note.fret === undefined) {
      kept += 1;
      continue;
    }
    const midis = fingerboardOf(headerFor(header)).pitches(at, note.fret);
    if (!midis) {
      dropped.add(`${slice.index}:${index}`);
      unplaced.push({
        bar,
        name: nameOf(note),
        reason: `fret ${note.fret} cannot be played on string ${note.string} with capo ${formatCapo(capo)}`,
      });
    } else if (midis.join() === fingerboardOf(header).pitches(at, note.fret)?.join()) kept += 1;
  }
  const notesIn = entries.length;
  const moved = notesIn - kept - unplaced.length;
  const remarks = [
    `Every string and fret stays; ${moved} of ${notesIn} notes sound another pitch.`,
    ...soundsIn(slices, headerFor),
  ];
  return changeOf(
    document,
    slices,
    {
      header: ({ system }) => headerFor(system.header),
      place: (slice, index) =>
        dropped.has(`${slice.index}:${index}`) ? undefined : placeAsItIs(slice.system, index),
      keepLabels: true,
    },
    { notesIn, kept, moved, unplaced, remarks },
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
    ? [`What is written sounds as written, in ${formatKey(header.key)}.`]
    : [
        `Shapes of ${formatKey(header.key)} sound in ${formatKey(transposeKey(header.key, shift))}, ${halfStepWords(shift)}.`,
      ];
}
