import { add, type Fraction, ZERO } from '../music/fraction';
import type { Header } from './header';
import { usualTuning } from './headerViews';
import { readBars, type BarsReading, opensRepeat, closesRepeat } from './bars';
import { readCells, type CellNote } from './cells';
import { labelTrouble, placeStrings } from './labels';
import { readNotes, type LineCells } from './notes';
import type { ParsedLine, RowLine, StringLine, Token } from './parsedLine';
import type { BarReading, Problem, Repeat, RowReading, StringReading, SystemReading } from './reading';
import { onsetColumns } from './together';
import { readTimes, type TimeReading } from './time/timeInput';

/** Where a system stands, as far as its reading depends on it. */
export interface SystemPosition {
  readonly firstInPart: boolean;
  readonly firstInSection: boolean;
}

/**
 * Reads a system: which string each line is, its bars, its notes with pitch and exact time. A pure function of the
 * lines, the fields in force and the position; it never fails, and says in `problems` what does not fit.
 */
export function readSystem(
  lines: readonly ParsedLine[],
  header: Header,
  position: SystemPosition,
): SystemReading {
  const strings = lines.flatMap((line, i): { at: number; line: StringLine }[] =>
    line.kind === 'string' ? [{ at: i, line }] : [],
  );
  const rows = lines.flatMap((line, i): { at: number; line: RowLine }[] =>
    line.kind === 'row' ? [{ at: i, line }] : [],
  );
  const problems: Problem[] = [];

  const bars = barsOf(strings, rows, problems);
  const placed = placeLines(strings, header, problems);
  const cells: LineCells[] = strings.map(({ at, line }, i) => {
    const read = readCells(line);
    for (const problem of read.problems) problems.push({ ...problem, line: at });
    return { at, line, cells: read, string: placed[i] ?? { line: at, number: 0, index: -1 } };
  });
  tellLookAlikes(strings, problems);

  const lineNotes = cells.flatMap(({ cells: { notes } }, line) => notes.map((cell) => ({ line, cell })));
  const columns = onsetColumns(lineNotes);
  const times = timesOf(header, bars, cells, columns, rows, position);
  const count = rows.find(({ line }) => line.row === 'count');
  for (const { kind, column, width, text, facts } of times.problems) {
    const mark = count?.line.marks.find((m) => m.column <= column && column < m.column + m.width);
    const start = (mark?.start ?? 0) + column - (mark?.column ?? column);
    problems.push({
      kind,
      line: count?.at ?? 0,
      start,
      end: start + Math.max(1, width),
      facts: { text, ...facts },
    });
  }
  const barReadings = bars.bars.map((bar, i): BarReading => {
    const time = times.bars[i];
    return {
      startColumn: bar.start,
      endColumn: bar.end,
      onset: time?.onset ?? ZERO,
      length: time?.length ?? ZERO,
      pickup: time?.pickup ?? false,
      openSign: bars.signs[bar.opens]?.text ?? '',
      closeSign: bar.closes === undefined ? '' : (bars.signs[bar.closes]?.text ?? ''),
    };
  });
  const timeAt = timeReader(times, barReadings);
  const { notes, stops } = readNotes(cells, columns, barReadings, timeAt, header, problems);
  return {
    strings: placed,
    rows: rows.map(({ at, line }) => rowReading(at, line, timeAt)),
    bars: barReadings,
    notes,
    stops,
    timing: times.timing,
    columnTimes: times.columnTimes,
    length: lengthOf(barReadings),
    repeats: repeatsOf(
      barReadings,
      strings.map(({ line }) => line),
    ),
    problems,
  };
}

interface Placed<L> {
  /** Index in the system's lines. */
  readonly at: number;
  readonly line: L;
}

function barsOf(
  strings: readonly Placed<StringLine>[],
  rows: readonly Placed<RowLine>[],
  problems: Problem[],
): BarsReading {
  const ofStrings = strings.map(({ at, line }) => ({
    line: at,
    width: line.width,
    signs: line.tokens.filter((token) => token.kind === 'bar'),
    contentEnd: contentEnd(line),
  }));
  const ofRows = rows.map(({ at, line }) => ({
    line: at,
    width: line.width,
    signs: line.bars.map((bar) => ({ ...bar, end: bar.start + bar.text.length })),
    contentEnd: Math.max(0, ...line.marks.map((mark) => mark.column + mark.width)),
  }));
  const bars = readBars(ofStrings.length > 0 ? ofStrings : ofRows);
  problems.push(...bars.problems);
  if (ofStrings.length > 0) tellRowBars(ofRows, bars, problems);
  return bars;
}

function contentEnd({ tokens }: StringLine): number {
  const last = tokens.findLast(({ kind }) => kind !== 'dash' && kind !== 'bar');
  return last ? last.column + last.width : 0;
}

