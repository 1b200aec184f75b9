import {
  makeFieldLine,
  makeProseLine,
  makeRowLine,
  makeSectionLine,
  plainStringLine,
  plainToken,
} from './lineParts';
import type { ParsedLine, Token, TokenKind } from './parsedLine';

/*
 * The fast reading of common lines. The grammar (pegbox.ohm) is the definition and takes 100 times as long
 * (test/bench/parsing.bench.ts); this one declines whatever is not plainly one thing, and a million mutated lines
 * hold it to the grammar.
 */

const PLAIN = /^[\x20-\x7e]*$/;
const STRING_START = /^ *([A-Ga-g][#b]?\d?(?:\/[A-Ga-g][#b]?\d?)?|1[0-4]|[1-9]) *(?=\|)/;
const FIELD =
  /^ *(title|by|remark|instrument|tuning|capo|frets|scale length|gauges|reference pitch|pitch|key|meter|time|tempo|feel|fretting|part) *(?=:(?: |$))/i;
const ROW = /^ *(palm mute|pm|count|chords|words|lyrics|picking|fingers|ending)(?![a-z\d'-]) *(?=\|)/i;

/** The line, when it is a common one; undefined when only the grammar can say. */
export function scanLine(text: string): ParsedLine | undefined {
  if (!PLAIN.test(text)) return undefined;
  const first = text.charCodeAt(firstMark(text));
  if (Number.isNaN(first)) return { kind: 'blank', text };
  if (first === 0x23) return { kind: 'comment', text };
  if (first === 0x5b) return scanSection(text);
  const bar = text.indexOf('|');
  if (bar >= 0) {
    const string = STRING_START.exec(text);
    if (string) return scanString(text, string);
    const row = ROW.exec(text);
    if (row) return makeRowLine(text, wordStart(row), wordStart(row) + (row[1] ?? '').length, row[0].length);
    return undefined;
  }
  const field = FIELD.exec(text);
  if (field)
    return makeFieldLine(text, wordStart(field), wordStart(field) + (field[1] ?? '').length, field[0].length);
  return makeProseLine(text);
}

function firstMark(text: string): number {
  let at = 0;
  while (text.charCodeAt(at) === 0x20) at += 1;
  return at;
}

function wordStart(match: RegExpExecArray): number {
  return firstMark(match[0]);
}

function scanSection(text: string): ParsedLine | undefined {
  const match = /^ *\[([^\]]+)\](?: .*)?$/.exec(text);
  const open = text.indexOf('[');
  return match ? makeSectionLine(text, open + 1, open + 1 + (match[1] ?? '').length) : undefined;
}

function scanString(text: string, match: RegExpExecArray): ParsedLine | undefined {
  const bodyStart = match[0].length;
  let bodyEnd = text.indexOf(' ', bodyStart);
  if (bodyEnd < 0) bodyEnd = text.length;
  const tokens: Token[] = [];
  let lastBarEnd = 0;
  let dashes = false;
  let dashSinceBar = false;
  for (let at = bodyStart; at < bodyEnd;) {
    const kind = kindAt(text, at);
    const end = kind && endOf(kind, text, at);
    if (kind === undefined || !end) {
      // An unknown sign: the grammar says what it is, unless it belongs to a remark against the last bar sign.
      if (!dashes || dashSinceBar || !isRemark(text, lastBarEnd, bodyEnd)) return undefined;
      break;
    }
    tokens.push(plainToken(kind, text, at, end, bodyStart));
    if (kind === 'bar') {
      lastBarEnd = end;
      dashSinceBar = false;
    } else if (kind === 'dash') {
      dashes = true;
      dashSinceBar = true;
    }
    at = end;
  }
  // Only the run that dashes make plain is taken here; runs of signs alone and empty ones are rare enough for the grammar.
  const openedPlainly = tokens[1] && OPENING.test(text.slice(tokens[1].start, tokens[1].start + 2));
  if (!dashes || !openedPlainly) return undefined;
  if (!dashSinceBar && lastBarEnd < bodyEnd) {
    // What touches the last bar sign and holds no dash is a remark, as in `|x2`.
    bodyEnd = lastBarEnd;
    while ((tokens.at(-1)?.start ?? 0) >= bodyEnd) tokens.pop();
  }
  const start = firstMark(text);
  const label = { start, end: start + (match[1] ?? '').length };
  return plainStringLine(text, label, bodyStart, tokens, bodyEnd);
}

/** Whether a stretch of text has neither a dash nor a bar line. */
function isRemark(text: string, start: number, end: number): boolean {
  for (let at = start; at < end; at++) if (text[at] === '-' || text[at] === '|') return false;
  return true;
}

const OPENING = /^(?:[-|\dxX(./\\]|<\d|[hptr]\d)/;

/** The sign that a character begins; undefined for one that begins none. */
function kindAt(text: string, at: number): TokenKind | undefined {
  switch (text[at]) {
    case '-':
      return 'dash';
    case '|':
    case ':':
      return 'bar';
    case 'h':
    case 'r':
      return 'join';
    case '/':
    case '\\':
      return 'slide';
    case '.':
      return 'stop';
    case '~':
      return 'vibrato';
    case 'x':
    case 'X':
      return 'mute';
    case 'b':
      return 'bend';
    case 'p':
      return text[at + 1] === 'b' ? 'pre-bend' : 'join';
    case 't':
      return text[at + 1] === 'r' ? 'trill' : 'join';
    case '(':
      return 'open';
    case ')':
      return 'close';
    case '<':
      return 'harmonic';
    default:
      return isDigit(text, at) ? 'number' : undefined;
  }
}

/** Where a sign ends; 0 where what follows does not make it whole. */
function endOf(kind: TokenKind, text: string, at: number): number {
  switch (kind) {
    case 'dash':
      return endOfRun(text, at, '-', '-');
    case 'vibrato':
      return endOfRun(text, at, '~', '~');
    case 'slide':
      return endOfRun(text, at, '/', '\\');
    case 'number': {
      let end = at + 1;
      while (isDigit(text, end)) end += 1;
      return end;
    }
    case 'bar':
      return endOfMatch(BAR, text, at);
    case 'harmonic':
      return endOfMatch(HARMONIC, text, at);
    case 'bend':
    case 'pre-bend':
      return endOfMatch(BEND, text, at);
    case 'trill':
      return at + 2;
    default:
      return at + 1;
  }
}

const BAR = /:?\|{1,2}:?/y;
const HARMONIC = /<\d+(?:\.\d+)?>/y;
const BEND = /p?b(?:(?:1\/4|1\/2|3\/4)(?!\d)|\d+(?:\.\d+)?)?/y;

function endOfMatch(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : 0;
}

function endOfRun(text: string, at: number, sign: string, other: string): number {
  let end = at + 1;
  while (text[end] === sign || text[end] === other) end += 1;
  return end;
}

function isDigit(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 0x30 && code <= 0x39;
}
