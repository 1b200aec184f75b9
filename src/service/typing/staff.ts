import type { StringLine } from '../../notation/parsedLine';
import type { System } from '../../notation/tabDocument';
import { writeDraft, type Draft } from './drafts';
import { waysToClear, waysToWrite } from './draftsOf';
import { endsSystem, withNextBar } from './nextBar';
import { barAt, columnOf, digitsAbout, isDash, isDigit, offsetOf } from './stringCell';
import type { TypedKey } from './typedKey';

/** A cursor in a system: index of its line, and the column before which it stands. */
export interface StaffCursor {
  line: number;
  column: number;
  /** Column at the other end of what it selects on this line. */
  anchor: number;
}

const SAME_SIGN: Readonly<Record<string, string>> = { '=': '-', _: '-', '–': '-' };
const SIGNS = /^[-0-9xhptrb/\\~().<>]$/;

/**
 * A system while a key is typed into it, with all cursors that stand in it. Each cursor writes in turn; the others go
 * along when columns are added or removed.
 */
export class Staff {
  /** Why something was not written, or what else was. */
  notice: string | undefined;

  constructor(
    public system: System,
    readonly cursors: readonly StaffCursor[],
  ) {}

  type(key: TypedKey): void {
    for (const cursor of this.cursors) {
      const selected = cursor.anchor !== cursor.column;
      if (selected) this.clearSelected(cursor);
      if (key === 'backspace') {
        if (!selected) this.back(cursor);
      } else if (key === 'delete') {
        if (!selected) this.clear(cursor, this.offset(cursor));
      } else this.write(cursor, key.text);
    }
  }

  private lineOf(cursor: StaffCursor): StringLine {
    const line = this.system.lines[cursor.line];
    if (line?.kind !== 'string') throw new Error('A cursor of a staff has left its string line.');
    return line;
  }

  private offset(cursor: StaffCursor): number {
    return offsetOf(this.lineOf(cursor), cursor.column);
  }

  private write(cursor: StaffCursor, typed: string): void {
    const sign = SAME_SIGN[typed] ?? typed.toLowerCase();
    if (typed === '|') return this.stepOverBar(cursor);
    if (typed === ' ') return this.stepOn(cursor);
    if (!SIGNS.test(sign)) {
      this.notice = `“${typed}” is no sign of a string line, so it was not written. Typing over the staff can be switched off in the status bar.`;
      return;
    }
    this.stepBehind(cursor);
    const line = this.lineOf(cursor);
    const offset = this.offset(cursor);
    // Only a bar sign was there to step over: what follows is text.
    if (offset >= line.bodyEnd) return;
    if (sign === '-') {
      if (this.clear(cursor, offset)) moveTo(cursor, cursor.column + 1);
      return;
    }
    const ways = waysToWrite(line, offset, sign);
    if (typeof ways === 'string') {
      this.notice = ways;
      return;
    }
    const draft = this.put(cursor, ways);
    if (draft) moveTo(cursor, draft.column + 1);
  }

  /** Goes on behind a bar sign; behind the last one with a new bar. */
  private stepBehind(cursor: StaffCursor): void {
    const line = this.lineOf(cursor);
    const bar = barAt(line, this.offset(cursor));
    if (bar) moveTo(cursor, columnOf(line, bar.end));
    if (this.offset(cursor) < line.bodyEnd || !endsSystem(this.system, line)) return;
    const next = withNextBar(this.system);
    if (next) this.system = next;
  }

  private stepOn(cursor: StaffCursor): void {
    const line = this.lineOf(cursor);
    const bar = barAt(line, this.offset(cursor));
    moveTo(cursor, Math.min(line.width, bar ? columnOf(line, bar.end) : cursor.column + 1));
  }

  private stepOverBar(cursor: StaffCursor): void {
    const line = this.lineOf(cursor);
    const next = line.tokens.find(({ kind, end }) => kind === 'bar' && end > this.offset(cursor));
    if (next) moveTo(cursor, columnOf(line, next.end));
  }

