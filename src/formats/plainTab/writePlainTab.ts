import { formatPitchName } from '../../music/noteName';
import { nameOfTuning, formatTuningNotes, sameTuning } from '../../instrument/tuningFormat';
import { readTuning } from '../../instrument/tuningValue';
import { formatCapo } from '../../instrument/capo';
import type { Header } from '../../notation/header';
import { usualLabel } from '../../notation/labels';
import type { ParsedLine, RowLine, StringLine } from '../../notation/parsedLine';
import { plainRow } from './rowsBeside';
import type { Range, System, TabDocument } from '../../notation/tabDocument';

/** A tab as text for readers who have never heard of the notation. */
export interface PlainText {
  readonly text: string;
  readonly systems: number;
}

/**
 * Writes a document, or the systems that a range touches and the lines between, as plain tab: instrument, tuning (notes
 * low to high) and capo on top and wherever they change, labels before every string, rows over their columns without a
 * frame. Frets and signs stay in their columns. Lines of fields other than those, headings and prose stay as they are.
 * @param range left out for the whole document
 * @example writePlainTab(open('tuning: DADGAD\n…'), undefined).text // 'Tuning, low to high: D A D G A D (DADGAD)\n…'
 */
export function writePlainTab(document: TabDocument, range: Range | undefined): PlainText {
  const systems = document.systems.filter((system) => touches(system, range));
  const first = range ? Math.min(range.start.line, systems[0]?.firstLine ?? Infinity) : 0;
  const last = systems.at(-1);
  const end = range
    ? Math.max(lastLine(range) + 1, last ? last.firstLine + last.lines.length : 0)
    : document.lineCount;
  const out: string[] = [];
  let stated: Header | undefined;
  let title = 0;
  for (let at = first; at < end; at++) {
    const system = document.systemAt(at);
    if (system) {
      if (!stated || setting(stated, undefined).join() !== setting(system.header, undefined).join()) {
        const lines = setting(system.header, stated);
        // On top of everything, but under the title.
        if (stated) out.push(...lines, '');
        else out.splice(title, 0, ...lines, ...(out[title]?.trim() === '' ? [] : ['']));
        stated = system.header;
      }
      out.push(...systemText(system));
      at = system.firstLine + system.lines.length - 1;
      continue;
    }
    const text = plainLine(document.line(at));
    if (text === undefined) continue;
    out.push(text);
    if (document.line(at).kind === 'field') title = out.length;
  }
  const text = out
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
  return { text: text === '' ? '' : `${text}\n`, systems: systems.length };
}

function touches({ firstLine, lines }: System, range: Range | undefined): boolean {
  return !range || (firstLine <= lastLine(range) && firstLine + lines.length > range.start.line);
}

/** A range that ends before the first character of a line does not hold that line. */
function lastLine({ start, end }: Range): number {
  return end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
}

/** A line outside all systems; undefined for those that the lines on top say. */
function plainLine(line: ParsedLine): string | undefined {
  if (line.kind !== 'field') return line.text;
  switch (line.field) {
    case 'instrument':
    case 'tuning':
    case 'capo':
      return undefined;
    case 'title':
      return line.value;
    case 'by':
      return `by ${line.value}`;
    case 'part':
      return `${line.value}:`;
    default:
      return line.text;
  }
}

/** `Tuning, low to high: D A D G A D (DADGAD)` and what else a reader has to know before the first note. */
function setting({ instrument, tuning, capo }: Header, before: Header | undefined): string[] {
  const lines: string[] = [];
  if (instrument.name !== (before?.instrument.name ?? 'guitar')) lines.push(`Instrument: ${instrument.name}`);
  const bare = tuning.strings
    .map(({ pitches }) => pitches.map(({ name }) => formatPitchName(name)).join('/'))
    .join(' ');
  const read = readTuning(bare, { instrument });
  // Octaves only where the notes alone would be taken for others.
  const notes = read.ok && sameTuning(read.value, tuning) ? bare : formatTuningNotes(tuning);
  const name = nameOfTuning(tuning, instrument);
  lines.push(`Tuning, low to high: ${notes}${name === undefined ? '' : ` (${name})`}`);
  if (capo) lines.push(capo.strings ? `Capo: ${formatCapo(capo)}` : `Capo: fret ${capo.fret}`);
  else if (before?.capo) lines.push('Capo: none');
  return lines;
}

function systemText(system: System): string[] {
  const { header, lines, reading } = system;
  const labels = new Map(reading.strings.map(({ line, index }) => [line, index]));
  const labelOf = (at: number, line: StringLine): string => {
    const index = labels.get(at) ?? -1;
    if (index < 0) return line.label.text;
    const label = usualLabel(header.tuning, index);
    // The usual way to tell the two E strings of a guitar apart; common practice, no source.
    const top = index === header.tuning.strings.length - 1 && index > 0;
    return top && label === usualLabel(header.tuning, 0) ? label.toLowerCase() : label;
  };
  const strings = lines.flatMap((line, at) =>
    line.kind === 'string' ? [{ line, at, label: labelOf(at, line) }] : [],
  );
  const lastString = strings.at(-1)?.at ?? 0;
  const rows = lines.flatMap((line, at) => {
    if (line.kind !== 'row' || line.marks.length === 0) return [];
    const bare = rowText(line);
    // A row between strings would part them.
    const side = at > lastString ? ('under' as const) : ('over' as const);
    const plain = plainRow(bare, side, () => true)?.row === line.row;
    return [
      {
        bare,
        side,
        known: line.row !== 'text',
        word: plain ? '' : `${line.row === 'text' ? line.word : line.row}  `,
      },
    ];
  });
  const width = Math.max(
    ...strings.map(({ label }) => label.length),
    ...rows.map(({ word }) => word.length),
    0,
  );
  const written = (side: 'over' | 'under', known: boolean): string[] =>
    rows
      .filter((row) => row.side === side && row.known === known)
      .map(({ word, bare }) => (word.padEnd(width) + bare).trimEnd());
  // A note to oneself goes above the staff, and so do rows that nobody else can know.
  const aside = lines.filter(({ kind }) => kind === 'comment').map((line) => line.text);
  return [
    ...aside,
    ...written('over', false),
    ...written('over', true),
    ...strings.map(({ line, label }) => label.padEnd(width) + stringText(line)),
    ...written('under', true),
    ...written('under', false),
  ];
}

function stringText({ text, tokens, bodyEnd }: StringLine): string {
  return tokens.map((token) => token.text).join('') + text.slice(bodyEnd);
}

/** What stands in a row, over its columns; the bar lines are those of the strings. */
function rowText({ text, bodyStart, bars }: RowLine): string {
  let bare = text.slice(bodyStart);
  for (const bar of bars) {
    const at = bar.start - bodyStart;
    bare = bare.slice(0, at) + ' '.repeat(bar.text.length) + bare.slice(at + bar.text.length);
  }
  return bare;
}
