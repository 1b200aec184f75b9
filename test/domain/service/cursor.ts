import type { Place } from '../../../src/service/records';
import { createLanguageService } from '../../../src/service/languageService';
import type { EditableDocument } from '../../../src/service/serviceApi';
import type { Settings } from '../../../src/service/records';
import { DEFAULT_SETTINGS } from '../../../src/service/settings';

export const service = createLanguageService();
export const settings = DEFAULT_SETTINGS;

const MARK = '<|>';

/** A text without the mark of the cursor, and where it stood. Throws unless there is exactly one. */
export function atCursor(marked: string): { readonly text: string; readonly place: Place } {
  const [before, after, ...more] = marked.split(MARK);
  if (before === undefined || after === undefined || more.length > 0)
    throw new Error(`One ${MARK} is expected in the text, ${marked.split(MARK).length - 1} stand in it.`);
  const lines = before.split('\n');
  return {
    text: before + after,
    place: { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 },
  };
}

/** A document with the cursor somewhere in it. */
export function openAt(
  marked: string,
  own: Settings = settings,
): { readonly document: EditableDocument; readonly place: Place } {
  const { text, place } = atCursor(marked);
  return { document: service.open(text, own), place };
}

/** The lines of a hover as plain text: without bold, and each line by itself. Throws where nothing is told. */
export function hoverLines(marked: string): readonly string[] {
  const { document, place } = openAt(marked);
  const hover = service.hover(document, place, settings);
  if (!hover) throw new Error(`Nothing is told at the mark of:\n${marked}`);
  return hover.markdown
    .split('\n')
    .map((line) => line.trimEnd().replaceAll('**', ''))
    .filter((line) => line !== '');
}

/** A grip as a system of one column, `x` for a string left out; the highest string number first, as players write grips. */
function gripSystem(header: string, grip: string, rows: readonly string[]): string {
  const lines = [...grip].map((fret, i) => `${grip.length - i} |${fret === 'x' ? '-' : fret}---|`);
  return `${header}\n\n${[...rows, ...lines.reverse()].join('\n')}\n`;
}

/** The sounding notes of a grip, the highest string number first. */
export function gripNotes(header: string, grip: string): readonly string[] {
  return service.notes(service.open(gripSystem(header, grip, []), settings)).map(({ name }) => name);
}

/** What the hover of its column calls a grip, and the line below it. */
export function gripChord(header: string, grip: string): string {
  const told = hoverLines(gripSystem(header, grip, ['mark |<|>.']));
  return told.find((line, i) => i > 0 && !line.startsWith('- ')) ?? '';
}
