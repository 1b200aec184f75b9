import type { HandConstantName } from './constants';
import type { Stop } from './fingering';
import { THUMB, type Frame } from './frame';

/** A grip with its fingers, as the cost sees it. */
export interface HeldGrip {
  readonly stops: readonly Stop[];
  readonly fingers: readonly number[];
  /** Bits of the strings that ring open. */
  readonly opens: number;
  /** Bits of the strings that are struck together; where they are strummed, strings between them must be silent. */
  readonly struck: number;
  /** Bits of all strings that sound or are struck muted. */
  readonly busy: number;
  /** Fret of the index finger from the nut. */
  readonly position: number;
}

/**
 * What a grip is weighed as: a shape by itself, a chord of four notes or more in a passage (strummed, or with notes
 * that ring on), or one to three notes of a line.
 */
export type Weighing = 'shape' | 'strummed chord' | 'chord' | 'line';

/** The position above which open strings are charged: the third fret. */
const OPEN_FREE = 3;
/** Empty strings between neighbouring fingers that cost nothing. */
const APART_FREE = 2;
const BARRE_NAMES = ['barre1', 'barre1', 'barre2', 'barre3', 'barre4'] as const;

/** Calls `add` with each term that is not 0: its constant, how much of it, and the share of it that counts. */
export function eachTerm(
  grip: HeldGrip,
  weighing: Weighing,
  frame: Frame,
  add: (name: HandConstantName, amount: number, share: number) => void,
): void {
  const line = weighing === 'line';
  const share = line ? frame.k.lineShare : weighing === 'shape' ? 1 : frame.k.chordShare;
  const { position, opens } = grip;
  const above = position - frame.zero - 1;
  if (above > 0) add(line ? 'linePosition' : 'position', above, line ? 1 : share);
  const high = position - frame.zero - OPEN_FREE;
  if (opens !== 0 && high > 0) add(line ? 'lineOpenHigh' : 'openHigh', high * bits(opens), line ? 1 : share);
  if (!frame.slide) {
    fingerTerms(grip, line, frame, share, add);
  }
  if (weighing === 'shape' || weighing === 'strummed chord') silentTerms(grip, share, add);
}

function fingerTerms(
  grip: HeldGrip,
  line: boolean,
  frame: Frame,
  share: number,
  add: (name: HandConstantName, amount: number, share: number) => void,
): void {
  const { stops, fingers } = grip;
  let before = 0;
  let used = 0;
  const { k, x } = frame;
  for (let finger = 1; finger <= THUMB; finger++) {
    const first = stopOf(finger);
    if (!first) continue;
    used++;
    if (finger === THUMB) continue;
    const lower = before > 0 ? stopOf(before) : undefined;
    if (lower) {
      const steps = finger - before;
      const frets = first.fret - lower.fret;
      const wide = (x[first.fret] ?? 0) - (x[lower.fret] ?? 0) - k.relaxed * steps;
      if (wide > 0) add('stretch', wide / 10, share);
      if (frets > steps) add('beyond', frets - steps, share);
      const skipped = steps - 1 - Math.max(0, frets - 1);
      if (skipped > 0) add('skipped', skipped, share);
      if (!line) {
        const empty = emptyBetween(grip, before, finger) - APART_FREE;
        if (empty > 0) add('apart', empty, share);
      }
    }
    barreTerms(grip, finger, first.fret, share, add);
    before = finger;
  }
  for (let at = 0; at < stops.length; at++) {
    for (let other = 0; other < at; other++) {
      const [a, b] = [stops[at], stops[other]];
      const [f, g] = [fingers[at] ?? 0, fingers[other] ?? 0];
      if (!a || !b || a.fret !== b.fret || f === g || f === THUMB || g === THUMB) continue;
      if (f > g !== a.index > b.index) add('order', 1, share);
    }
  }
  if (line) {
    if (stopOf(3)) add('lineFinger3', 1, 1);
    if (stopOf(4)) add('lineFinger4', 1, 1);
    return;
  }
  if (used > 0) add('finger', used, share);
  if (stopOf(3)) add('finger3', 1, share);
  if (stopOf(4)) add('finger4', 1, share);
  if (used > 0 && !stopOf(1)) add('noIndex', 1, share);

  function stopOf(finger: number): Stop | undefined {
    for (let at = 0; at < stops.length; at++) if (fingers[at] === finger) return stops[at];
    return undefined;
  }
}

function barreTerms(
  grip: HeldGrip,
  finger: number,
  fret: number,
  share: number,
  add: (name: HandConstantName, amount: number, share: number) => void,
): void {
  const [from, to] = reachOf(grip, finger);
  if (from === to) return;
  add(BARRE_NAMES[finger] ?? 'barre1', 1, share);
  let pressed = 0;
  for (const one of grip.fingers) if (one === finger) pressed++;
  if (pressed > 2) add('barreString', pressed - 2, share);
  if (finger > 1 && lowerAt(grip, to + 1, fret)) add('barreOver', 1, share);
  let silent = 0;
  for (let index = from + 1; index < to; index++) if (!((grip.busy >> index) & 1)) silent++;
  if (silent > 0) add('barreMuted', silent, share);
}

function silentTerms(
  grip: HeldGrip,
  share: number,
  add: (name: HandConstantName, amount: number, share: number) => void,
): void {
  let silent = 0;
  const low = 31 - Math.clz32(grip.struck & -grip.struck);
  const high = 31 - Math.clz32(grip.struck);
  for (let index = low + 1; index < high; index++) {
    if ((grip.busy >> index) & 1) continue;
    silent++;
  }
  if (silent > 0) add('muted', silent, share);
}

/** First and last string of a finger. */
function reachOf(grip: HeldGrip, finger: number): readonly [number, number] {
  let from = Infinity;
  let to = -1;
  grip.stops.forEach(({ index }, at) => {
    if (grip.fingers[at] !== finger) return;
    from = Math.min(from, index);
    to = Math.max(to, index);
  });
  return [from, to];
}

function lowerAt(grip: HeldGrip, index: number, fret: number): boolean {
  if ((grip.opens >> index) & 1) return true;
  return grip.stops.some((stop) => stop.index === index && stop.fret < fret);
}

/** Strings between two fingers that neither of them touches. */
function emptyBetween(grip: HeldGrip, a: number, b: number): number {
  const [aFrom, aTo] = reachOf(grip, a);
  const [bFrom, bTo] = reachOf(grip, b);
  return Math.max(0, bFrom - aTo - 1, aFrom - bTo - 1);
}

function bits(mask: number): number {
  let count = 0;
  for (let rest = mask; rest !== 0; rest &= rest - 1) count++;
  return count;
}
