import { parseLine } from './parseLine';
import type { ParsedLine } from './parsedLine';
import type { Place, TextEdit } from './tabDocument';

/** Which lines an edit replaced. */
export interface LineChange {
  readonly first: number;
  /** Lines gone. */
  readonly removed: readonly ParsedLine[];
  /** Lines that stand there now. */
  readonly inserted: readonly ParsedLine[];
}

const LINE_END = /\r\n|\r|\n/;
const LINE_ENDS = /\r\n|\r|\n/g;

/** The lines of a text with the line ends they came with; an edit costs the lines it touches. */
export class LineStore {
  private readonly parsed: ParsedLine[];
  /** The line end behind each line; the last one has none. */
  private readonly ends: string[];

  constructor(text: string) {
    this.parsed = text.split(LINE_END).map(parseLine);
    this.ends = [...(text.match(LINE_ENDS) ?? []), ''];
  }

  get count(): number {
    return this.parsed.length;
  }

  /** The line at an index; an index past the end gives a blank line. */
  line(index: number): ParsedLine {
    return this.parsed[index] ?? parseLine('');
  }

  get lines(): readonly ParsedLine[] {
    return this.parsed;
  }

  text(): string {
    let text = '';
    for (let i = 0; i < this.parsed.length; i++) text += (this.parsed[i]?.text ?? '') + (this.ends[i] ?? '');
    return text;
  }

  /** Replaces a stretch of text. Places outside the text mean its nearest place. */
  replace({ range, newText }: TextEdit): LineChange {
    const start = this.clamp(range.start);
    const end = this.clamp(range.end);
    const before = this.line(start.line).text.slice(0, start.character);
    const after = this.line(end.line).text.slice(end.character);
    const texts = (before + newText + after).split(LINE_END);
    const newEnds = newText.match(LINE_ENDS) ?? [];
    // A line end may also arise where the kept parts meet (a CR before, an LF after); those are rare and re-split.
    const inserted = texts.map(parseLine);
    const ends =
      texts.length === newEnds.length + 1 ? newEnds : ((before + newText + after).match(LINE_ENDS) ?? []);
    const removed = this.parsed.slice(start.line, end.line + 1);
    const lastEnd = this.ends[end.line] ?? '';
    spliceAll(this.parsed, start.line, removed.length, inserted);
    spliceAll(this.ends, start.line, removed.length, [...ends, lastEnd]);
    return { first: start.line, removed, inserted };
  }

  private clamp({ line, character }: Place): Place {
    if (line < 0) return { line: 0, character: 0 };
    const last = this.parsed.length - 1;
    if (line > last) return { line: last, character: this.line(last).text.length };
    return { line, character: Math.max(0, Math.min(character, this.line(line).text.length)) };
  }
}

/** `splice` for insertions of any size: as arguments of one call, a hundred thousand lines overflow the stack. */
function spliceAll<T>(array: T[], at: number, remove: number, insert: readonly T[]): void {
  if (insert.length === remove) {
    insert.forEach((item, i) => (array[at + i] = item));
    return;
  }
  if (insert.length < 10_000) {
    array.splice(at, remove, ...insert);
    return;
  }
  const tail = array.splice(at);
  for (const item of insert) array.push(item);
  for (let i = remove; i < tail.length; i++) {
    const item = tail[i];
    if (item !== undefined) array.push(item);
  }
}
