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
  /** What rows have in the columns of the bar's closing sign where a mark of theirs lies across it, by key. */
  readonly across: ReadonlyMap<string, string>;
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

/** The name of the row whose runs cover notes. */
export const PALM_MUTE = 'palm mute';

/**
 * Takes a system apart at its bar signs.
 * @returns a sentence where a row has something behind the last bar, which no bar would take along
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
    const across = new Map<string, string>();
    const next = reading.bars[index + 1]?.startColumn;
    for (const { line, key } of aligned) {
      if (line.kind === 'row' && next === undefined) {
        const behind = line.marks.find((mark) => mark.column + mark.width > endColumn + bar.closeSign.length);
        if (behind)
          return `“${behind.text}” reaches behind the last bar, so the bars cannot be moved: put it over one bar first.`;
      } else if (line.kind === 'row' && next !== undefined && acrossSign(line, endColumn)) {
        across.set(key, cellOf(line, endColumn, next));
      }
      cells.set(key, cellOf(line, startColumn, endColumn));
    }
    const open = openingOf(bar.openSign);
    const close = closingOf(bar.closeSign);
    bars.push({ open, close, width: endColumn - startColumn, cells, across, from: { system, bar: index } });
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
      const sign = signBetween(before, bar);
      const drawn = before && follows(before, bar) ? before.across.get(key) : undefined;
      text += drawn?.padEnd(sign.length) ?? signOf(kind, ruled || before === undefined, sign);
      text += bar.cells.get(key) ?? fill.repeat(bar.width);
      before = bar;
    }
    if (before) text += signOf(kind, ruled, signBetween(before, undefined));
    const whole = text + tail;
    return kind === 'row' ? whole.trimEnd() : whole;
  });
  return [...printed, ...comments];
}

/** Whether a bar stands behind the one that it always stood behind. */
function follows(before: Bar, bar: Bar): boolean {
  return before.from?.system === bar.from?.system && before.from?.bar === (bar.from?.bar ?? 0) - 1;
}

/**
 * What rows say across a bar sign at which bars were taken apart, as a sentence. Runs of palm mute may be cut: each piece
 * goes on covering its notes.
 */
export function tornMark({ bars }: BarList): string | undefined {
  for (const [i, bar] of bars.entries()) {
    const next = bars[i + 1];
    if (next && follows(bar, next)) continue;
    const torn = [...bar.across.keys()].find((key) => !key.startsWith(PALM_MUTE));
    if (torn !== undefined)
      return `Something in the row “${torn}” lies across a bar sign, so the bars cannot be taken apart there: move it into one bar.`;
  }
  return undefined;
}

/** An empty bar as wide as another one, and counted like it. */
export function emptyBar(like: Bar): Bar {
  const count = like.cells.get('count');
  return {
    open: '|',
    close: '|',
    width: like.width,
    cells: new Map(count === undefined ? [] : [['count', count]]),
    across: new Map<string, string>(),
    from: undefined,
  };
}

/** Rows take a plain sign and keep the columns. */
function signOf(kind: 'string' | 'row', ruled: boolean, sign: string): string {
  if (kind === 'string') return sign;
  return (ruled ? '|' : ' ').padEnd(sign.length);
}

/** The one sign that stands for the end of a bar and the beginning of the next. */
export function signBetween(before: Bar | undefined, after: Bar | undefined): string {
  if (!before) return after?.open ?? '|';
  const { close } = before;
  const open = after?.open ?? '|';
  if (close.startsWith(':') && open.endsWith(':')) return ':|:';
  if (open.endsWith(':')) return open;
  return close;
}

function openingOf(sign: string): string {
  return sign.endsWith(':') ? (sign.startsWith('||') ? '||:' : '|:') : sign === '||' ? sign : '|';
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

/** Whether a mark begins before a bar's end and goes on behind it. */
function acrossSign({ marks }: RowLine, column: number): boolean {
  return marks.some((mark) => mark.column < column && mark.column + mark.width > column);
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
