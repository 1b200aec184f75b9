import { columnsFrom, widthOfText } from '../../notation/columns';
import { parseLine } from '../../notation/parseLine';
import { asciiSigns } from '../../notation/lineParts';
import type { System, TabDocument, TextEdit } from '../../notation/tabDocument';
import { readSystem } from '../../notation/systemReading';
import { lastFirst, replace } from './edits';

/** A line of prose above a system that reads as a row without its word. */
export interface LooseRow {
  readonly row: 'count' | 'chords';
  readonly system: System;
  /** What makes it a row, and those between it and the system with it. */
  readonly edits: readonly TextEdit[];
}

/**
 * The row that a line of prose is when the row's word is put before it: it stands right above a system, or above other
 * such lines that do, and its marks stay over the columns over which they stand.
 * @returns undefined for other prose, and where the marks would not be read over these columns without a mistake
 */
export function looseRowAt(document: TabDocument, at: number): LooseRow | undefined {
  const own = looseKind(document, at);
  if (own === undefined) return undefined;
  let below = at;
  while (looseKind(document, below) !== undefined) below += 1;
  const system = below < document.lineCount ? document.systemAt(below) : undefined;
  if (system?.firstLine !== below) return undefined;
  const body = system.lines.find((line) => line.kind === 'string');
  if (body?.kind !== 'string') return undefined;
  const rows = Array.from({ length: below - at }, (_, i) => looseKind(document, at + i) ?? own);
  // A system has one count; a second line that counts is no row.
  const counts = [...rows, ...rowsOf(system)].filter((row) => row === 'count');
  if (own === 'count' && counts.length > 1) return undefined;
  const barAt = widthOfText(body.text.slice(0, body.bodyStart));
  const room = Math.max(barAt, ...rows.map((row) => row.length + 1));
  const more = room - barAt;
  const texts = rows.map((row, i) => rowText(row, document.line(at + i).text, barAt, room));
  const moved = system.lines.map((line) =>
    line.kind === 'string' || line.kind === 'row'
      ? line.text.slice(0, line.bodyStart) + ' '.repeat(more) + line.text.slice(line.bodyStart)
      : line.text,
  );
  const reading = readSystem([...texts, ...moved].map(parseLine), system.header, system);
  if (reading.problems.some(({ kind, line }) => line < texts.length && kind.startsWith('count')))
    return undefined;
  const edits = texts.map((text, i) => replace(at + i, 0, document.line(at + i).text.length, text));
  const pads = system.lines.flatMap((line, i) =>
    more > 0 && (line.kind === 'string' || line.kind === 'row')
      ? [replace(system.firstLine + i, line.bodyStart, line.bodyStart, ' '.repeat(more))]
      : [],
  );
  return { row: own, system, edits: lastFirst([...edits, ...pads]) };
}

function looseKind(document: TabDocument, at: number): 'count' | 'chords' | undefined {
  if (at >= document.lineCount) return undefined;
  const line = document.line(at);
  return line.kind === 'prose' && line.nearMiss?.kind === 'row' ? line.nearMiss.row : undefined;
}

function rowsOf({ lines }: System): string[] {
  return lines.flatMap((line) => (line.kind === 'row' ? [line.row] : []));
}

/** The line as a row: what stands over a column stays over it; what stands over labels goes to the first column. */
function rowText(row: string, text: string, barAt: number, room: number): string {
  const columnAt = columnsFrom(text, 0);
  let body = '|';
  for (const { 0: written, index } of text.matchAll(/[|│┃¦:]+|[^\s\u00a0|│┃¦]+/g)) {
    const column = columnAt(index) - barAt;
    const mark = asciiSigns(written);
    // A bar line over the first one of the strings is that one.
    if (column <= 0 && mark === '|') continue;
    const touches = text[index - 1] !== undefined && !/[\s\u00a0]/.test(text[index - 1] ?? '');
    const least = widthOfText(body) + (body.length > 1 && !touches ? 1 : 0);
    body += ' '.repeat(Math.max(0, Math.max(column, least) - widthOfText(body))) + mark;
  }
  return row.padEnd(room) + body;
}