/** Rows may leave their bar signs out; those they have stand under the strings'. */
function tellRowBars(
  rows: readonly {
    line: number;
    signs: readonly { text: string; column: number; start: number; end: number }[];
  }[],
  bars: BarsReading,
  problems: Problem[],
): void {
  for (const { line, signs } of rows) {
    const stray = signs.find(
      (sign) =>
        !bars.signs.some(
          ({ first, last }) => sign.column <= last && sign.column + sign.text.length - 1 >= first,
        ),
    );
    if (!stray || (stray === signs.at(-1) && stray.column >= bars.width)) continue;
    problems.push({
      kind: 'row-bar-out-of-line',
      line,
      start: stray.start,
      end: stray.end,
      facts: { column: stray.column, expected: bars.signs.map((sign) => sign.first) },
    });
  }
}

function placeLines(
  strings: readonly Placed<StringLine>[],
  header: Header,
  problems: Problem[],
): StringReading[] {
  if (strings.length === 0) return [];
  const { tuning, instrument } = header;
  const lines = strings.map(({ line }) => line);
  const places = placeStrings(lines, tuning);
  const count = tuning.strings.length;
  const placed = strings.map(({ at }, i): StringReading => {
    const index = places.indices[i] ?? -1;
    return { line: at, index, number: index >= 0 ? count - index : 0 };
  });
  const [top] = strings;
  const labels = lines.map((line) => line.label);
  const names = labels.map((label) => label.text);
  if (places.by === 'guess' && top) {
    problems.push({
      kind: lines.length > count ? 'too-many-strings' : 'strings-left-out',
      line: top.at,
      start: top.line.label.start,
      end: top.line.label.end,
      facts: { lines: lines.length, strings: count, labels: names },
    });
    return placed;
  }
  const trouble = labelTrouble(labels, places.indices, tuning, usualTuning(instrument));
  if (!trouble) return placed;
  if (trouble === 'disagree') tellLabels(strings, places.indices, header, problems);
  else if (top) {
    const kind = trouble === 'upside-down' ? 'upside-down' : 'usual-labels';
    problems.push({
      kind,
      line: top.at,
      start: top.line.label.start,
      end: top.line.label.end,
      facts: { labels: names },
    });
  }
  return placed;
}

function tellLabels(
  strings: readonly Placed<StringLine>[],
  indices: readonly number[],
  header: Header,
  problems: Problem[],
): void {
  strings.forEach(({ at, line }, i) => {
    const index = indices[i] ?? -1;
    // One line at a time: the rest of a set with one wrong label is fine.
    if (labelTrouble([line.label], [index], header.tuning, header.tuning) === undefined) return;
    problems.push({
      kind: 'label-disagrees',
      line: at,
      start: line.label.start,
      end: line.label.end,
      facts: { label: line.label.text, index, number: header.tuning.strings.length - index },
    });
  });
}

function tellLookAlikes(strings: readonly Placed<StringLine>[], problems: Problem[]): void {
  const strange = strings.filter(({ line }) => line.lookAlikes.length > 0);
  const [first] = strange;
  const [span] = first?.line.lookAlikes ?? [];
  if (first && span) {
    const characters = [
      ...new Set(
        strange.flatMap(({ line }) =>
          line.lookAlikes.flatMap(({ start, end }) => [...line.text.slice(start, end)]),
        ),
      ),
    ];
    problems.push({
      kind: 'look-alikes',
      line: first.at,
      ...span,
      facts: { characters, lines: strange.map(({ at }) => at) },
    });
  }
  for (const { at, line } of strings) {
    const [tab] = line.tabs;
    if (tab) problems.push({ kind: 'tab-character', line: at, ...tab, facts: {} });
    tellSpaceInBar(at, line, problems);
  }
}

/** A space inside a bar ends the run; when what follows would have gone on with it, the writer did not mean that. */
function tellSpaceInBar(at: number, line: StringLine, problems: Problem[]): void {
  const { remark } = line;
  if (!remark || line.tokens.at(-1)?.kind === 'bar') return;
  if (!/-.*[-|]|\|/.test(remark.text) || /\p{L}{4}/u.test(remark.text)) return;
  problems.push({ kind: 'space-in-bar', line: at, start: line.bodyEnd, end: remark.start, facts: {} });
}

