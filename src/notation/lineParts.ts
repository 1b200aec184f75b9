import { parsePitchName } from '../music/noteName';
import { columnsFrom } from './columns';
import { FIELD_ALIASES, type FieldName } from './fieldNames';
import { nearMissOf, nearRowOf } from './nearMiss';
import type {
  FieldLine,
  Label,
  LabelNote,
  ProseLine,
  Remark,
  RowBar,
  RowLine,
  RowMark,
  SectionLine,
  StringLine,
  TextSpan,
  Token,
  TokenKind,
} from './parsedLine';
import { ROW_ALIASES, ROW_NAMES, type RowName } from './rowNames';

/*
 * Makes the parts of a line from the places that the grammar or the scanner found. Both use these, so that the
 * two can only differ in what they find.
 */

/** A token before its column is known. */
export interface RawToken extends TextSpan {
  readonly kind: TokenKind;
}

const GAP = /[ \u00a0\u202f\t]/;
const LOOK_ALIKE = /[–—─−│┃¦]/;
const LOOK_ALIKES = /[–—─−│┃¦]+/g;

export function isGap(character: string | undefined): boolean {
  return character !== undefined && GAP.test(character);
}

/** A word in small letters, by way of capitals as the grammar compares them: a long s is an s, a dotless i an i. */
function foldCase(word: string): string {
  return word.toUpperCase().toLowerCase();
}

export function makeStringLine(
  text: string,
  label: TextSpan,
  bodyStart: number,
  raw: readonly RawToken[],
  bodyEnd: number,
): StringLine {
  const columnAt = columnsFrom(text, bodyStart);
  const strange = LOOK_ALIKE.test(text);
  const tokens = raw.map(({ kind, start, end }) => {
    const column = columnAt(start);
    const written = text.slice(start, end);
    return makeToken(
      kind,
      start,
      end,
      strange ? asciiSigns(written) : written,
      column,
      columnAt(end) - column,
    );
  });
  const lookAlikes = strange ? spansOf(text.slice(0, bodyEnd), LOOK_ALIKES) : [];
  const tabs = text.includes('\t') ? spansOf(text, /\t+/g) : [];
  return stringLine(text, label, bodyStart, tokens, columnAt(bodyEnd), bodyEnd, lookAlikes, tabs);
}

/** The same of a line of printable ASCII, where every character is a column. */
export function plainStringLine(
  text: string,
  label: TextSpan,
  bodyStart: number,
  tokens: readonly Token[],
  bodyEnd: number,
): StringLine {
  return stringLine(text, label, bodyStart, tokens, bodyEnd - bodyStart, bodyEnd, NO_SPANS, NO_SPANS);
}

/** A token of such a line. */
export function plainToken(
  kind: TokenKind,
  text: string,
  start: number,
  end: number,
  bodyStart: number,
): Token {
  return makeToken(kind, start, end, text.slice(start, end), start - bodyStart, end - start);
}

const NO_SPANS: readonly TextSpan[] = Object.freeze([]);

/** All tokens and all string lines are made at one place each, so that they have one shape. */
function makeToken(
  kind: TokenKind,
  start: number,
  end: number,
  text: string,
  column: number,
  width: number,
): Token {
  return { kind, start, end, text, column, width };
}

function stringLine(
  text: string,
  { start, end }: TextSpan,
  bodyStart: number,
  tokens: readonly Token[],
  width: number,
  bodyEnd: number,
  lookAlikes: readonly TextSpan[],
  tabs: readonly TextSpan[],
): StringLine {
  const written = text.slice(start, end);
  const { number, notes } = labelMeaning(written);
  return {
    kind: 'string',
    text,
    label: { text: written, start, end, number, notes },
    bodyStart,
    tokens,
    width,
    bodyEnd,
    remark: bodyEnd === text.length ? undefined : makeRemark(text, bodyEnd),
    lookAlikes,
    tabs,
  };
}

/** Look-alike dashes and bar lines as the plain signs they stand for. */
export function asciiSigns(text: string): string {
  return text.replace(/[–—─−]/g, '-').replace(/[│┃¦]/g, '|');
}

function spansOf(text: string, pattern: RegExp): TextSpan[] {
  return [...text.matchAll(pattern)].map((m) => ({ start: m.index, end: m.index + m[0].length }));
}

type LabelMeaning = Pick<Label, 'number' | 'notes'>;

/** What labels mean, by their text: a document has half a dozen of them on thousands of lines. */
const labels = new Map<string, LabelMeaning>();
const MOST_LABELS = 200;

