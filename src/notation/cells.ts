import type { StringLine, Token } from './parsedLine';
import type { NoteKind, Problem, TechniqueKind } from './reading';

/** What stands on one string line, before its bars and times are known. A pure function of the line. */
export interface CellLine {
  readonly notes: readonly CellNote[];
  readonly stops: readonly Token[];
  /** `line` is 0: the line itself. */
  readonly problems: readonly Problem[];
}

export interface CellNote {
  readonly kind: NoteKind;
  /** Column of its first digit or `x`. */
  readonly firstColumn: number;
  /** Column of its last digit or `x`. */
  readonly lastColumn: number;
  /** Column of the bracket it opens with (`(` or `<`). */
  readonly openColumn: number | undefined;
  readonly start: number;
  readonly end: number;
  readonly numberStart: number;
  readonly numberEnd: number;
  readonly fret: number | undefined;
  readonly touched: number | undefined;
  readonly ghost: boolean;
  readonly techniques: readonly CellTechnique[];
  /** Index of the note on this line that a hammer-on, pull-off, tap or slide brings here. */
  readonly joinedFrom: number | undefined;
}

export interface CellTechnique {
  readonly kind: TechniqueKind;
  readonly sign: string;
  readonly start: number;
  readonly end: number;
  readonly column: number;
  readonly toFret: number | undefined;
  /** Half steps, for a bend by an amount. */
  readonly amount: number | undefined;
  /** Index of the note a slide goes to. */
  readonly toNote: number | undefined;
  /** Whether it stands apart from its note, so that it happens at its own column. */
  readonly apart: boolean;
}

const remembered = new WeakMap<StringLine, CellLine>();

/** The notes and techniques of a string line, remembered with the line. */
export function readCells(line: StringLine): CellLine {
  let cells = remembered.get(line);
  if (!cells) {
    cells = new CellReader(line).read();
    remembered.set(line, cells);
  }
  return cells;
}

type Building = { -readonly [K in keyof CellNote]: CellNote[K] };

const NO_TECHNIQUES: readonly CellTechnique[] = Object.freeze([]);

/** A sign that waits for the note it brings. */
interface Waiting {
  readonly token: Token;
  readonly kind: TechniqueKind;
  /** The note it leaves. */
  readonly from: number | undefined;
  /** For a slide: whether a note must follow. */
  readonly touchesNext: boolean;
}

const SIGN_KINDS: Readonly<Record<string, TechniqueKind>> = { h: 'hammer-on', p: 'pull-off', t: 'tap' };

/** What other habits write for a sign of the notation. */
const MEANT: Readonly<Record<string, string>> = {
  H: 'h',
  P: 'p',
  T: 't',
  R: 'r',
  B: 'b',
  '^': 'b',
  s: '/',
  S: '/',
  v: '~',
  V: '~',
  w: '~',
  O: '0',
  o: '0',
  l: '1',
  I: '1',
  _: '-',
  '=': '-',
};

class CellReader {
  private readonly notes: Building[] = [];
  private readonly stops: Token[] = [];
  private readonly problems: Problem[] = [];
  /** Index of the note that a sign would take up; undefined after a stop. */
  private last: number | undefined;
  private waiting: Waiting | undefined;
  private bracket: Token | undefined;
  /** Tokens already taken as part of another one. */
  private taken = -1;

  constructor(private readonly line: StringLine) {}

  read(): CellLine {
    const { tokens } = this.line;
    for (let i = 0; i < tokens.length; i++) {
      const token = tokens[i];
      if (token && i > this.taken) this.take(token, i);
    }
    if (this.waiting) this.leaveWaiting(this.waiting);
    if (this.bracket) this.problem('bracket-not-closed', this.bracket, {});
    return { notes: this.notes, stops: this.stops, problems: this.problems };
  }

