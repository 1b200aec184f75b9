import { formatNoteName } from '../../music/noteName';
import { beatInWords, isDotted } from '../hover/beat';
import { stopWords } from '../hover/stopWords';
import { rangeIn } from '../locate';
import type { CompareCounts, ComparedChange, ComparedField, ComparedNote } from './compareAnswer';
import type { NoteMatch } from './matchNotes';
import type { VersionBar, VersionNote } from './versionBars';

/** A note as it is told. */
export function tellNote({ system, note, bar: number }: VersionNote): ComparedNote {
  const { reading, header } = system;
  const bar = reading.bars[note.bar];
  const [first] = note.pitches;
  return {
    bar: number,
    beat: bar ? beatInWords(header.meter, bar, note.onset, isDotted(reading, header.meter)) : '',
    string: note.string,
    stop: stopWords(note),
    name: first ? formatNoteName(first.name) : '',
    midi: first ? Math.round(first.midi * 10000) / 10000 : null,
    range: rangeIn(system, note),
  };
}

/** A match that is a change, with its words; undefined for a note that stayed the same. */
export function tellChange({ kind, before, after, over }: NoteMatch): ComparedChange | undefined {
  if (kind === 'same') return undefined;
  const [one, other] = [before && tellNote(before), after && tellNote(after)];
  const words = changeWords(kind, one, other, over === true);
  return { kind, ...(one && { before: one }), ...(other && { after: other }), words };
}

function changeWords(
  kind: ComparedChange['kind'],
  before: ComparedNote | undefined,
  after: ComparedNote | undefined,
  over: boolean,
): string {
  if (!before || !after) {
    const one = before ?? after;
    return one ? `${placed(one)}, ${one.beat}` : '';
  }
  switch (kind) {
    case 'retimed':
      return `${placed(after)}: ${before.beat}${over ? ` of bar ${before.bar}` : ''} before, now ${after.beat}`;
    case 'repitched':
      return `${after.beat}: ${placed(before)} before, now ${placed(after)}`;
    case 'elsewhere':
      return `${named(after)}, ${after.beat}: ${where(before)} before, now ${where(after)}`;
    case 'played':
    case 'added':
    case 'lost':
      return `${placed(after)}, ${after.beat}`;
  }
}

function placed(note: ComparedNote): string {
  return `${named(note)} on ${where(note)}`;
}

function named({ name }: ComparedNote): string {
  return name === '' ? 'a muted stroke' : name;
}

function where({ string, stop }: ComparedNote): string {
  return stop === 'muted' ? `string ${string}` : `string ${string}, ${stop}`;
}

/** `Bar 4`, `Bar 5, bar 4 before`, `Bar 3, new`, `Bar 3 before, gone`. */
export function barTitle(before: VersionBar | undefined, after: VersionBar | undefined): string {
  if (!after) return `Bar ${before?.number ?? ''} before, gone`;
  if (!before) return `Bar ${after.number}, new`;
  return before.number === after.number
    ? `Bar ${after.number}`
    : `Bar ${after.number}, bar ${before.number} before`;
}

/** How each kind is counted, in the order in which it is told. */
export const KIND_WORDS: readonly (readonly [ComparedChange['kind'], string])[] = [
  ['added', 'added'],
  ['lost', 'lost'],
  ['retimed', 'at another time'],
  ['repitched', 'at another pitch'],
  ['elsewhere', 'the same sound elsewhere on the neck'],
  ['played', 'played another way'],
];

/** `40 notes before, 42 now: 38 the same, 4 added, 2 lost.` */
export function summary(counts: CompareCounts, fields: readonly ComparedField[]): string {
  const { before, after, same } = counts;
  const notes = (count: number): string => `${count} ${count === 1 ? 'note' : 'notes'}`;
  if (before === after && same === before)
    return `${notes(before)}, ${before === 1 ? 'the same' : 'all the same'} in both versions${fields.length > 0 ? '; fields differ' : ''}.`;
  const kinds = KIND_WORDS.filter(([kind]) => counts[kind] > 0).map(
    ([kind, words]) => `${counts[kind]} ${words}`,
  );
  return `${notes(before)} before, ${after} now: ${[`${same} the same`, ...kinds].join(', ')}.`;
}
