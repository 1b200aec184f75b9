import { columnsFrom, widthOfText } from '../../notation/columns';
import type { ParsedLine, RowLine, StringLine } from '../../notation/parsedLine';
import type { System } from '../../notation/tabDocument';
import { offsetOf } from '../typing/stringCell';

/** One string line or row of a system, without its bars. */
export interface BarListLine {
  readonly kind: 'string' | 'row';
  /** The string's number, or the row's word; a second row of a word has `#2` behind it. */
  readonly key: string;
  /** What stands before the first `|`. */
  readonly head: string;
  /** What stands behind the last bar sign. */
  readonly tail: string;
  /** Whether a row has the bar signs after its first. */
  readonly ruled: boolean;
}

/** One bar of a system as text. */
export interface Bar {
  /** Signs at its two ends: `|`, `|:`, `:|` … */
  readonly open: string;
  readonly close: string;
  readonly width: number;
  /** The columns of each line, by key; all as wide as the bar. */
  readonly cells: ReadonlyMap<string, string>;
  /** Where it came from; undefined for an empty one. */
  readonly from: { readonly system: System; readonly bar: number } | undefined;
}

/** A system taken apart at its bar signs, so that bars can be moved as blocks. */
export interface BarList {
  readonly lines: readonly BarListLine[];
  readonly comments: readonly string[];
  readonly bars: readonly Bar[];
}

type Aligned = StringLine | RowLine;

/**
 * Takes a system apart at its bar signs.
 * @returns a sentence where a word of a row lies across a bar sign, so that no cut leaves it whole
 */
export function barListOf(system: System): BarList | string {
  const { reading } = system;
  const aligned: { line: Aligned; key: string }[] = [];
  const words = new Map<string, number>();
  for (const [at, line] of system.lines.entries()) {
    const key = keyOf(system, line, at, words);
    if (key !== undefined && (line.kind === 'string' || line.kind === 'row')) aligned.push({ line, key });
  }
  const bars: Bar[] = [];
  for (const [index, bar] of reading.bars.entries()) {
    const { startColumn, endColumn } = bar;
    const cells = new Map<string, string>();
    for (const { line, key } of aligned) {
      const torn = line.kind === 'row' ? acrossSign(line, endColumn) : undefined;
      if (torn !== undefined)
        return `“${torn}” lies across a bar sign, so the bars cannot be taken apart there: move it into one bar.`;
      cells.set(key, cellOf(line, startColumn, endColumn));
    }
    const open = openingOf(bar.openSign);
    const close = closingOf(bar.closeSign);
    bars.push({ open, close, width: endColumn - startColumn, cells, from: { system, bar: index } });
  }
  return {
    lines: aligned.map(({ line, key }) => ({
      kind: line.kind,
      key,
      head: line.text.slice(0, line.bodyStart),
      tail: line.kind === 'string' ? line.text.slice(line.bodyEnd) : '',
      ruled: line.kind === 'string' || line.bars.length > 1,
    })),
    comments: system.lines.flatMap((line) => (line.kind === 'comment' ? [line.text] : [])),
    bars,
  };
}

/** The text lines of bars in a row, comments last. */
export function printBars({ lines, comments, bars }: BarList): string[] {
  const printed = lines.map(({ kind, key, head, tail, ruled }) => {
    const fill = kind === 'string' ? '-' : ' ';
    let text = head;
    let before: Bar | undefined;
    for (const bar of bars) {
      text += signOf(kind, ruled || before === undefined, signBetween(before, bar));
      text += bar.cells.get(key) ?? fill.repeat(bar.width);
      before = bar;
    }
    if (before) text += signOf(kind, ruled, signBetween(before, undefined));
    const whole = text + tail;
    return kind === 'row' ? whole.trimEnd() : whole;
  });
  return [...printed, ...comments];
}

/** An empty bar as wide as another one. */
export function emptyBar(like: Bar): Bar {
  return { open: '|', close: '|', width: like.width, cells: new Map<string, string>(), from: undefined };
}

/** Rows take a plain sign and keep the columns. */
function signOf(kind: 'string' | 'row', ruled: boolean, sign: string): string {
  if (kind === 'string') return sign;
  return (ruled ? '|' : ' ').padEnd(sign.length);
}

/** The one sign that stands for the end of a bar and the beginning of the next. */
export function signBetween(before: Bar | undefined, after: Bar | undefined): string {
  const close = before?.close ?? '|';
  const open = after?.open ?? '|';
  if (close.startsWith(':') && open.endsWith(':')) return ':|:';
  if (open.endsWith(':')) return open;
  return close;
}

function openingOf(sign: string): string {
  return sign.endsWith(':') ? (sign.startsWith('||') ? '||:' : '|:') : '|';
}

function closingOf(sign: string): string {
  if (sign.startsWith(':')) return sign.endsWith('||') ? ':||' : ':|';
  return sign === '||' ? '||' : '|';
}

function keyOf(
  { reading }: System,
  line: ParsedLine,
  at: number,
  words: Map<string, number>,
): string | undefined {
  if (line.kind === 'string') {
    const number = reading.strings.find((string) => string.line === at)?.number;
    return number === undefined ? undefined : String(number);
  }
  if (line.kind !== 'row') return undefined;
  const word = line.row === 'text' ? line.word.toLowerCase() : line.row;
  const count = (words.get(word) ?? 0) + 1;
  words.set(word, count);
  return count === 1 ? word : `${word}#${count}`;
}

/** The mark that begins before a bar's end and goes on behind it. */
function acrossSign({ marks }: RowLine, column: number): string | undefined {
  return marks.find((mark) => mark.column < column && mark.column + mark.width > column)?.text;
}

function cellOf(line: Aligned, from: number, to: number): string {
  const fill = line.kind === 'string' ? '-' : ' ';
  const end = line.kind === 'string' ? line.bodyEnd : line.text.length;
  const start = Math.min(offsetOf(line, from), end);
  const stop = Math.min(offsetOf(line, to), end);
  const cell = line.text.slice(start, Math.max(start, stop));
  const width = columnsFrom(line.text, line.bodyStart)(stop) - columnsFrom(line.text, line.bodyStart)(start);
  return cell + fill.repeat(Math.max(0, to - from - Math.max(width, widthOfText(cell))));
}
