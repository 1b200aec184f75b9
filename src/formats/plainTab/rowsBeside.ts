import { readChordName } from '../../music/chord/readChordName';
import { ROW_ALIASES, ROW_NAMES, type RowName } from '../../notation/rowNames';

/** A line over or under a staff that is a row of the notation. */
export interface PlainRow {
  readonly row: Exclude<RowName, 'text'>;
  readonly marks: readonly PlainMark[];
}

export interface PlainMark {
  readonly text: string;
  /** Column in its line. */
  readonly column: number;
}

/** Amounts of bends that stand over the staff: half steps by their column. */
export interface BendAmount {
  readonly column: number;
  /** As the notation writes it behind its b: nothing for a whole step. */
  readonly text: string;
}

/** What may stand under a staff but not over it, or the other way round. */
export type Side = 'over' | 'under';

/**
 * A line right over or under a staff as a row; undefined where it is none.
 * @param onsets whether a note begins at a column of the line, for words that belong to notes
 */
export function plainRow(
  columns: string,
  side: Side,
  onsets: (column: number) => boolean,
): PlainRow | undefined {
  const named = NAMED.exec(columns);
  if (named) {
    const row = rowCalled(named[1] ?? '');
    const from = named[0].length;
    const marks = marksOf(' '.repeat(from) + columns.slice(from));
    return row && { row, marks };
  }
  if (/^[\sPM.|-]+$/.test(columns) && /P\.?\s?M/.test(columns))
    return { row: 'palm mute', marks: palmMarks(columns) };
  const marks = marksOf(columns);
  if (marks.length === 0) return undefined;
  const texts = marks.map(({ text }) => text);
  if (isCount(texts)) return { row: 'count', marks };
  if (
    texts.every((text) => /^[DUdu↓↑]$/.test(text)) &&
    texts.length >= 2 &&
    !texts.every((text) => text === 'D')
  )
    return {
      row: 'picking',
      marks: marks.map((mark) => ({ ...mark, text: STROKES[mark.text] ?? mark.text })),
    };
  if (texts.length >= 3 && texts.every((text) => /^[pima]$/.test(text))) return { row: 'picking', marks };
  if (texts.every(isChord)) return side === 'over' ? { row: 'chords', marks } : undefined;
  if (side === 'over') return undefined;
  const words = marks.map((mark) => ({ ...mark, column: nearNote(mark.column, onsets) }));
  return isWords(marks, words, onsets) ? { row: 'words', marks: words } : undefined;
}

/** A row whose word stands before it, some way off. */
const NAMED = /^\s*(count|chords|words|lyrics|picking|fingers|ending|palm mute) {2,}(?=\S)/i;

function rowCalled(word: string): PlainRow['row'] | undefined {
  const name = ROW_ALIASES[word.toLowerCase()] ?? ROW_NAMES.find((one) => one === word.toLowerCase());
  return name === 'text' ? undefined : name;
}

const STROKES: Readonly<Record<string, string>> = { '↓': 'D', '↑': 'U' };

function marksOf(columns: string): PlainMark[] {
  return [...columns.matchAll(/\S+/g)].map(({ 0: text, index }) => ({ text, column: index }));
}

function palmMarks(columns: string): PlainMark[] {
  return [...columns.matchAll(/P\.?\s?M\.?[-.]*/g)].map(({ 0: text, index }) => ({
    text: text.replace(/^P\.?\s?M(?:\.(?!\.))?/, 'PM').padEnd(text.trimEnd().length, '-'),
    column: index,
  }));
}

/** Beats in order, from the first one on; numbers alone are bars unless they count to two at least. */
function isCount(texts: readonly string[]): boolean {
  if (texts.length < 3 || !/^1$/.test(texts[0] ?? '')) return false;
  return (
    texts.every((text) => /^(?:[1-9]|1[0-2]|[&+eatl]|and)$/i.test(text)) && texts.some((text) => text === '2')
  );
}

function isChord(text: string): boolean {
  return /^N\.?C\.?$/i.test(text) || (/^[A-G]/.test(text) && readChordName(text).ok);
}

/** Words are set by eye: one column beside its note is at its note. */
function nearNote(column: number, onsets: (column: number) => boolean): number {
  return [column, column - 1, column + 1].find(onsets) ?? column;
}

/** Words set to notes: spread out, and most of them begin with a note. */
function isWords(
  marks: readonly PlainMark[],
  set: readonly PlainMark[],
  onsets: (column: number) => boolean,
): boolean {
  if (marks.length < 2 || !marks.every(({ text }) => /\p{L}/u.test(text))) return false;
  const gaps = marks
    .slice(1)
    .map((mark, i) => mark.column - (marks[i]?.column ?? 0) - (marks[i]?.text.length ?? 0));
  const spread = gaps.some((gap) => gap > 1);
  const met = set.filter(({ column }) => onsets(column)).length;
  return spread && met * 3 >= marks.length * 2;
}

/** Amounts of bends over a staff, where the line holds nothing else. */
export function bendAmounts(columns: string): BendAmount[] {
  const marks = marksOf(columns);
  if (!marks.every(({ text }) => /^(?:full|half|1\/4|1\/2|3\/4|½|¼|¾)$/i.test(text))) return [];
  const parts: Readonly<Record<string, string>> = {
    half: '1/2',
    '½': '1/2',
    '¼': '1/4',
    '¾': '3/4',
    full: '',
  };
  return marks.map(({ text, column }) => ({ column, text: parts[text.toLowerCase()] ?? text }));
}
