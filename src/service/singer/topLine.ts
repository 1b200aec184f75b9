import { compare, type Fraction } from '../../music/fraction';
import type { NoteReading } from '../../notation/reading';
import type { System, TabDocument } from '../../notation/tabDocument';
import { notesOf, type Slice } from '../change/slices';
import { soundingAt } from '../sounding';

/** The lowest and highest note of a tune, as it sounds, in MIDI numbers, and where it was taken from. */
export interface Tune {
  readonly low: number;
  readonly high: number;
  readonly from: string;
}

/** A line of single notes that spans more is taken for a broken chord. An engineering value: a tune seldom does. */
const WIDEST_LINE = 19;

/**
 * The tune of a passage, as far as tab tells it:
 * - in a line of single notes all of them, where they lie within an octave and a fifth;
 * - else the highest of what sounds at each moment at which something is struck, ringing notes among it, so that basses
 *   under a held note do not count; where words stand over the notes, at each syllable alone.
 *
 * A bend counts with what it reaches. Undefined where nothing has a pitch.
 * @param part the one part to look at; undefined for all parts of the passage, of which one with words goes first
 */
export function tuneOf(
  document: TabDocument,
  slices: readonly Slice[],
  part: string | undefined,
): Tune | undefined {
  const own = part === undefined ? slices : slices.filter(({ system }) => isPart(system, part));
  const name = part ?? partWithWords(slices);
  const chosen = name === undefined ? own : own.filter(({ system }) => isPart(system, name));
  const where = name === undefined ? '' : ` of the part ${name}`;
  const line = singleLine(chosen);
  if (line) return spanOf(line, `the notes${where}`);
  const sung = chosen.flatMap((slice) => skyline(document, slice, syllablesOf(slice)));
  if (sung.length > 0) return spanOf(sung, `the top notes under the words${where}`);
  const top = chosen.flatMap((slice) => skyline(document, slice, undefined));
  return spanOf(top, `the top line${where}`);
}

function isPart({ header }: System, name: string): boolean {
  return header.part?.toLowerCase() === name.toLowerCase();
}

function spanOf(midis: readonly number[], from: string): Tune | undefined {
  if (midis.length === 0) return undefined;
  return { low: Math.min(...midis), high: Math.max(...midis), from };
}

function partWithWords(slices: readonly Slice[]): string | undefined {
  return slices.find(
    ({ system }) =>
      system.header.part !== undefined &&
      system.lines.some((line) => line.kind === 'string') &&
      system.reading.rows.some(({ row, marks }) => row === 'words' && marks.length > 0),
  )?.system.header.part;
}

function syllablesOf({ system }: Slice): readonly Fraction[] {
  return system.reading.rows
    .filter(({ row }) => row === 'words')
    .flatMap(({ marks }) => marks.map(({ onset }) => onset));
}

/** The notes of a passage that strikes no two together, if they are within reach of a voice. */
function singleLine(slices: readonly Slice[]): readonly number[] | undefined {
  const midis: number[] = [];
  for (const slice of slices) {
    let last: Fraction | undefined;
    for (const { note } of notesOf(slice)) {
      if (note.pitches.length === 0) continue;
      if (last && compare(last, note.onset) === 0) return undefined;
      last = note.onset;
      midis.push(...pitchesOf(note));
    }
  }
  return Math.max(...midis) - Math.min(...midis) <= WIDEST_LINE ? midis : undefined;
}

/** The highest of what sounds whenever something is struck, at some moments alone where they are given. */
function skyline(
  document: TabDocument,
  slice: Slice,
  moments: readonly Fraction[] | undefined,
): readonly number[] {
  const pitched = notesOf(slice).filter(({ note }) => note.pitches.length > 0);
  return pitched.flatMap(({ note: { onset } }) => {
    if (moments && !moments.some((moment) => compare(moment, onset) === 0)) return [];
    const sounding = soundingAt(document, slice.system, onset);
    const struck = sounding.flatMap((one) => (one.begins ? pitchesOf(one.note) : []));
    const ringing = sounding.flatMap(({ begins, midis }) => (begins ? [] : midis.slice(0, 1)));
    return [Math.max(...struck, ...ringing)];
  });
}

/** What a note sounds, with the pitches that bends reach; of a course its first string. */
function pitchesOf({ pitches, techniques }: NoteReading): number[] {
  const [first] = pitches;
  if (!first) return [];
  const reached = techniques.flatMap(({ kind, to }) =>
    to !== undefined && (kind === 'bend' || kind === 'pre-bend') ? [to] : [],
  );
  const from = techniques.some(({ kind }) => kind === 'pre-bend') ? [] : [first.midi];
  return [...from, ...reached];
}