  private take(token: Token, i: number): void {
    switch (token.kind) {
      case 'number':
        return this.number(token, i);
      case 'mute':
        return this.addNote(this.blank('muted', token, undefined));
      case 'harmonic':
        return this.harmonic(token, i);
      case 'open':
        if (this.bracket) this.problem('bracket-not-closed', this.bracket, {});
        this.bracket = token;
        return;
      case 'close':
        return this.close(token);
      case 'stop':
        this.stops.push(token);
        if (this.waiting) this.leaveWaiting(this.waiting);
        this.last = undefined;
        return;
      case 'join':
        return token.text === 'r'
          ? this.release(token, i)
          : this.wait(token, SIGN_KINDS[token.text] ?? 'hammer-on');
      case 'slide':
        return this.slide(token, i);
      case 'trill':
        return this.trill(token, i);
      case 'bend':
      case 'pre-bend':
        return this.bend(token, i);
      case 'vibrato':
        return this.vibrato(token, i);
      case 'junk':
        return this.problem('unknown-sign', token, { text: token.text, meant: MEANT[token.text] ?? '' });
      case 'bar':
      case 'dash':
        return;
    }
  }

  // ---- notes

  private number(token: Token, i: number): void {
    const before = this.touching(i, -1);
    if (before?.kind === 'stop' && this.touching(i - 1, -1)?.kind === 'number') {
      this.problem('dash-before-note', before, { text: token.text });
    }
    this.addNote(this.blank('fretted', token, this.fretOf(token)));
  }

  /** The fret a run of digits means; undefined, and told, for a leading 0 or three digits. */
  private fretOf(token: Token): number | undefined {
    const { text } = token;
    if (text.length === 1 || (text.length === 2 && !text.startsWith('0'))) return Number(text);
    this.problem('fret-number', token, { text, split: splitFrets(text) });
    return undefined;
  }

  private harmonic(token: Token, i: number): void {
    const touched = Number(token.text.slice(1, -1));
    const before = this.touching(i, -1);
    const stopped = this.last === undefined ? undefined : this.notes[this.last];
    if (before?.kind === 'number' && stopped?.end === before.end && stopped.kind === 'fretted') {
      stopped.kind = 'artificial-harmonic';
      stopped.touched = touched;
      stopped.end = token.end;
      return;
    }
    const note = this.blank('natural-harmonic', token, 0);
    note.openColumn ??= token.column;
    note.firstColumn = token.column + 1;
    note.lastColumn = token.column + token.width - 2;
    note.numberStart = token.start + 1;
    note.numberEnd = token.end - 1;
    note.touched = touched;
    this.addNote(note);
  }

  private blank(kind: NoteKind, token: Token, fret: number | undefined): Building {
    const opening = this.bracket && this.opens(this.bracket, token) ? this.bracket : undefined;
    return {
      kind,
      firstColumn: token.column,
      lastColumn: token.column + token.width - 1,
      openColumn: opening?.column,
      start: (opening ?? token).start,
      end: token.end,
      numberStart: token.start,
      numberEnd: token.end,
      fret,
      touched: undefined,
      ghost: this.bracket !== undefined,
      techniques: NO_TECHNIQUES,
      joinedFrom: undefined,
    };
  }

  /** Only the first note inside a bracket stands at it, and none that dashes or a bar sign part from it. */
  private opens(bracket: Token, token: Token): boolean {
    const last = this.notes.at(-1);
    if (last && last.start >= bracket.start) return false;
    return /^[hptr/\\~]*$/.test(this.line.text.slice(bracket.end, token.start));
  }

  private addNote(note: Building): void {
    const index = this.notes.length;
    const { waiting } = this;
    this.waiting = undefined;
    if (waiting) this.bring(note, index, waiting);
    this.notes.push(note);
    this.last = index;
  }

  /** Gives a note the sign that waited for it. */
  private bring(note: Building, index: number, { token, kind, from }: Waiting): void {
    const start = from === undefined ? undefined : this.notes[from];
    if (kind === 'slide' && start) {
      give(start, this.technique(kind, token, { toNote: index }));
      note.joinedFrom = from;
      return;
    }
    const named = kind === 'slide' ? 'slide-from-nowhere' : kind;
    if (note.kind === 'muted') this.problem('signs-together', token, { first: token.text, second: 'x' });
    give(note, this.technique(named, token));
    note.joinedFrom = from;
  }

