import { formatFraction, type Fraction } from '../../music/fraction';
import type { Header } from '../../notation/header';
import { parseLine } from '../../notation/parseLine';
import type { BarReading, SystemReading } from '../../notation/reading';
import { readSystem, type SystemPosition } from '../../notation/systemReading';
import { countedLines } from './countedLines';
import { marksOf, plainNoteSaying, sayingsOf, stopSaying } from './sayings';

/** A sign to be put on a string: a fret, or `.` for a stop. */
export interface Put {
  readonly string: number;
  /** Quarter notes from the start of the system. */
  readonly onset: Fraction;
  readonly text: string;
}

/** Lines to put signs on, and where the column of a time is. */
export interface Ground {
  readonly lines: readonly string[];
  readonly columnOf: (onset: Fraction) => number | undefined;
}

/** What is put, and what must be read when it is done. */
export interface Laying {
  readonly header: Header;
  readonly position: SystemPosition;
  readonly bars: readonly Pick<BarReading, 'onset' | 'length' | 'pickup'>[];
  readonly puts: readonly Put[];
  /** What the lines say without the puts; undefined for bars that are empty. */
  readonly before: SystemReading | undefined;
}

/** So many further grounds are tried for the sake of the marks of rows alone. */
const MOST_FOR_MARKS = 6;

/**
 * Puts signs on the first of some grounds that then reads exactly as it should: every sign at its time, everything that
 * stood there before at its own. A count row is written where the columns alone do not say it. Lines in which the marks
 * of rows keep their times, too, are preferred.
 * @returns the lines; undefined where no ground does
 */
export function layIn(laying: Laying, grounds: Iterable<Ground>): string[] | undefined {
  const wanted = wantedSayings(laying);
  const marks = laying.before && marksOf(laying.before);
  const hadCount = laying.before !== undefined && hasCount(laying.before);
  let notesAlone: string[] | undefined;
  let more = 0;
  for (const ground of grounds) {
    if (notesAlone && ++more > MOST_FOR_MARKS) break;
    const lines = putOn(ground, laying);
    if (!lines) continue;
    for (const counted of [false, true]) {
      const tried = counted ? countedLines(lines, laying) : lines;
      if (!tried) continue;
      const reading = readSystem(tried.map(parseLine), laying.header, laying.position);
      // A count that a player wrote stays a count, also where the columns alone would say it.
      if (hadCount && !hasCount(reading)) continue;
      if (sayingsOf(reading).join('\n') !== wanted) continue;
      if (marks === undefined || marksOf(reading) === marks) return tried;
      notesAlone ??= tried;
    }
  }
  return notesAlone;
}

function hasCount({ rows }: SystemReading): boolean {
  return rows.some(({ row }) => row === 'count');
}

function wantedSayings({ bars, puts, before }: Laying): string {
  const own = puts.map(({ string, onset, text }) =>
    text === '.'
      ? stopSaying(string, formatFraction(onset))
      : plainNoteSaying(string, text, formatFraction(onset)),
  );
  const there = before
    ? sayingsOf(before)
    : bars.map(({ length, pickup }, i) => `bar ${i} ${formatFraction(length)} ${pickup ? 'pickup' : ''}`);
  return [...there, ...own].sort().join('\n');
}

const DASH = /^[-–—─−]$/u;
/** What may stand right beside a sign that is put down. */
const BESIDE = /^[-–—─−|│┃¦:]$/u;

/** The lines with every sign on dashes of its string; undefined where there is no room for one. */
function putOn({ lines, columnOf }: Ground, { header, position, puts }: Laying): string[] | undefined {
  const parsed = lines.map(parseLine);
  const { strings } = readSystem(parsed, header, position);
  const texts = lines.map((line) => [...line]);
  for (const { string, onset, text } of puts) {
    const at = strings.find(({ number }) => number === string)?.line;
    const line = at === undefined ? undefined : parsed[at];
    const own = at === undefined ? undefined : texts[at];
    const column = columnOf(onset);
    // String lines hold one character a column as far as signs are read; what does not is read back as something else.
    if (line?.kind !== 'string' || !own || column === undefined) return undefined;
    const start = line.bodyStart + column;
    for (let i = 0; i < text.length; i++) if (!DASH.test(own[start + i] ?? '')) return undefined;
    if (!BESIDE.test(own[start - 1] ?? '') || !BESIDE.test(own[start + text.length] ?? '|')) return undefined;
    [...text].forEach((character, i) => (own[start + i] = character));
  }
  return texts.map((characters) => characters.join(''));
}
