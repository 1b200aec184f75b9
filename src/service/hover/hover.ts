import type { FieldLine, RowLine, SectionLine, StringLine } from '../../notation/parsedLine';
import type { System, TabDocument } from '../../notation/tabDocument';
import type { Fraction } from '../../music/fraction';
import { columnAt, lineRange, noteAt, rangeIn } from '../locate';
import type { Hover, Place, Range, Settings } from '../records';
import { columnHover, momentAt } from './column';
import { fieldHover, fieldNameHover } from './field';
import { fretHover } from './fret';
import { labelHover } from './label';
import { chordMarkHover, countHover, handMarkLine, rowWordHover } from './row';
import { gripHover } from './grip';
import { paragraphs, quoted } from './text';

/** Longer ones are cut by the editor (microsoft/vscode pull request 213086). */
const LONGEST = 100_000;

/** What stands under a character, in words that read as plain text too; undefined where there is nothing to say. */
export function hover(document: TabDocument, place: Place, settings: Settings): Hover | undefined {
  const { line, character } = place;
  // At the end of a line there is a cursor, but no character: it asks about the last one.
  const last = document.line(line).text.length - 1;
  const told = tell(document, { line, character: Math.min(character, last) }, settings);
  if (!told || told.markdown === '') return undefined;
  return { ...told, markdown: told.markdown.slice(0, LONGEST) };
}

function tell(document: TabDocument, place: Place, settings: Settings): Hover | undefined {
  const line = document.line(place.line);
  if (line.kind === 'field') return tellField(document, place, line, settings);
  if (line.kind === 'section') return tellSection(place, line);
  if (line.kind !== 'string' && line.kind !== 'row') return undefined;
  const system = document.systemAt(place.line);
  if (!system) return undefined;
  return line.kind === 'string'
    ? tellString(document, system, place, line, settings)
    : tellRow(document, system, place, line, settings);
}

function tellField(
  document: TabDocument,
  place: Place,
  line: FieldLine,
  settings: Settings,
): Hover | undefined {
  const name = { start: line.nameStart, end: line.nameEnd };
  const value = { start: line.valueStart, end: line.valueStart + line.value.length };
  if (holds(name, place)) return { markdown: fieldNameHover(line), range: spanRange(place, name) };
  if (!holds(value, place)) return undefined;
  return { markdown: fieldHover(document, place.line, line, settings), range: spanRange(place, value) };
}

function tellSection(place: Place, line: SectionLine): Hover {
  const times = line.times === undefined ? '' : `, played ${line.times} times in all`;
  return {
    markdown: `**${quoted(line.name)}**: a heading for all parts below it${times}`,
    range: lineRange(place.line, 0, line.text.length),
  };
}

function tellString(
  document: TabDocument,
  system: System,
  place: Place,
  line: StringLine,
  settings: Settings,
): Hover | undefined {
  if (place.character < line.bodyStart) {
    if (!holds(line.label, place)) return undefined;
    return {
      markdown: labelHover(system, place.line - system.firstLine),
      range: spanRange(place, line.label),
    };
  }
  const found = noteAt(document, place);
  if (found) {
    const { onset } = found.note;
    const told = { markdown: fretHover(document, system, found.note), range: rangeIn(system, found.note) };
    return withGrip(told, document, system, onset, settings);
  }
  return tellColumn(document, system, place, settings);
}

function tellRow(
  document: TabDocument,
  system: System,
  place: Place,
  line: RowLine,
  settings: Settings,
): Hover | undefined {
  const word = { start: line.wordStart, end: line.wordEnd };
  if (place.character < line.bodyStart) {
    return holds(word, place) ? { markdown: rowWordHover(line), range: spanRange(place, word) } : undefined;
  }
  const row = system.reading.rows.find((reading) => reading.line === place.line - system.firstLine);
  const mark = row?.marks.find((candidate) => holds(candidate, place));
  if (!row || !mark) return tellColumn(document, system, place, settings);
  const range = spanRange(place, mark);
  if (row.row === 'chords') return { markdown: chordMarkHover(document, system, row, mark), range };
  if (row.row === 'count') {
    const { markdown, ...span } = countHover(document, system, mark, columnAt(system, place) ?? mark.column);
    return { markdown, range: spanRange(place, span) };
  }
  const time = momentAt(system, mark.column);
  const markdown = paragraphs(handMarkLine(row, mark), columnHover(document, system, time));
  return withGrip({ markdown, range }, document, system, time, settings);
}

function tellColumn(
  document: TabDocument,
  system: System,
  place: Place,
  settings: Settings,
): Hover | undefined {
  const column = columnAt(system, place);
  if (column === undefined) return undefined;
  const time = momentAt(system, column);
  const told = {
    markdown: columnHover(document, system, time),
    range: lineRange(place.line, place.character, place.character + 1),
  };
  return withGrip(told, document, system, time, settings);
}

/** How the hand holds it, behind all else: the picture first, since a hover shows some ten lines at once. */
function withGrip(
  told: Hover,
  document: TabDocument,
  system: System,
  time: Fraction,
  settings: Settings,
): Hover {
  const grip = gripHover(document, system, time, settings);
  if (!grip) return told;
  const picture = { ...grip.picture, at: told.markdown.length };
  return { ...told, markdown: paragraphs(told.markdown, grip.markdown), picture };
}

function holds(span: { readonly start: number; readonly end: number }, { character }: Place): boolean {
  return span.start <= character && character < span.end;
}

function spanRange({ line }: Place, { start, end }: { readonly start: number; readonly end: number }): Range {
  return lineRange(line, start, end);
}
