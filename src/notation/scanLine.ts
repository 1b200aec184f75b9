import {
  makeFieldLine,
  makeProseLine,
  makeRowLine,
  makeSectionLine,
  makeStringLine,
  type RawToken,
} from './lineParts';
import type { ParsedLine, TokenKind } from './parsedLine';

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

/** Every sign of a run, by its own group; the order of groups is that of KINDS. */
const SIGN =
  /(:?\|{1,2}:?)|(-+)|(\d+)|(tr)|(pb(?:(?:1\/4|1\/2|3\/4)(?!\d)|\d+(?:\.\d+)?)?)|(b(?:(?:1\/4|1\/2|3\/4)(?!\d)|\d+(?:\.\d+)?)?)|([hptr])|([\\/]+)|([xX])|(<\d+(?:\.\d+)?>)|(\()|(\))|(~+)|(\.)/y;
const KINDS: readonly TokenKind[] = [
  'bar',
  'dash',
  'number',
  'trill',
  'pre-bend',
  'bend',
  'join',
  'slide',
  'mute',
  'harmonic',
  'open',
  'close',
  'vibrato',
  'stop',
];

function scanString(text: string, match: RegExpExecArray): ParsedLine | undefined {
  const bodyStart = match[0].length;
  let bodyEnd = text.indexOf(' ', bodyStart);
  if (bodyEnd < 0) bodyEnd = text.length;
  const tokens: RawToken[] = [];
  let lastBarEnd = 0;
  let dashes = false;
  let dashSinceBar = false;
  let at = bodyStart;
  while (at < bodyEnd) {
    SIGN.lastIndex = at;
    const sign = SIGN.exec(text);
    // An unknown sign: the grammar says what it is.
    if (!sign) return undefined;
    const kind = kindOf(sign);
    const end = at + sign[0].length;
    tokens.push({ kind, start: at, end });
    if (kind === 'bar') {
      lastBarEnd = end;
      dashSinceBar = false;
    } else if (kind === 'dash') {
      dashes = true;
      dashSinceBar = true;
    }
    at = end;
  }
  // Only the run that dashes make plain is taken here; runs of signs alone, empty ones and remarks that touch the last
  // bar sign are rare enough for the grammar.
  const openedPlainly = tokens[1] && OPENING.test(text.slice(tokens[1].start, tokens[1].start + 2));
  if (!dashes || !openedPlainly || (lastBarEnd !== bodyEnd && !dashSinceBar)) return undefined;
  const labelStart = firstMark(text);
  return makeStringLine(
    text,
    { start: labelStart, end: labelStart + (match[1] ?? '').length },
    bodyStart,
    tokens,
    bodyEnd,
  );
}

const OPENING = /^(?:[-|\dxX(./\\]|<\d|[hptr]\d)/;

function kindOf(sign: RegExpExecArray): TokenKind {
  for (let i = 0; i < KINDS.length; i++) {
    const kind = KINDS[i];
    if (sign[i + 1] !== undefined && kind) return kind;
  }
  return 'junk';
}
