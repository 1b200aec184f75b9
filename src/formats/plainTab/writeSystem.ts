import { placesThatFit, usualLabel } from '../../notation/labels';
import { parseLine } from '../../notation/parseLine';
import type { Label } from '../../notation/parsedLine';
import { alignBar, type AlignedBar } from './alignBar';
import { cutRuns, type CutRuns } from './barSigns';
import type { GuessKind } from './importAnswer';
import type { Legend } from './legend';
import type { PlainSystem } from './plainSystems';
import type { BendAmount, PlainRow } from './rowsBeside';
import { readSigns, type RunSign } from './runSigns';
import type { Setting } from './setting';
import type { StringCandidate } from './stringCandidate';

/** A system whose columns are settled. */
export interface SettledSystem {
  /** Top line first, as they are to be written. */
  readonly strings: readonly StringCandidate[];
  readonly bodies: readonly string[];
  readonly labels: readonly string[];
  readonly guesses: ReadonlySet<GuessKind>;
  /** Whether a note begins at a column of the text. */
  readonly onsets: (column: number) => boolean;
  /** The column of the new lines, from their first bar sign, for a column of the text. */
  readonly columnFor: (column: number) => number;
}

/** Long necks have 24 frets whatever the instrument usually has; common practice, no source. */
const LAST_FRET = 24;

/**
 * Settles signs, bars and columns of a system.
 * @param amounts of bends that stand over it
 */
export function settle(
  { strings }: PlainSystem,
  setting: Setting,
  legend: Legend,
  amounts: readonly BendAmount[],
): SettledSystem {
  const order = setting.upsideDown ? strings.toReversed() : strings;
  const guesses = new Set<GuessKind>();
  const long = longDashes(order.map(({ run }) => run));
  if (long) guesses.add('alignment');
  const runs = order.map(({ run }) => run.replace(/—/g, long ? '--' : '-'));
  const cut = cutRuns(runs);
  if (cut.unusual || order.some(({ otherBars }) => otherBars)) guesses.add('bars');
  if (cut.crooked) guesses.add('alignment');
  const origin = strings[0]?.origin ?? 0;
  const signs = cut.bars.map((bar) =>
    bar.map(({ text, column }) => {
      const read = readSigns(text, legend, Math.max(setting.instrument.frets, LAST_FRET));
      for (const kind of read.guesses) guesses.add(kind);
      return withAmounts(read.signs, origin + column, amounts, guesses);
    }),
  );
  const bars = cut.bars.map((bar, k) => {
    const aligned = alignBar({ lines: signs[k] ?? [], widths: bar.map(({ text }) => text.length) });
    if (aligned.moved) guesses.add('alignment');
    return aligned;
  });
  const columns = new Columns(cut, bars, signs, origin);
  return {
    strings: order,
    bodies: order.map((_, i) => bodyOf(i, cut, bars)),
    labels: labelsOf(order, setting),
    guesses,
    onsets: (column) => columns.onsets.has(column),
    columnFor: (column) => columns.at(column),
  };
}

/** Whether only two columns for each long dash make the lines of one length. */
function longDashes(runs: readonly string[]): boolean {
  if (!runs.some((run) => run.includes('—'))) return false;
  const spread = (lengths: readonly number[]): number => Math.max(...lengths) - Math.min(...lengths);
  const doubled = runs.map((run) => run.replace(/—/g, '--').length);
  return spread(doubled) < spread(runs.map((run) => run.length));
}

/** Gives a bend the amount that stands over it. */
function withAmounts(
  signs: readonly RunSign[],
  from: number,
  amounts: readonly BendAmount[],
  guesses: Set<GuessKind>,
): readonly RunSign[] {
  if (amounts.length === 0) return signs;
  return signs.map((sign) => {
    if (sign.text !== 'b') return sign;
    const at = from + sign.column;
    const amount = amounts.find(
      ({ column, text }) => column <= at + 2 && column + Math.max(text.length, 3) >= at - 1,
    );
    if (!amount) return sign;
    guesses.add('bends');
    return { ...sign, text: `b${amount.text}` };
  });
}

function bodyOf(line: number, { signs }: CutRuns, bars: readonly AlignedBar[]): string {
  return signs.map((sign, k) => sign + (bars[k]?.texts[line] ?? '')).join('');
}

/** Where the columns of the text went. */
class Columns {
  readonly onsets = new Set<number>();
  private readonly bars: {
    readonly from: number;
    readonly start: number;
    readonly columns: readonly number[];
  }[] = [];
  private width = 0;

  constructor(
    cut: CutRuns,
    bars: readonly AlignedBar[],
    signs: readonly (readonly (readonly RunSign[])[])[],
    origin: number,
  ) {
    bars.forEach(({ columns }, k) => {
      const start = this.width + (cut.signs[k]?.length ?? 1);
      const from = origin + Math.min(...(cut.bars[k] ?? []).map(({ column }) => column));
      this.bars.push({ from, start, columns });
      this.width = start + (columns.at(-1) ?? 0);
      cut.bars[k]?.forEach(({ column }, i) => {
        for (const sign of signs[k]?.[i] ?? [])
          if (sign.kind === 'note') this.onsets.add(origin + column + sign.column);
      });
    });
  }

  at(column: number): number {
    const bar = this.bars.findLast(({ from }) => from <= column) ?? this.bars[0];
    if (!bar) return Math.max(1, column);
    const inside = Math.max(0, column - bar.from);
    const last = bar.columns.length - 1;
    return bar.start + (bar.columns[Math.min(inside, last)] ?? 0) + Math.max(0, inside - last);
  }
}

/** The labels that were written where they are right, else the notes of the strings. */
function labelsOf(strings: readonly StringCandidate[], { tuning, indices, labelsAgree }: Setting): string[] {
  const usual = (withOctave: boolean): string[] =>
    indices.map((index) => usualLabel(tuning, index, withOctave));
  const written = strings.map(({ label }) => label);
  const wanted = labelsAgree ? written : usual(false);
  if (indices.length >= tuning.strings.length) return wanted;
  const plain = [wanted, usual(true)].find(
    (labels) => placesThatFit(labels.flatMap(labelFrom), tuning, 2).length === 1,
  );
  return plain ?? indices.map((index) => String(tuning.strings.length - index));
}

function labelFrom(text: string): Label[] {
  const line = parseLine(`${text} |---|`);
  return line.kind === 'string' ? [line.label] : [];
}

/** The lines of a system with its rows; all bar signs at one column. */
export function systemLines(
  { strings, bodies, labels, columnFor }: SettledSystem,
  over: readonly PlainRow[],
  under: readonly PlainRow[],
): string[] {
  const words = [...over, ...under].map(({ row }) => row);
  // A label alone needs no space before its line; a word does.
  const width = Math.max(...labels.map(({ length }) => length), ...words.map(({ length }) => length + 1));
  const rows = (list: readonly PlainRow[]): string[] =>
    list.map(({ row, marks }) => `${row.padEnd(width)}|${marksText(marks, columnFor)}`);
  const lines = bodies.map((body, i) => {
    const remark = strings[i]?.remark ?? '';
    return `${(labels[i] ?? '').padEnd(width)}${body}${remark === '' ? '' : ` ${remark}`}`;
  });
  return [...rows(over), ...lines, ...rows(under)];
}

function marksText(marks: PlainRow['marks'], columnFor: (column: number) => number): string {
  let text = '';
  for (const mark of marks) {
    const at = Math.max(columnFor(mark.column) - 1, text === '' ? 0 : text.length + 1);
    text = text.padEnd(at) + mark.text;
  }
  return text;
}
