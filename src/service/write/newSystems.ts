import { fraction, multiply, toNumber, type Fraction } from '../../music/fraction';
import { barLength } from '../../music/meter';
import { formatNoteName } from '../../music/noteName';
import type { Header } from '../../notation/header';
import type { System, TabDocument } from '../../notation/tabDocument';
import { withOmitted, type OmittedNote } from '../change/omitted';
import { evenGround, sizes } from './grounds';
import { layIn, type Ground, type Laying, type Put } from './layIn';
import { within } from './within';

/** Columns of a system beyond which its bars go on in the next one. */
const WIDEST = 72;
/** Columns a quarter note that are easy to write more into (a sixteenth each). */
const USUAL_COLUMNS = 4;
/** A pickup is shorter than the bars behind it, so that whole bars read the same wherever they stand. */
export const NO_PICKUP = { firstInPart: false, firstInSection: false };
/** What stands before the bars of each string: the label and its room, top line first. */
export type Prefixes = readonly string[];

/**
 * Labels for new lines: those of the last whole system of the part before a line, where it stands under the same
 * tuning, else the notes of the strings.
 */
export function prefixesAt(document: TabDocument, header: Header, line: number): Prefixes {
  const before = document.systems.findLast(
    (system) =>
      system.firstLine < line &&
      system.header.part === header.part &&
      system.header.tuning === header.tuning &&
      isPlain(system),
  );
  if (before) return before.lines.flatMap((one) => (one.kind === 'string' ? [prefixOf(one)] : []));
  const labels = header.tuning.strings
    .map(({ pitches }) => pitches.map(({ name }) => formatNoteName(name)).join('/'))
    .reverse();
  const width = Math.max(...labels.map((label) => label.length));
  return labels.map((label) => `${label.padEnd(width)} `);
}

function prefixOf({ text, bodyStart }: { readonly text: string; readonly bodyStart: number }): string {
  return text.slice(0, bodyStart);
}

/** Whether a system has a line for every string, each named as the tuning names it. */
function isPlain({ reading, header }: System): boolean {
  const labels = new Set(['label-disagrees', 'usual-labels', 'upside-down', 'too-many-strings']);
  return (
    reading.strings.length === header.tuning.strings.length &&
    !reading.problems.some(({ kind }) => labels.has(kind))
  );
}

/** New bars: what is put on them, and until when they last. Times are quarter notes from the start of the first. */
export interface NewBars {
  readonly header: Header;
  readonly prefixes: Prefixes;
  readonly puts: readonly Put[];
  /** Notes without a place, which a row names where they would stand. */
  readonly omitted: readonly OmittedNote[];
  readonly end: Fraction;
}

export interface NewSystem {
  readonly lines: readonly string[];
  /** Quarter notes from the start of the first new bar. */
  readonly start: Fraction;
}

/**
 * Lays down new bars with signs on them, as many bars to a system as have room on a line.
 * @returns each system; undefined where the times cannot be written
 */
export function newSystems({ header, prefixes, puts, omitted, end }: NewBars): NewSystem[] | undefined {
  const length = barLength(header.meter);
  const count = Math.max(1, Math.ceil(toNumber(end) / toNumber(length)));
  const times = puts.map(({ onset }) => onset);
  const least = leastColumns(puts, length);
  const [size = USUAL_COLUMNS] = sizes([...times, length], least);
  const perSystem = Math.max(1, Math.floor(WIDEST / ((length.n * size) / length.d + 1)));
  const systems: NewSystem[] = [];
  for (let first = 0; first < count; first += perSystem) {
    const bars = Math.min(perSystem, count - first);
    const [from, to] = [multiply(length, fraction(first)), multiply(length, fraction(first + bars))];
    const lines = newSystem(header, prefixes, within(puts, from, to), bars, size);
    if (!lines) return undefined;
    const told = withOmitted(lines, within(omitted, from, to), header, NO_PICKUP);
    systems.push({ lines: told, start: from });
  }
  return systems;
}

function newSystem(
  header: Header,
  prefixes: Prefixes,
  puts: readonly Put[],
  count: number,
  size: number,
): string[] | undefined {
  const length = barLength(header.meter);
  const bars = Array.from({ length: count }, (_, i) => ({
    onset: multiply(length, fraction(i)),
    length,
    pickup: false,
  }));
  const laying: Laying = { header, position: NO_PICKUP, bars, puts, before: undefined };
  return layIn(laying, emptyGrounds(laying, prefixes, size));
}

/** Empty bars with more and more columns a quarter note, from a width on that suits all systems. */
function* emptyGrounds({ bars, puts }: Laying, prefixes: Prefixes, least: number): Generator<Ground> {
  const times = [...puts.map(({ onset }) => onset), ...bars.map(({ length }) => length)];
  for (const size of sizes(times, least)) {
    let column = 1;
    const placed = bars.map(({ length }) => {
      const startColumn = column;
      const endColumn = startColumn + (length.n * size) / length.d;
      column = endColumn + 1;
      return { startColumn, endColumn };
    });
    const body = placed.map((bar) => '-'.repeat(bar.endColumn - bar.startColumn)).join('|');
    yield evenGround(
      prefixes.map((prefix) => `${prefix}|${body}|`),
      bars,
      placed,
      size,
    );
  }
}

/** Columns a quarter note that leave a dash between signs, as far as the shortest step and the widest fret ask for it. */
function leastColumns(puts: readonly Put[], length: Fraction): number {
  const times = [...new Set(puts.map(({ onset }) => toNumber(onset)))].sort((a, b) => a - b);
  let step = toNumber(length);
  times.forEach((time, i) => (step = Math.min(step, time - (times[i - 1] ?? -Infinity))));
  const widest = Math.max(1, ...puts.map(({ text }) => text.length));
  return Math.max(USUAL_COLUMNS, Math.ceil((widest + 1) / step - 1e-9));
}
