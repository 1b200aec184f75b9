import { LOWER_NOTE } from './ticks';
import type { CountUnit, Part } from './syllables';

/** A syllable at its column. */
export interface Mark {
  readonly column: number;
  readonly text: string;
  /** Ticks from the start of the full bar. */
  readonly tick: number;
}

/** An onset to be pinned; `end` is the last column that its characters take, Infinity where that is not known. */
export interface PlannedOnset {
  readonly column: number;
  readonly tick: number;
  readonly end: number;
}

/**
 * How many syllables a plan has: only those that onsets need; also those at which people count, where they touch
 * nothing; or every syllable that falls on a column, so that what lies between is pinned as closely as can be.
 */
export type Fullness = 'bare' | 'usual' | 'full';

export interface BarToCount {
  readonly start: number;
  readonly end: number;
  /** Ticks of the full bar at which it begins (0 but for a pickup) and ends. */
  readonly from: number;
  readonly to: number;
  /** Ascending. */
  readonly onsets: readonly PlannedOnset[];
}

export interface CountStyle {
  readonly unit: CountUnit;
  readonly fullness: Fullness;
  /** Parts of a beat that people count here. */
  readonly parts: readonly Part[];
  /** Columns past the bar sign where a bar's first syllable stands when no note begins with it. */
  readonly home: number;
}

/**
 * The syllables of one bar. They are a proposal: whether they read as the right times is for the caller to find out by
 * reading them.
 */
export function planBar(bar: BarToCount, style: CountStyle): readonly Mark[] {
  const plan = new BarPlan(bar, style);
  plan.markOnsets();
  plan.markStart();
  plan.markMissingNumbers();
  plan.markBetween();
  return plan.marks;
}

/**
 * The syllable of a tick, or undefined when none names it.
 * @example syllableAt(180, countUnit(meterTicks({ upper: 4, lower: 4 }), false)) // 'e', a quarter past the 2
 */
export function syllableAt(tick: number, unit: CountUnit): string | undefined {
  const beat = Math.floor(tick / unit.ticks);
  const rest = tick - beat * unit.ticks;
  if (rest === 0) return String(beat + 1);
  for (const part of PART_ORDER) if (unit.parts[part] === rest) return part;
  return undefined;
}

/** `&` before `t` and `a` before `l`, which name the same places in dotted beats. */
const PART_ORDER: readonly Part[] = ['&', 'e', 'a', 't', 'l'];

class BarPlan {
  /** Ascending by column. */
  readonly marks: Mark[] = [];

  constructor(
    private readonly bar: BarToCount,
    private readonly style: CountStyle,
  ) {}

  /** A syllable at every onset that has one. */
  markOnsets(): void {
    for (const onset of this.bar.onsets) this.put(onset.column, onset.tick);
  }

  /** The syllable that a bar begins with: without it, a first bar would be taken for a pickup. */
  markStart(): void {
    const { start, from, onsets } = this.bar;
    if (this.marks[0]?.tick === from) return;
    const firstOnset = onsets[0]?.column ?? Infinity;
    for (const column of [start + this.style.home, start]) {
      if (column < firstOnset && this.put(column, from)) return;
    }
  }

  /**
   * The numbers that parts of a beat follow, each as near as can be to where time running evenly has it; a part whose
   * number has no room is taken back.
   */
  markMissingNumbers(): void {
    const { unit } = this.style;
    for (const mark of [...this.marks]) {
      const beat = Math.floor(mark.tick / unit.ticks);
      const number = beat * unit.ticks;
      const before = this.marks[this.marks.indexOf(mark) - 1];
      if (mark.tick === number || before === undefined || before.tick >= number) continue;
      const even =
        before.column + ((mark.column - before.column) * (number - before.tick)) / (mark.tick - before.tick);
      const columns: number[] = [];
      for (let column = before.column + 1; column < mark.column; column++) columns.push(column);
      columns.sort((a, b) => Math.abs(a - even) - Math.abs(b - even));
      const written = columns.some((column) => this.isSafe(column) && this.put(column, number));
      // Without its number it would be a part of another beat; its onset may lie evenly between others.
      if (!written) this.marks.splice(this.marks.indexOf(mark), 1);
    }
  }