function labelMeaning(text: string): LabelMeaning {
  let meaning = labels.get(text);
  if (!meaning) {
    if (labels.size >= MOST_LABELS) labels.clear();
    labels.set(text, (meaning = readLabel(text)));
  }
  return meaning;
}

function readLabel(text: string): LabelMeaning {
  if (/^\d+$/.test(text)) return { number: Number(text), notes: [] };
  return { number: undefined, notes: text.split('/').flatMap(labelNote) };
}

function labelNote(text: string): LabelNote[] {
  const name = parsePitchName(text.replace(/\d$/, ''));
  const octave = /\d$/.exec(text)?.[0];
  return name ? [{ ...name, octave: octave === undefined ? undefined : Number(octave) }] : [];
}

function makeRemark(line: string, from: number): Remark | undefined {
  const text = line.slice(from).replace(/^[ \u00a0\u202f\t]+|[ \u00a0\u202f\t]+$/g, '');
  if (text === '') return undefined;
  const start = line.indexOf(text, from);
  return { text, start, end: start + text.length, times: timesIn(text) };
}

/**
 * How often a remark says that something is played in all.
 * @example timesIn('(x3)') // 3
 */
export function timesIn(remark: string): number | undefined {
  const match = /(?:^|[\s(])(?:[x×]\s?(\d{1,2})|(\d{1,2})\s?[x×])(?=$|[\s).,;])/i.exec(remark);
  const times = Number(match?.[1] ?? match?.[2]);
  return times >= 1 ? times : undefined;
}

export function makeSectionLine(text: string, nameStart: number, nameEnd: number): SectionLine {
  const name = text.slice(nameStart, nameEnd);
  return {
    kind: 'section',
    text,
    name: name.trim(),
    nameStart: nameStart + (name.length - name.trimStart().length),
    times: timesIn(text.slice(nameEnd + 1)),
  };
}

export function makeFieldLine(text: string, nameStart: number, nameEnd: number, colon: number): FieldLine {
  const name = foldCase(text.slice(nameStart, nameEnd));
  const rest = text.slice(colon + 1);
  const value = rest.trim();
  return {
    kind: 'field',
    text,
    field: FIELD_ALIASES[name] ?? (name as FieldName),
    nameStart,
    nameEnd,
    value,
    valueStart: value === '' ? text.length : colon + 1 + rest.indexOf(value),
  };
}

export function makeProseLine(text: string): ProseLine {
  return { kind: 'prose', text, nearMiss: nearMissOf(text) };
}

/** The row that a word names; any other word is a text row. */
export function rowOf(word: string): RowName {
  const key = foldCase(word);
  const alias = ROW_ALIASES[key];
  if (alias) return alias;
  return ROW_NAMES.find((name) => name === key && name !== 'text') ?? 'text';
}

export function makeRowLine(text: string, wordStart: number, wordEnd: number, bodyStart: number): RowLine {
  const word = text.slice(wordStart, wordEnd);
  const row = rowOf(word);
  const columnAt = columnsFrom(text, bodyStart);
  const marks: RowMark[] = [];
  const bars: RowBar[] = [];
  let at = bodyStart;
  while (at < text.length) {
    if (isGap(text[at])) {
      at += 1;
      continue;
    }
    const column = columnAt(at);
    const sign = rowBar(text, at);
    const end = at + (sign ?? rowMark(text, at));
    const piece = { text: text.slice(at, end), column, width: columnAt(end) - column };
    if (sign === undefined) marks.push({ ...piece, start: at, end });
    else bars.push({ ...piece, text: asciiSigns(piece.text), start: at });
    at = end;
  }
  const written = text.replace(/[ \u00a0\u202f\t]+$/, '');
  const nearRow = row === 'text' ? nearRowOf(word) : undefined;
  return {
    kind: 'row',
    text,
    row,
    word,
    wordStart,
    wordEnd,
    nearRow,
    bodyStart,
    marks,
    bars,
    width: columnAt(Math.max(written.length, bodyStart)),
  };
}

const ROW_BAR = /:?[|│┃¦]{1,2}:?/y;

/** Length of the bar sign at an offset of a row; undefined when there is none. */
function rowBar(text: string, at: number): number | undefined {
  ROW_BAR.lastIndex = at;
  return ROW_BAR.exec(text)?.[0].length;
}

/** Length of the mark that begins at an offset. */
function rowMark(text: string, at: number): number {
  let end = at + 1;
  while (end < text.length && !isGap(text[end]) && !/[|│┃¦]/.test(text[end] ?? '')) end += 1;
  return end - at;
}