  private close(token: Token): void {
    const last = this.notes.at(-1);
    if (!this.bracket) this.problem('bracket-not-opened', token, {});
    else if (!last || last.start < this.bracket.start) this.problem('bracket-empty', token, {});
    else if (last.end <= token.start) last.end = token.end;
    this.bracket = undefined;
  }

  // ---- signs

  /** A sign that joins: it waits for the note it brings. */
  private wait(token: Token, kind: TechniqueKind, touchesNext = true): void {
    if (this.waiting) {
      this.problem('signs-together', token, { first: this.waiting.token.text, second: token.text });
      return;
    }
    const from = this.last !== undefined && this.notes[this.last]?.kind === 'muted' ? undefined : this.last;
    this.waiting = { token, kind, from, touchesNext };
  }

  /** No note came for a sign that waited. */
  private leaveWaiting({ token, kind, from, touchesNext }: Waiting): void {
    this.waiting = undefined;
    const start = from === undefined ? undefined : this.notes[from];
    if (kind === 'slide' && start && !touchesNext) {
      give(start, this.technique('slide-to-nowhere', token));
    } else {
      this.problem('sign-without-note', token, { sign: token.text, side: 'after' });
    }
  }

  private slide(token: Token, i: number): void {
    if (/\/.*\\|\\.*\//.test(token.text)) {
      this.problem('signs-together', token, { first: token.text.charAt(0), second: token.text.charAt(1) });
      return;
    }
    const left = this.reaches(i, -1);
    const right = this.reaches(i, 1);
    const start = this.last === undefined ? undefined : this.notes[this.last];
    const canLeave = start !== undefined && start.kind !== 'muted';
    if (left === right) return this.wait(token, 'slide', right);
    if (left && canLeave) {
      give(start, this.technique('slide-to-nowhere', token));
      if (this.noteInBar(i)) this.problem('slide-off', token, { sign: token.text.charAt(0) });
      return;
    }
    if (left) return this.problem('sign-without-note', token, { sign: token.text, side: 'before' });
    if (this.waiting) return this.wait(token, 'slide');
    this.waiting = { token, kind: 'slide', from: undefined, touchesNext: true };
  }

  private release(token: Token, i: number): void {
    const note = this.last === undefined ? undefined : this.notes[this.last];
    const bent = note?.techniques.some((t) => t.kind === 'bend' || t.kind === 'pre-bend');
    if (!note || !bent) {
      this.problem('release-without-bend', token, {});
      return;
    }
    const target = this.numberAfter(i);
    give(
      note,
      this.technique('release', token, {
        toFret: target && this.fretOf(target),
        end: target?.end,
        apart: true,
      }),
    );
  }

  private trill(token: Token, i: number): void {
    const note = this.last === undefined ? undefined : this.notes[this.last];
    const target = this.touching(i, 1);
    if (!note || note.kind === 'muted')
      return this.problem('sign-without-note', token, { sign: 'tr', side: 'before' });
    if (target?.kind !== 'number')
      return this.problem('sign-without-note', token, { sign: 'tr', side: 'after' });
    this.taken = i + 1;
    give(note, this.technique('trill', token, { toFret: this.fretOf(target), end: target.end }));
  }

  private bend(token: Token, i: number): void {
    const note = this.last === undefined ? undefined : this.notes[this.last];
    const kind = token.kind === 'pre-bend' ? 'pre-bend' : 'bend';
    const sign = kind === 'bend' ? 'b' : 'pb';
    const touches = this.touchesNote(i);
    if (!note || (kind === 'pre-bend' && !touches)) {
      return this.problem('sign-without-note', token, { sign, side: 'before' });
    }
    if (note.kind === 'muted') return this.problem('signs-together', token, { first: 'x', second: sign });
    const { toFret, amount } = bendTarget(token.text.slice(sign.length));
    give(note, this.technique(kind, token, { sign, toFret, amount, apart: !touches }));
  }

  private vibrato(token: Token, i: number): void {
    const note = this.last === undefined ? undefined : this.notes[this.last];
    if (!note) return this.problem('sign-without-note', token, { sign: '~', side: 'before' });
    if (note.kind === 'muted') return this.problem('signs-together', token, { first: 'x', second: '~' });
    give(note, this.technique('vibrato', token, { apart: !this.touchesNote(i) }));
  }

