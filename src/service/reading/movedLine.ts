import { widthOfText } from '../../notation/columns';
import type { RowLine, StringLine, Token } from '../../notation/parsedLine';
import { splitRun } from '../../notation/time/syllables';
import type { RenamedToken } from './namesOfNotes';
import type { NewColumn } from './widened';

/** A line whose columns were moved, and where its characters went. */
export interface MovedLine {
  readonly text: string;
  /** As in `LineStops`. */
  readonly stops: readonly number[];
}

/** A text that grows, and the places in it. */
class Growing {
  text = '';
  private readonly stops: number[] = [];

  constructor(prefix: string) {
    this.text = prefix;
  }

  /** The character at `from` of the old line stands where the new one ends now. */
  stop(from: number): void {
    const [last, to] = [this.stops.at(-2) ?? 0, this.stops.at(-1) ?? 0];
    if (from - last !== this.text.length - to) this.stops.push(from, this.text.length);
  }

  done(rest: string): MovedLine {
    return { text: this.text + rest, stops: this.stops };
  }
}

/**
 * A string line with names in place of frets, widened as its system is.
 * @param tokens its tokens, each with what stands in its place, where it is something else
 */
export function movedStringLine(line: StringLine, tokens: readonly RenamedToken[], to: NewColumn): MovedLine {
  const out = new Growing(line.text.slice(0, line.bodyStart));
  for (const { token, text } of tokens) {
    const { start, column, width, kind } = token;
    if (kind === 'dash') {
      for (let i = 0; i < width; i++) {
        out.stop(start + i);
        out.text += '-'.repeat(to(column + i + 1) - to(column + i));
      }
      continue;
    }
    const written = text ?? token.text;
    const fill = fillOf(token).repeat(Math.max(0, to(column + width) - to(column) - widthOfText(written)));
    if (kind === 'open') out.text += fill;
    out.stop(start);
    out.text += kind === 'open' ? written : written + fill;
  }
  out.stop(line.bodyEnd);
  return out.done(line.text.slice(line.bodyEnd));
}

/** What a sign that got more columns goes on with. */
function fillOf({ kind, text }: Token): string {
  return kind === 'slide' || kind === 'vibrato' ? text.charAt(0) : '-';
}

interface RowItem {
  readonly text: string;
  readonly start: number;
  readonly column: number;
  /** Where it ended, if it may end elsewhere now. */
  readonly end?: number;
}

/** A row with its marks and bar signs over the same columns as before. */
export function movedRow(row: RowLine, to: NewColumn): MovedLine {
  const marks = row.marks.flatMap(({ text, start, column, width }): RowItem[] => {
    if (row.row === 'count')
      return splitRun(text, column).map((part) => ({
        text: part.text,
        start: start + part.column - column,
        column: part.column,
      }));
    // What covers columns by its length goes on covering them.
    const covers = row.row === 'palm mute' && text.endsWith('-');
    const more = covers ? to(column + width) - to(column) - width : 0;
    return [{ text: text + '-'.repeat(more), start, column, end: start + text.length }];
  });
  const bars: RowItem[] = row.bars.map(({ text, start, column }) => ({ text, start, column }));
  const out = new Growing(row.text.slice(0, row.bodyStart));
  let at = 0;
  for (const item of [...bars, ...marks].sort((a, b) => a.column - b.column)) {
    const gap = Math.max(0, to(item.column) - at);
    out.text += ' '.repeat(gap);
    out.stop(item.start);
    out.text += item.text;
    if (item.end !== undefined) out.stop(item.end);
    at += gap + widthOfText(item.text);
  }
  return out.done('');
}
