import type { FieldLine, RowLine, SectionLine, StringLine } from '../../notation/parsedLine';
import type { System, TabDocument } from '../../notation/tabDocument';
import { columnAt, lineRange, noteAt, rangeIn } from '../locate';
import type { Hover, Place, Range, Settings } from '../records';
import { columnHover, momentAt } from './column';
import { fieldHover, fieldNameHover } from './field';
import { fretHover } from './fret';
import { labelHover } from './label';
import { chordMarkHover, countHover, handMarkLine, rowWordHover } from './row';
import { paragraphs, quoted } from './text';

/** Longer ones are cut by the editor (microsoft/vscode pull request 213086). */
const LONGEST = 100_000;

/** What stands under a character, in words that read as plain text too; undefined where there is nothing to say. */
export function hover(document: TabDocument, place: Place, _settings: Settings): Hover | undefined {
  const { line, character } = place;
  // At the end of a line there is a cursor, but no character: it asks about the last one.
  const told = tell(document, { line, character: Math.min(character, document.line(line).text.length - 1) });
  if (!told || told.markdown === '') return undefined;
  return { ...told, markdown: told.markdown.slice(0, LONGEST) };
}

function tell(document: TabDocument, place: Place): Hover | undefined {
  const line = document.line(place.line);
  if (line.kind === 'field') return tellField(document, place, line);
  if (line.kind === 'section') return tellSection(place, line);
  if (line.kind !== 'string' && line.kind !== 'row') return undefined;
  const system = document.systemAt(place.line);
  if (!system) return undefined;
  return line.kind === 'string'
    ? tellString(document, system, place, line)
    : tellRow(document, system, place, line);
}

function tellField(document: TabDocument, place: Place, line: FieldLine): Hover | undefined {
  const name = { start: line.nameStart, end: line.nameEnd };
  const value = { start: line.valueStart, end: line.valueStart + line.value.length };
  if (holds(name, place)) return { markdown: fieldNameHover(line), range: spanRange(place, name) };
  if (!holds(value, place)) return undefined;
  return { markdown: fieldHover(document, place.line, line), range: spanRange(place, value) };
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
    return { markdown: fretHover(document, system, found.note), range: rangeIn(system, found.note) };
  }
  return tellColumn(document, system, place);
}

function tellRow(document: TabDocument, system: System, place: Place, line: RowLine): Hover | undefined {
  const word = { start: line.wordStart, end: line.wordEnd };
  if (place.character < line.bodyStart) {
    return holds(word, place) ? { markdown: rowWordHover(line), range: spanRange(place, word) } : undefined;
  }
  const row = system.reading.rows.find((reading) => reading.line === place.line - system.firstLine);
  const mark = row?.marks.find((candidate) => holds(candidate, place));
  if (!row || !mark) return tellColumn(document, system, place);
  const range = spanRange(place, mark);
  if (row.row === 'chords') return { markdown: chordMarkHover(document, system, row, mark), range };
  if (row.row === 'count') {
    const { markdown, ...span } = countHover(document, system, mark, columnAt(system, place) ?? mark.column);
    return { markdown, range: spanRange(place, span) };
  }
  const column = columnHover(document, system, momentAt(system, mark.column));
  return { markdown: paragraphs(handMarkLine(row, mark), column), range };
}

function tellColumn(document: TabDocument, system: System, place: Place): Hover | undefined {
  const column = columnAt(system, place);
  if (column === undefined) return undefined;
  return {
    markdown: columnHover(document, system, momentAt(system, column)),
    range: lineRange(place.line, place.character, place.character + 1),
  };
}

function holds(span: { readonly start: number; readonly end: number }, { character }: Place): boolean {
  return span.start <= character && character < span.end;
}

function spanRange({ line }: Place, { start, end }: { readonly start: number; readonly end: number }): Range {
  return lineRange(line, start, end);
}