  private technique(
    kind: TechniqueKind,
    token: Token,
    more: { readonly [K in keyof CellTechnique]?: CellTechnique[K] | undefined } = NOTHING_MORE,
  ): CellTechnique {
    const plain = kind === 'vibrato' ? '~' : token.text;
    return {
      kind,
      sign: more.sign ?? (kind.startsWith('slide') ? token.text.charAt(0) : plain),
      start: token.start,
      end: more.end ?? token.end,
      column: token.column,
      toFret: more.toFret,
      amount: more.amount,
      toNote: more.toNote,
      apart: more.apart ?? false,
    };
  }

  // ---- neighbours

  /** The token next to one, when nothing stands between. */
  private touching(i: number, step: 1 | -1): Token | undefined {
    return this.line.tokens[i + step];
  }

  /** Whether the sign at `i` directly follows a note or another sign of that note. */
  private touchesNote(i: number): boolean {
    const before = this.touching(i, -1);
    return before !== undefined && !['dash', 'bar', 'stop', 'junk', 'open'].includes(before.kind);
  }

  /**
   * Whether a slide reaches a note on one side: it touches the note, or only a bar sign and the few dashes that pad it
   * stand between.
   */
  private reaches(i: number, step: 1 | -1): boolean {
    let next = this.touching(i, step);
    if (
      next?.kind === 'bar' ||
      (next?.kind === 'dash' && step < 0 && next.width <= 2 && this.line.tokens[i - 2]?.kind === 'bar')
    ) {
      let at = i + step;
      let dashes = 0;
      while (next && (next.kind === 'bar' || next.kind === 'dash')) {
        if (next.kind === 'dash') dashes += next.width;
        at += step;
        next = this.line.tokens[at];
      }
      if (dashes > 2) return false;
    }
    if (!next) return false;
    return step > 0
      ? ['number', 'open', 'harmonic', 'mute'].includes(next.kind)
      : !['dash', 'bar', 'stop', 'junk', 'open', 'join'].includes(next.kind);
  }

  private noteInBar(i: number): boolean {
    for (let at = i + 1; ; at++) {
      const token = this.line.tokens[at];
      if (!token || token.kind === 'bar') return false;
      if (token.kind === 'number' || token.kind === 'harmonic') return true;
    }
  }

  /** The number that a release goes to: next on the string, dashes between or not, within the bar. */
  private numberAfter(i: number): Token | undefined {
    const next = this.line.tokens[i + 1];
    const at = next?.kind === 'dash' ? i + 2 : i + 1;
    const target = this.line.tokens[at];
    if (target?.kind !== 'number') return undefined;
    this.taken = at;
    return target;
  }

  private problem(
    kind: string,
    span: { readonly start: number; readonly end: number },
    facts: Problem['facts'],
  ): void {
    this.problems.push({ kind, line: 0, start: span.start, end: span.end, facts });
  }
}

const NOTHING_MORE = Object.freeze({});

/** Most notes have no technique: they share one empty list. */
function give(note: Building, technique: CellTechnique): void {
  note.techniques = [...note.techniques, technique];
}

/**
 * The frets that a run of digits may have meant, as text to write instead: two digits at a time where they are a fret
 * of the neck, else one.
 * @param most the last fret of the neck
 * @example splitFrets('45') // '4-5'
 */
export function splitFrets(digits: string, most = 24): string {
  const frets: string[] = [];
  for (let at = 0; at < digits.length;) {
    const pair = digits.slice(at, at + 2);
    const whole = pair.length === 2 && !pair.startsWith('0') && Number(pair) <= most;
    frets.push(whole ? pair : digits.charAt(at));
    at += whole ? 2 : 1;
  }
  return frets.join('-');
}

/** A bend's target: a whole step where nothing is written, a part of a whole step, or a fret (which may lie between two). */
function bendTarget(amount: string): { toFret: number | undefined; amount: number | undefined } {
  if (amount === '') return { toFret: undefined, amount: 2 };
  const part = /^(\d)\/(\d)$/.exec(amount);
  if (part) return { toFret: undefined, amount: (2 * Number(part[1])) / Number(part[2]) };
  return { toFret: Number(amount), amount: undefined };
}