  /** Leaves dashes for what stands before the cursor, and goes there; over a bar sign it only steps. */
  private back(cursor: StaffCursor): void {
    const line = this.lineOf(cursor);
    const offset = this.offset(cursor);
    const bar = barAt(line, offset - 1);
    if (bar) {
      if (bar.start > line.bodyStart) moveTo(cursor, columnOf(line, bar.start));
      return;
    }
    if (this.clear(cursor, offset - 1)) moveTo(cursor, cursor.column - 1);
  }

  /** Leaves dashes for what stands at an offset; false when that would move something else. */
  private clear(cursor: StaffCursor, offset: number): boolean {
    const line = this.lineOf(cursor);
    if (offset >= line.bodyEnd || barAt(line, offset)) return offset < line.bodyEnd;
    const { column } = cursor;
    const ways = waysToClear(line, offset);
    if (ways.length === 0) return true;
    if (!this.put(cursor, ways)) return false;
    cursor.column = cursor.anchor = column;
    return true;
  }

  private clearSelected(cursor: StaffCursor): void {
    const from = Math.min(cursor.column, cursor.anchor);
    const to = Math.max(cursor.column, cursor.anchor);
    moveTo(cursor, from);
    // From behind, so that the columns still to come stay where they are.
    for (let column = to - 1; column >= from; column--) {
      const line = this.lineOf(cursor);
      const offset = offsetOf(line, column);
      if (offset >= line.bodyEnd || isDash(line.text[offset]) || barAt(line, offset)) continue;
      const { before } = digitsAbout(line.text, offset);
      // A number that is selected to its end goes as a whole.
      if (isDigit(line.text[offset]) && before > 0 && column - before >= from) continue;
      this.clear(cursor, offset);
    }
  }

  private put(cursor: StaffCursor, ways: readonly Draft[]): Draft | undefined {
    const done = writeDraft(this.system, cursor.line, ways);
    if (!done) {
      this.notice = this.whyNot(cursor, ways);
      return undefined;
    }
    this.system = done.system;
    if (done.counted)
      this.notice = 'The count is written over this system, so that its other notes keep their time.';
    const { added, removed } = done.draft;
    for (const other of this.cursors) {
      other.line = done.lineOf(other.line);
      if (other === cursor) continue;
      other.column = this.shifted(other, other.column, added, removed);
      other.anchor = this.shifted(other, other.anchor, added, removed);
    }
    return done.draft;
  }

  private whyNot(cursor: StaffCursor, ways: readonly Draft[]): string {
    const [way] = ways;
    // `|h7` can only be written from its fret.
    if (
      way?.column === 1 &&
      /^[hptr~]/.test(way.signs) &&
      isDash(this.lineOf(cursor).text[this.offset(cursor) + 1])
    )
      return `A string line cannot begin with “${way.signs[0] ?? ''}” alone: write the fret behind it first.`;
    return this.system.reading.timing === 'counted'
      ? 'Nothing was changed: another note begins together with this one, and would begin at another time. Leave a dash between them.'
      : 'Nothing was changed: other notes would begin at another time. Write the count of this system first, or leave more dashes.';
  }

  /** A cursor right behind a digit stays there: its own second digit belongs into the new column. */
  private shifted(
    cursor: StaffCursor,
    column: number,
    added: number | undefined,
    removed: number | undefined,
  ): number {
    if (removed !== undefined && column > removed) return column - 1;
    if (added === undefined || column < added) return column;
    const line = this.system.lines[cursor.line];
    const isBehindDigit = line?.kind === 'string' && isDigit(line.text[offsetOf(line, column) - 1]);
    return column === added && isBehindDigit ? column : column + 1;
  }
}

function moveTo(cursor: StaffCursor, column: number): void {
  cursor.column = column;
  cursor.anchor = column;
}
