import type { Range, TextEdit } from '../../notation/tabDocument';
import { open } from '../../service/open';
import type { EditableDocument } from '../../service/serviceApi';
import type { Settings } from '../../service/records';
import { fieldsBetween } from './fieldsBetween';
import type { ImportAnswer, ImportGuess, ImportRequest } from './importAnswer';
import { readPlainTab } from './readPlainTab';

/** What a paste comes to: one list of edits, so that one undo takes it back. */
export interface TabPaste {
  /** Sorted; the last one replaces the range that was asked for. */
  readonly edits: readonly TextEdit[];
  readonly guesses: readonly ImportGuess[];
  readonly systems: number;
  /** Notes of the systems. */
  readonly notes: number;
}

/**
 * Puts a plain tab into a document. What it leaves unsaid of instrument, tuning and capo is as it is there. The fields go on top where the document has neither fields nor systems yet;
 * elsewhere they are stated above the paste, only where they differ from those in force, and what was in force before
 * is stated again behind it when systems follow.
 * @param range what it replaces, possibly nothing but a place
 */
export function pasteTab(
  document: EditableDocument,
  range: Range,
  request: ImportRequest,
  settings: Settings,
): TabPaste {
  const { start, end } = range;
  const fresh = document.systems.length === 0 && document.fieldGroups.length === 0;
  const inForce = document.headerAt(start.line);
  const answer = readPlainTab(request.text, { ...request, settings, inForce: fresh ? undefined : inForce });
  if (answer.systems === 0)
    return { edits: [{ range, newText: request.text }], guesses: [], systems: 0, notes: 0 };

  const follows = document.systems.some(({ firstLine }) => firstLine >= end.line);
  const after = follows ? fieldsBetween(answer.ends, inForce) : [];
  const onTop = fresh && (start.line > 0 || start.character > 0);
  const stated = answer.fields.length > 0 && !onTop ? `${answer.fields.join('\n')}\n\n` : '';
  const body = trimmed(answer.body);
  const before = document.line(start.line).text.slice(0, start.character);
  const behind = document.line(end.line).text.slice(end.character);
  const above = start.line === 0 ? '' : document.line(start.line - 1).text;
  const newText = [
    before.trim() !== '' ? '\n\n' : above.trim() !== '' ? '\n' : '',
    stated,
    body,
    after.length > 0 ? `\n\n${after.join('\n')}` : '',
    gapBehind(document, end.line, behind),
  ].join('');
  const edits: TextEdit[] = [{ range, newText }];
  if (onTop && answer.fields.length > 0) {
    const top = { line: 0, character: 0 };
    const first = document.line(0).text.trim() === '' ? '\n' : '\n\n';
    edits.unshift({ range: { start: top, end: top }, newText: answer.fields.join('\n') + first });
  }
  return { edits, guesses: answer.guesses, systems: answer.systems, notes: notesIn(answer, settings) };
}

/** What a paste needs behind it, so that nothing runs into it. */
function gapBehind(document: EditableDocument, line: number, behind: string): string {
  if (behind.trim() !== '') return '\n\n';
  if (line + 1 >= document.lineCount) return '\n';
  return document.line(line + 1).text.trim() === '' ? '' : '\n';
}

/** Blank lines about the tab are the clipboard's, not the player's. */
function trimmed(body: string): string {
  return body.replace(/^(?:[ \t]*\n)+/, '').trimEnd();
}

function notesIn({ text }: ImportAnswer, settings: Settings): number {
  return open(text, settings).systems.reduce((sum, { reading }) => sum + reading.notes.length, 0);
}