  /** Syllables between onsets, where they fall on a column exactly and so change nothing. */
  markBetween(): void {
    const { fullness, unit, parts } = this.style;
    if (fullness === 'bare') return;
    const columnOf = this.evenColumns();
    const add = (tick: number): void => {
      const column = tick > this.bar.from && tick < this.bar.to ? columnOf(tick) : undefined;
      if (column !== undefined && this.isSafe(column)) this.put(column, tick, fullness === 'usual');
    };
    for (let tick = 0; tick < this.bar.to; tick += unit.ticks) add(tick);
    for (const part of parts) {
      const offset = unit.parts[part];
      if (offset === undefined) continue;
      for (let tick = offset; tick < this.bar.to; tick += unit.ticks) {
        if (this.numberBefore(tick) === Math.floor(tick / unit.ticks) * unit.ticks) add(tick);
      }
    }
  }

  /** Tick of the last number no later than a tick. */
  private numberBefore(tick: number): number | undefined {
    return this.marks.findLast((mark) => mark.tick <= tick && mark.tick % this.style.unit.ticks === 0)?.tick;
  }

  /**
   * Which column a tick falls on: on the line that all onsets of the bar lie on, where some of them has no syllable; else
   * between the pins about it.
   */
  private evenColumns(): (tick: number) => number | undefined {
    const { start, end, to, onsets } = this.bar;
    const first = onsets[0];
    const last = onsets.at(-1);
    const onLine = (tick: number, a: Point, b: Point): number | undefined => {
      const column = a.column + ((tick - a.tick) * (b.column - a.column)) / (b.tick - a.tick);
      return Number.isInteger(column) && column >= start && column < end ? column : undefined;
    };
    const unsaid = onsets.some((onset) => this.markAt(onset.column) === undefined);
    if (
      unsaid &&
      first &&
      last &&
      onsets.every((o) => o === first || onLine(o.tick, first, last) === o.column)
    ) {
      if (first !== last) return (tick) => onLine(tick, first, last);
    }
    const pins: Point[] = [
      ...this.marks,
      ...onsets.filter((onset) => this.markAt(onset.column) === undefined),
    ];
    pins.push({ column: end, tick: to });
    pins.sort((a, b) => a.column - b.column);
    return (tick) => {
      const next = pins.findIndex((pin) => pin.tick > tick);
      const a = pins[next - 1];
      const b = pins[next];
      return a && b ? onLine(tick, a, b) : undefined;
    };
  }

  private markAt(column: number): Mark | undefined {
    return this.marks.find((mark) => mark.column === column);
  }

  /** Whether a syllable put there would stand over no note that lacks a syllable of its own. */
  private isSafe(column: number): boolean {
    const { onsets } = this.bar;
    return onsets.every((onset, i) => {
      if (onset.column === column) return false;
      if (onset.column > column || this.markAt(onset.column)) return true;
      const nextColumn = onsets[i + 1]?.column ?? Infinity;
      return Math.min(onset.end, onset.end === Infinity ? nextColumn - 1 : onset.end) < column;
    });
  }

  /** Puts a tick's syllable where it has room, and where `apart` touches no other; tells whether it did. */
  private put(column: number, tick: number, apart = false): boolean {
    const text = syllableAt(tick, this.style.unit);
    if (text === undefined) return false;
    const room = apart ? 1 : 0;
    const taken = (mark: Mark): boolean =>
      mark.column < column + text.length + room && column < mark.column + mark.text.length + room;
    if (column + text.length > this.bar.end || this.marks.some(taken)) return false;
    this.marks.push({ column, text, tick });
    this.marks.sort((a, b) => a.column - b.column);
    return true;
  }
}

interface Point {
  readonly column: number;
  readonly tick: number;
}

/** The parts of a beat that people count where these ticks are played: halves, or the three lower notes of dotted beats. */
export function usualParts(ticks: readonly number[], unit: CountUnit): readonly Part[] {
  if (unit.dotted) return ticks.some((tick) => tick % unit.ticks !== 0) ? ['&', 'a'] : [];
  const third = LOWER_NOTE / 3;
  return ticks.some((tick) => tick % LOWER_NOTE !== 0 && tick % third !== 0) ? ['&'] : [];
}

/** All parts, plainest first. */
export function allParts(unit: CountUnit): readonly Part[] {
  return unit.dotted ? ['&', 'a'] : PART_ORDER;
}
