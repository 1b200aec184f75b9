import { transposeWrittenChord } from '../../music/chord/transposeChord';
import { formatKey, readKey, transposeKey, type Key } from '../../music/key';
import { pitchClassOf } from '../../music/noteName';
import type { Header } from '../../notation/header';
import type { TabDocument } from '../../notation/tabDocument';
import type { Settings } from '../records';
import type { ChangeResult, Report, ServiceError, TransposeRequest } from '../serviceApi';
import { changeOf, mapHeaders, NOTHING_THERE, wideningCuts, type Attempt } from './change';
import { halfStepWords, leftOut, notesOutOf, verb } from './remarks';
import { unplacedNotes } from './placing';
import { placeNotes } from './ways';
import { slicesIn, type Slice } from './slices';

/** Three octaves: beyond it no instrument of the trade keeps anything. */
export const FARTHEST = 36;

/** Moves a passage by half steps, or to a key the nearest way; key and chord rows move with it. */
export function transpose(
  document: TabDocument,
  request: TransposeRequest,
  settings: Settings,
): ChangeResult {
  const slices = slicesIn(document, request.range);
  const [first] = slices;
  if (!first) return { error: NOTHING_THERE };
  const goal = goalOf(request.by, first);
  if ('error' in goal) return goal;
  return wideningCuts(document, slices, (wider) => moveBy(document, wider, goal, settings));
}

interface Move {
  readonly halfSteps: number;
  /** The key to go to, where one was given. */
  readonly key?: Key;
}

function moveBy(
  document: TabDocument,
  slices: readonly Slice[],
  { halfSteps, key }: Move,
  settings: Settings,
): Attempt {
  const written = slices[0]?.system.header.key;
  const headerFor = mapHeaders((header) => ({
    ...header,
    key:
      header.key && halfSteps !== 0
        ? header.key === written && key
          ? key
          : transposeKey(header.key, halfSteps)
        : header.key,
  }));
  const places = placeNotes(document, slices, headerFor, halfSteps, settings);
  const report = (unwritten: ReadonlySet<string>): Report => {
    const { entries, reasonOf, fitsAt } = places;
    const unplaced = unplacedNotes(document, entries, reasonOf, unwritten);
    const notesIn = entries.length;
    const placed = notesIn - unplaced.length;
    const strokes = entries.filter(({ note }) => note.kind === 'muted').length;
    const kept = halfSteps === 0 ? placed : strokes - unplaced.filter(({ name }) => name === 'x').length;
    const remarks = [
      halfSteps === 0
        ? `${notesOutOf(placed, notesIn)} ${verb(placed, notesIn, 'stay as they are', 'stays as it is')}.`
        : `${notesOutOf(placed, notesIn)} ${verb(placed, notesIn, 'move', 'moves')} ${halfStepWords(halfSteps)}.`,
      ...leftOut(unplaced.length),
      ...(fitsAt === undefined || halfSteps + fitsAt === 0
        ? []
        : [`Moved ${halfStepWords(halfSteps + fitsAt)} instead, the passage fits without a gap.`]),
      ...keyWords(slices, headerFor),
    ];
    return { notesIn, kept, moved: placed - kept, unplaced, remarks };
  };
  return changeOf(
    document,
    slices,
    {
      header: ({ system }) => headerFor(system.header),
      place: places.at,
      keepLabels: true,
      rewrite: ({ system }, row, mark) =>
        row.row === 'chords'
          ? transposeWrittenChord(mark.text, halfSteps, headerFor(system.header).key)
          : mark.text,
    },
    report,
    settings,
  );
}

/** `The key goes from D major to F major.`, once for each key that is written. */
function keyWords(slices: readonly Slice[], headerFor: (header: Header) => Header): string[] {
  const moves = slices.flatMap(({ system: { header } }) => {
    const { key } = headerFor(header);
    return header.key && key && key !== header.key ? [`${formatKey(header.key)} to ${formatKey(key)}`] : [];
  });
  return [...new Set(moves)].map((move) => `The key goes from ${move}.`);
}

function goalOf(by: number | string, first: Slice): Move | ServiceError {
  const steps =
    typeof by === 'number' ? by : /^\s*[+−-]?\d+\s*$/.test(by) ? Number(by.replace('−', '-')) : undefined;
  if (steps !== undefined) {
    return Number.isInteger(steps) && Math.abs(steps) <= FARTHEST
      ? { halfSteps: steps }
      : {
          error: `Transpose by a whole number of half steps from −${FARTHEST} to ${FARTHEST}, such as 2 or -3.`,
        };
  }
  const key = readKey(String(by));
  if (!key.ok)
    return { error: `Give half steps, such as -3, or a key, such as E minor. ${key.error.message}` };
  const from = first.system.header.key;
  if (!from)
    return {
      error:
        'The passage has no key to start from; write a key: field above it, or give half steps, such as -3.',
    };
  const up = (pitchClassOf(key.value.tonic) - pitchClassOf(from.tonic) + 12) % 12;
  const modes = from.mode === key.value.mode;
  if (!modes)
    return {
      error: `The passage is in ${formatKey(from)}; transposing keeps its mode, so give a key such as ${formatKey({ ...key.value, mode: from.mode })}.`,
    };
  return { halfSteps: up > 6 ? up - 12 : up, key: key.value };
}
