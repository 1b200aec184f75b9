import { readChordName } from '../music/chord/readChordName';
import { letterDistance } from '../music/letterDistance';
import { FIELD_ALIASES, FIELD_NAMES, type FieldName } from './fieldNames';
import { fieldTakes } from './fieldTakes';
import type { NearMiss } from './parsedLine';
import { ROW_ALIASES, ROW_NAMES, type RowName } from './rowNames';

/*
 * Lines that were nearly something else. They stay prose, but the writer is told: nothing is passed over.
 */

const FIELD_WORDS: readonly string[] = [...FIELD_NAMES, ...Object.keys(FIELD_ALIASES)];
const ROW_WORDS: readonly string[] = [
  ...ROW_NAMES.filter((name) => name !== 'text'),
  ...Object.keys(ROW_ALIASES),
];

/** What a prose line looks like having been meant to be; undefined for real prose. */
export function nearMissOf(text: string): NearMiss | undefined {
  return nearField(text) ?? nearStringLine(text) ?? looseRow(text);
}

function nearField(text: string): NearMiss | undefined {
  const match = /^[\s\u00a0]*([A-Za-z]+(?: [A-Za-z]+)?)[\s\u00a0]*:(.*)$/.exec(text);
  const word = match?.[1]?.toLowerCase();
  const value = match?.[2]?.trim();
  if (!match || !word || !value) return undefined;
  const start = text.indexOf(match[1] ?? '');
  const span = { start, end: start + word.length };
  if (word === 'scale' && fieldTakes('key', value)) return { kind: 'scale', ...span };
  for (const name of FIELD_WORDS) {
    // A name of two letters is a letter away from half the dictionary.
    if (name.length < 3 || !isNearly(word, name)) continue;
    const field = FIELD_ALIASES[name] ?? (name as FieldName);
    if (fieldTakes(field, value)) return { kind: 'field', field, ...span };
  }
  return undefined;
}

/** One letter off, or two in names of six letters or more that begin alike; 0 off when only the space after `:` is missing. */
function isNearly(word: string, name: string): boolean {
  const distance = letterDistance(word, name);
  return distance <= 1 || (distance === 2 && name.length >= 6 && word[0] === name[0]);
}

/** A bar line or a label, two dashes in a row and a fret, and no word of four letters. */
function nearStringLine(text: string): NearMiss | undefined {
  if (!/--|––|——|──|−−/.test(text) || /\p{L}{4}/u.test(text)) return undefined;
  const bar = /[|│┃¦]/.exec(text);
  const label = /^\s*(?:[A-Ga-g][#b♯♭]?\d?|1[0-4]|[1-9])[\s:;.)]/.exec(text);
  const fret = /(?<![\p{L}\d])\d{1,2}(?![\p{L}])/u.test(
    text.slice(label ? label[0].length : 0).replace(/^\s*\d+(?=[|│])/, ''),
  );
  if ((!bar && !label) || !fret) return undefined;
  const trimmed = text.trim();
  const start = text.indexOf(trimmed);
  return { kind: 'string-line', start, end: start + trimmed.length };
}

/** A bar line between the marks of a loose row. */
const BAR = /^[|│┃¦:]+$/;

/** Syllables of a count, touching or not: `1`, `&`, `2e&a`, `trip`, `let`. One reading only, for long lines' sake. */
const COUNTED = /^(?:[\d&+eatl]|trip)+$/i;

/** Nothing but the syllables of a count, two numbers at least; or nothing but names of chords. */
function looseRow(text: string): NearMiss | undefined {
  // Nearly every line of prose ends here.
  if (!/^[\s\u00a0|│┃¦]*[\dA-GN(]/.test(text) || /[\p{Ll}]{6}/u.test(text)) return undefined;
  const trimmed = text.trim();
  const marks = trimmed
    .split(/[\s\u00a0]+|(?=[|│┃¦])|(?<=[|│┃¦])/)
    .filter((mark) => mark !== '' && !BAR.test(mark));
  // `1|2|3` and `A | D | E | A |` are no rows over columns.
  const barred = /[|│┃¦]/.test(trimmed);
  if (marks.length === 0 || (barred && !/[\s\u00a0]/.test(trimmed))) return undefined;
  const start = text.indexOf(trimmed);
  const span = { start, end: start + trimmed.length };
  const numbers = marks.join(' ').match(/\d+/g) ?? [];
  if (numbers.length > 1 && marks.every((mark) => COUNTED.test(mark)))
    return { kind: 'row', row: 'count', ...span };
  if (barred && !/^[|│┃¦]/.test(trimmed)) return undefined;
  if (marks.every(isChordName)) return { kind: 'row', row: 'chords', ...span };
  return undefined;
}

function isChordName(mark: string): boolean {
  return /^(?:[A-G]|N\.?C)/.test(mark) && readChordName(mark).ok;
}

/** The row's word that a word nearly is. */
export function nearRowOf(word: string): Exclude<RowName, 'text'> | undefined {
  const key = word.toLowerCase();
  const near = ROW_WORDS.find((name) => name.length > 2 && isNearly(key, name));
  const row = near === undefined ? undefined : (ROW_ALIASES[near] ?? (near as RowName));
  return row === 'text' ? undefined : row;
}
