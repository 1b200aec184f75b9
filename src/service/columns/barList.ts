import { columnsFrom, widthOfText } from '../../notation/columns';
import type { ParsedLine, RowLine, StringLine } from '../../notation/parsedLine';
import type { System } from '../../notation/tabDocument';
import { offsetOf } from '../typing/stringCell';
import { closingOf, follows, openingOf, signBetween, signOf } from './barSigns';

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
  /** What rows have in the columns of the bar's opening sign where a mark begins over it, by key. */
  readonly over: ReadonlyMap<string, string>;
  /** Where it came from; undefined for an empty one. */
  readonly from: { readonly system: System; readonly bar: number } | undefined;
}

/** A comment line of a system. */
export interface BarListComment {
  readonly text: string;
  /** The key of the line under it; undefined below the last one. */
  readonly above: string | undefined;
}

/** A system taken apart at its bar signs, so that bars can be moved as blocks. */
export interface BarList {
  readonly lines: readonly BarListLine[];
  readonly comments: readonly BarListComment[];
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
  const keys = keysOf(system);
  const aligned = system.lines.flatMap((line, at) => {
    const key = keys[at];
    return key !== undefined && (line.kind === 'string' || line.kind === 'row') ? [{ line, key }] : [];
  });
  const bars: Bar[] = [];
  for (const [index, bar] of reading.bars.entries()) {
    const { startColumn, endColumn } = bar;
    const cells = new Map<string, string>();
    const across = new Map<string, string>();
    const over = new Map<string, string>();
    const next = reading.bars[index + 1]?.startColumn;
    const sign = reading.bars[index - 1]?.endColumn ?? 0;
    for (const { line, key } of aligned) {
      if (line.kind === 'row' && next === undefined) {
        const behind = line.marks.find((mark) => mark.column + mark.width > endColumn + bar.closeSign.length);
        if (behind)
          return `“${behind.text}” reaches behind the last bar, so the bars cannot be moved: put it over one bar first.`;
      } else if (line.kind === 'row' && next !== undefined && acrossSign(line, endColumn)) {
        across.set(key, cellOf(line, endColumn, next));
      }
      if (line.kind === 'row' && beginsWithin(line, sign, startColumn))
        over.set(key, cellOf(line, sign, startColumn));
      cells.set(key, cellOf(line, startColumn, endColumn));
    }
    const open = openingOf(bar.openSign);
    const close = closingOf(bar.closeSign);
    const width = endColumn - startColumn;
    bars.push({ open, close, width, cells, across, over, from: { system, bar: index } });
  }
  return {
    lines: aligned.map(({ line, key }) => ({
      kind: line.kind,
      key,
      head: line.text.slice(0, line.bodyStart),
      tail: line.kind === 'string' ? line.text.slice(line.bodyEnd) : '',
      ruled: line.kind === 'string' || line.bars.length > 1,
    })),
    comments: system.lines.flatMap((line, at) =>
      line.kind === 'comment'
        ? [{ text: line.text, above: keys.slice(at).find((key) => key !== undefined) }]
        : [],
    ),
    bars,
  };
}

/** The text lines of bars in a row, each comment above the line that it stood above. */
export function printBars({ lines, comments, bars }: BarList): string[] {
  const over = (line: string | undefined): string[] =>
    comments.flatMap(({ text, above }) => (above === line ? [text] : []));
  const printed = lines.flatMap(({ kind, key, head, tail, ruled }) => {
    const fill = kind === 'string' ? '-' : ' ';
    let text = head;
    let before: Bar | undefined;
    for (const bar of bars) {
      const sign = signBetween(before, bar);
      const drawn =
        (before && follows(before, bar) ? before.across.get(key) : undefined) ?? bar.over.get(key);
      text += drawn?.padEnd(sign.length) ?? signOf(kind, ruled || before === undefined, sign);
      text += bar.cells.get(key) ?? fill.repeat(bar.width);
      before = bar;
    }
    if (before) text += signOf(kind, ruled, signBetween(before, undefined));
    const whole = text + tail;
    return [...over(key), kind === 'row' ? whole.trimEnd() : whole];
  });
  return [...printed, ...over(undefined)];
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
    over: new Map<string, string>(),
    from: undefined,
  };
}

/** The key of each line of a system; undefined for comments and other lines without bars. */
export function keysOf(system: System): (string | undefined)[] {
  const words = new Map<string, number>();
  return system.lines.map((line, at) => keyOf(system, line, at, words));
}

/**
 * Bars of one list dealt out to systems: a comment above a line stays with that line in the first, what stands behind and
 * below the lines goes with the last.
 */
export function dealt({ lines, comments }: BarList, systems: readonly (readonly Bar[])[]): BarList[] {
  const bare = lines.map((line) => ({ ...line, tail: '' }));
  const last = systems.length - 1;
  return systems.map((bars, i) => ({
    lines: i === last ? lines : bare,
    comments: comments.filter(({ above }) => (above === undefined ? i === last : i === 0)),
    bars,
  }));
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

/** Whether a mark begins in some columns. */
function beginsWithin({ marks }: RowLine, from: number, to: number): boolean {
  return marks.some(({ column }) => column >= from && column < to);
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
