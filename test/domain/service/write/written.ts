import assert from 'node:assert/strict';
import type { Change, ChangeResult, ServiceError } from '../../../../src/service/serviceApi';
import type { WriteExerciseRequest, WriteNotesRequest } from '../../../../src/service/write/writeRequest';
import { openAt, service, settings } from '../cursor';

/** What writing gives: the text, where one goes on marked `<|>`, the notes read from the new text, and the report. */
export interface Written {
  readonly text: string;
  readonly marked: string;
  readonly notes: ReturnType<typeof service.notes>;
  readonly report: Change['report'];
}

function written(marked: string, write: (at: ReturnType<typeof openAt>) => ChangeResult): Written {
  const at = openAt(marked);
  const result = write(at);
  assert.ok(!('error' in result), 'error' in result ? result.error : '');
  assert.ok(result.edits.length <= 1, 'one edit, one undo');
  at.document.edit(result.edits);
  const text = at.document.text();
  assert.ok(result.goesOn);
  const { line, character } = result.goesOn;
  const lines = text.split('\n');
  const own = lines[line] ?? '';
  lines[line] = `${own.slice(0, character)}<|>${own.slice(character)}`;
  return { text, marked: lines.join('\n'), notes: service.notes(at.document), report: result.report };
}

/** Writes notes at the mark `<|>`. */
export function write(marked: string, request: WriteNotesRequest): Written {
  return written(marked, ({ document, place }) => service.writeNotes(document, place, request, settings));
}

/** Lays an exercise down at the mark `<|>`. */
export function exercise(marked: string, request: WriteExerciseRequest): Written {
  return written(marked, ({ document, place }) => service.writeExercise(document, place, request, settings));
}

/** Why nothing is written. */
export function refusedNotes(marked: string, request: WriteNotesRequest): ServiceError {
  const { document, place } = openAt(marked);
  const result = service.writeNotes(document, place, request, settings);
  assert.ok('error' in result, 'it was written');
  assert.match(result.error, /^[A-Z“].*\.$/);
  return result;
}

/** Why no exercise is laid down. */
export function refusedExercise(marked: string, request: WriteExerciseRequest): string {
  const { document, place } = openAt(marked);
  const result = service.writeExercise(document, place, request, settings);
  assert.ok('error' in result, 'it was written');
  assert.match(result.error, /^[A-Z“].*\.$/);
  return result.error;
}

/** String and fret of each note, as `5:3`. */
export function places({ notes }: Written): string {
  return notes.map(({ string, fret }) => `${string}:${fret ?? 'x'}`).join(' ');
}

/** Names with their onsets in quarter notes. */
export function sounds({ notes }: Written): string {
  return notes.map(({ name, onset }) => `${name}@${Math.round(onset * 1000) / 1000}`).join(' ');
}

/** The marks of the fingers row. */
export function fingers({ text }: Written): string {
  const rows = text.split('\n').filter((line) => line.startsWith('fingers'));
  return rows.flatMap((row) => row.slice('fingers'.length).match(/[0-4T]/g) ?? []).join(' ');
}
