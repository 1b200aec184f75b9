import { columnsFrom } from '../notation/columns';
import type { NoteReading } from '../notation/reading';
import type { System, TabDocument } from '../notation/tabDocument';
import type { Place, Range } from './records';

/** A stretch of one line. */
export function lineRange(line: number, start: number, end: number): Range {
  return { start: { line, character: start }, end: { line, character: end } };
}

/** Where a stretch of a system's line stands in the document; `line` counts from the system's first. */
export function rangeIn(
  system: System,
  span: { readonly line: number; readonly start: number; readonly end: number },
): Range {
  return lineRange(system.firstLine + span.line, span.start, span.end);
}

/** A note of a document. */
export interface FoundNote {
  readonly system: System;
  readonly note: NoteReading;
}

/** The note with its signs that has the character at a place. */
export function noteAt(document: TabDocument, place: Place): FoundNote | undefined {
  const system = document.systemAt(place.line);
  if (!system) return undefined;
  const line = place.line - system.firstLine;
  const own = system.reading.notes.filter((candidate) => candidate.line === line);
  const at = place.character;
  const holds = (span: { readonly start: number; readonly end: number }): boolean =>
    span.start <= at && at < span.end;
  const note =
    own.find(holds) ?? own.find((n) => n.techniques.some((sign) => sign.line === line && holds(sign)));
  return note && { system, note };
}

/** The note at a cursor, which stands between two characters: the one after it counts first. */
export function noteAtCursor(document: TabDocument, { line, character }: Place): FoundNote | undefined {
  return noteAt(document, { line, character }) ?? noteAt(document, { line, character: character - 1 });
}

/** The column, counted from the line's first `|`, of a character of a string line or row; undefined outside. */
export function columnAt(system: System, place: Place): number | undefined {
  const line = system.lines[place.line - system.firstLine];
  if (line?.kind !== 'string' && line?.kind !== 'row') return undefined;
  const end = line.kind === 'string' ? line.bodyEnd : line.text.length;
  if (place.character < line.bodyStart || place.character >= end) return undefined;
  return columnsFrom(line.text, line.bodyStart)(place.character);
}
