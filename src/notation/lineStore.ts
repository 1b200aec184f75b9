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

  /** Replaces a stretch of text. Places outside the text mean its nearest place; the earlier one begins the stretch. */
  replace({ range, newText }: TextEdit): LineChange {
    const [start, end] = inOrder(this.clamp(range.start), this.clamp(range.end));
    let first = start.line;
    const lastEnd = this.ends[end.line] ?? '';
    let written =
      this.line(first).text.slice(0, start.character) +
      newText +
      this.line(end.line).text.slice(end.character) +
      lastEnd;
    // A LF that comes to stand right behind a CR makes one line end with it.
    if (first > 0 && this.ends[first - 1] === '\r' && written.startsWith('\n')) {
      first -= 1;
      written = `${this.line(first).text}\r${written}`;
    }
    const texts = written.split(LINE_END);
    const ends: string[] = written.match(LINE_ENDS) ?? [];
    // Behind the last line's own end begins the next line, which stays.
    if (lastEnd !== '') texts.pop();
    else ends.push('');
    const inserted = texts.map(parseLine);
    const removed = this.parsed.slice(first, end.line + 1);
    spliceAll(this.parsed, first, removed.length, inserted);
    spliceAll(this.ends, first, removed.length, ends);
    return { first, removed, inserted };
  }

  private clamp({ line, character }: Place): Place {
    if (line < 0) return { line: 0, character: 0 };
    const last = this.parsed.length - 1;
    if (line > last) return { line: last, character: this.line(last).text.length };
    return { line, character: Math.max(0, Math.min(character, this.line(line).text.length)) };
  }
}

function inOrder(a: Place, b: Place): [Place, Place] {
  return a.line < b.line || (a.line === b.line && a.character <= b.character) ? [a, b] : [b, a];
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
