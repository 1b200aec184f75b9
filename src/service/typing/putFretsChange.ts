import type { TabDocument } from '../../notation/tabDocument';
import { editTo } from '../change/edits';
import { spellPitches, fingerboardOf } from '../../notation/headerViews';
import { formatNoteName } from '../../music/noteName';
import type { NoteReading } from '../../notation/reading';
import type { Place } from '../records';
import type { ChangeResult, UnplacedNote } from '../serviceApi';
import { putFrets, type PutSystem } from './putFrets';
import type { StringSigns } from './putFretsRequest';

/**
 * Puts frets, muted strokes or nothing on some strings at the moment of a cursor, as one change. Its report counts the
 * notes that stood there on these strings: kept where the fret is the same, moved where it is another, unplaced where the
 * string is cleared.
 * @param what was done, as a sentence without its stop: `String 3 fret 2 is written`
 * @example putFretsChange(document, { line: 4, character: 9 }, new Map([[3, 2]]), 'String 3 fret 2 is written')
 */
export function putFretsChange(
  document: TabDocument,
  place: Place,
  signs: StringSigns,
  what: string,
): ChangeResult {
  const put = putFrets(document, place, signs);
  if ('error' in put) return put;
  return {
    edits: editTo(document, linesWith(document, put)),
    report: { ...countOf(document, put, signs), remarks: [`${what}.`] },
  };
}

/** The document's lines with a system's lines in place of its own. */
export function linesWith(document: TabDocument, { system, lines }: PutSystem): string[] {
  const all = Array.from({ length: document.lineCount }, (_, i) => document.line(i).text);
  all.splice(system.firstLine, system.lines.length, ...lines);
  return all;
}

function countOf(
  document: TabDocument,
  { before, system }: PutSystem,
  signs: StringSigns,
): { notesIn: number; kept: number; moved: number; unplaced: UnplacedNote[] } {
  const isSame = (note: NoteReading): boolean => (note.fret ?? 'x') === signs.get(note.string);
  const kept = before.filter(isSame);
  const gone = before.filter(({ string }) => signs.get(string) === 'nothing');
  const { part, firstBar } = document.placeOf(system);
  const unplaced = gone.map((note): UnplacedNote => ({
    ...(part !== undefined && { part }),
    bar: firstBar + note.bar,
    name: nameOf(note, system.header),
    reason: `string ${note.string} is not played any more`,
  }));
  return {
    notesIn: before.length,
    kept: kept.length,
    moved: before.length - kept.length - gone.length,
    unplaced,
  };
}

function nameOf({ pitches, string, fret }: NoteReading, header: PutSystem['system']['header']): string {
  const board = fingerboardOf(header);
  const midis = fret === undefined ? [] : (board.pitches(header.tuning.strings.length - string, fret) ?? []);
  const names = pitches.length > 0 ? pitches : spellPitches(midis, header);
  return names.length > 0 ? names.map(({ name }) => formatNoteName(name)).join('/') : 'x';
}