function timesOf(
  header: Header,
  bars: BarsReading,
  cells: readonly LineCells[],
  columns: readonly number[],
  rows: readonly Placed<RowLine>[],
  position: SystemPosition,
): TimeReading {
  const count = rows.find(({ line }) => line.row === 'count')?.line.marks;
  // In rows alone, without a count, a chord begins where its name stands, as a note would.
  const named = cells.length > 0 || count ? [] : rows.filter(({ line }) => line.row === 'chords');
  const names = named.flatMap(({ line }) => line.marks);
  let width = Math.max(0, ...names.map(({ column }) => column + 1));
  for (const { cells: line } of cells) {
    for (const note of line.notes) width = Math.max(width, note.lastColumn + 1);
    for (const stop of line.stops) width = Math.max(width, stop.column + 1);
  }
  // By column: one more than the last column of what begins there, 0 where nothing does.
  const ends = new Int32Array(width);
  const extend = (column: number, end: number): void => {
    ends[column] = Math.max(end + 1, ends[column] ?? 0);
  };
  for (const { column } of names) extend(column, column);
  const brought = new Map<number, number>();
  let i = 0;
  for (const { cells: line } of cells) {
    for (const note of line.notes) {
      const column = columns[i++] ?? 0;
      extend(column, note.lastColumn);
      const start = signBefore(note, line.notes);
      if (start < column) brought.set(column, Math.min(start, brought.get(column) ?? start));
    }
    for (const stop of line.stops) extend(stop.column, stop.column);
  }
  const onsets: number[] = [];
  const onsetEnds: number[] = [];
  ends.forEach((end, column) => {
    if (end === 0) return;
    onsets.push(column);
    onsetEnds.push(end - 1);
  });
  return readTimes({
    meter: header.meter,
    bars: bars.bars,
    onsets,
    onsetEnds,
    ...(brought.size > 0 && { onsetStarts: onsets.map((column) => brought.get(column) ?? column) }),
    secondDigits: secondDigitColumns(cells.map(({ line }) => line)),
    count,
    firstInPart: position.firstInPart,
    firstInSection: position.firstInSection,
    width: bars.width,
  });
}

/** The column of a sign that touches the note it brings and none before it; the note's own column without one. */
function signBefore({ firstColumn, joinedFrom, techniques }: CellNote, others: readonly CellNote[]): number {
  const sign = techniques.find(
    ({ column, sign: { length } }) => column < firstColumn && column + length === firstColumn,
  );
  const from = joinedFrom === undefined ? undefined : others[joinedFrom];
  if (!sign || !from) return sign?.column ?? firstColumn;
  const ends = from.techniques.map(({ end }) => end).filter((end) => end <= sign.start);
  return Math.max(from.end, ...ends) < sign.start ? sign.column : firstColumn;
}

/** Where the digits of a fret begin in a token that ends with one, of a note or of a bend’s target; -1 where none does. */
function firstDigit({ kind, text }: Token): number {
  if (kind === 'number') return 0;
  return kind === 'bend' || kind === 'pre-bend' ? text.search(/(?<![\d/.])\d+$/) : -1;
}

/** Columns with nothing but second digits of frets, dashes on all other lines. */
export function secondDigitColumns(lines: readonly StringLine[]): ReadonlySet<number> {
  const digits = new Set<number>();
  for (const line of lines) {
    for (const token of line.tokens) {
      const first = firstDigit(token);
      if (first >= 0) for (let k = first + 1; k < token.width; k++) digits.add(token.column + k);
    }
  }
  if (digits.size === 0) return digits;
  for (const line of lines) {
    for (const token of line.tokens) {
      if (token.kind === 'dash') continue;
      const first = firstDigit(token);
      const upTo = first >= 0 ? first + 1 : token.width;
      for (let k = 0; k < upTo; k++) digits.delete(token.column + k);
    }
  }
  return digits;
}

/** The time of any column. A bar's sign has the time of the bar it opens, what lies past the last bar has its end. */
export type TimeAt = (column: number) => Fraction;

function timeReader(times: TimeReading, bars: readonly BarReading[]): TimeAt {
  const { columnTimes } = times;
  const end = lengthOf(bars);
  return (column) => columnTimes[Math.max(0, column)] ?? end;
}

function lengthOf(bars: readonly BarReading[]): Fraction {
  const last = bars.at(-1);
  return last ? add(last.onset, last.length) : ZERO;
}

function rowReading(at: number, line: RowLine, timeAt: TimeAt): RowReading {
  return {
    row: line.row,
    line: at,
    word: line.word,
    marks: line.marks.map(({ text, column, start, end }) => ({
      text,
      column,
      start,
      end,
      onset: timeAt(column),
    })),
  };
}

/** Passages between repeat signs, and what `x3` in a remark says is played three times in all. */
function repeatsOf(bars: readonly BarReading[], strings: readonly StringLine[]): Repeat[] {
  const times = strings.map((line) => line.remark?.times).find((n) => n !== undefined);
  const repeats: Repeat[] = [];
  let firstBar = 0;
  bars.forEach((bar, i) => {
    if (opensRepeat(bar.openSign)) firstBar = i;
    if (closesRepeat(bar.closeSign)) {
      repeats.push({ firstBar, lastBar: i, times: 2 });
      firstBar = i + 1;
    }
  });
  if (times === undefined || bars.length === 0) return repeats;
  const last = repeats.at(-1);
  if (last) repeats[repeats.length - 1] = { ...last, times };
  else repeats.push({ firstBar: 0, lastBar: bars.length - 1, times });
  return repeats;
}
