import { toNumber } from '../../music/fraction';
import type { BarPair } from './alignBars';
import type { NoteChange } from './compareAnswer';
import type { VersionNote } from './versionBars';

/** A note and what became of it. `same` is no change. */
export interface NoteMatch {
  readonly kind: NoteChange | 'same';
  readonly before?: VersionNote;
  readonly after?: VersionNote;
  /** Index of the pair of bars it is told under: the later version's where it has one. */
  readonly pair: number;
  /** Whether it was pushed over a bar sign, into the bar beside. */
  readonly over?: true;
}

interface Left {
  readonly note: VersionNote;
  readonly pair: number;
  taken: boolean;
}

/**
 * Which note became which. Within a pair of bars, in this order: the same in every way; the same fret at the same time
 * played otherwise; the same sound at the same time elsewhere; then the same pitch at another time and another pitch at
 * the same time, whichever first leaves the fewest notes over. Then, between bars beside each other, the same pitch on the same string, which was pushed over a bar sign.
 * What is left is lost or added. Each note is matched once.
 */
export function matchNotes(pairs: readonly BarPair[]): readonly NoteMatch[] {
  const found: NoteMatch[] = [];
  const lost: Left[][] = [];
  const added: Left[][] = [];
  pairs.forEach(({ before, after }, pair) => {
    const ones = (before?.notes ?? []).map((note): Left => ({ note, pair, taken: false }));
    const others = (after?.notes ?? []).map((note): Left => ({ note, pair, taken: false }));
    for (const [kind, keyOf] of EXACT) matchBy(found, kind, ones, others, keyOf);
    for (const step of stepsFor(ones, others)) step(found, ones, others);
    lost.push(ones.filter(({ taken }) => !taken));
    added.push(others.filter(({ taken }) => !taken));
  });
  // From an earlier bar on, so that of notes pushed all along a line each meets the next one of its bar.
  lost.forEach((ones, pair) => {
    for (const near of [pair, pair + 1, pair - 1])
      matchBy(
        found,
        'retimed',
        ones,
        added[near] ?? [],
        ({ pitch, note, played }) => `${pitch} ${note.string} ${played}`,
      );
  });
  for (const one of lost.flat())
    if (!one.taken) found.push({ kind: 'lost', before: one.note, pair: one.pair });
  for (const one of added.flat())
    if (!one.taken) found.push({ kind: 'added', after: one.note, pair: one.pair });
  return found;
}

const EXACT: readonly (readonly [NoteMatch['kind'], (note: VersionNote) => string])[] = [
  ['same', ({ onset, pitch, stop, played }) => `${onset} ${pitch} ${stop} ${played}`],
  ['played', ({ onset, pitch, stop }) => `${onset} ${pitch} ${stop}`],
  ['elsewhere', ({ onset, pitch }) => `${onset} ${pitch}`],
];

type Step = (found: NoteMatch[], ones: readonly Left[], others: readonly Left[]) => void;

const RETIMED: Step = matchTimes;
const REPITCHED: Step = (found, ones, others) => {
  matchBy(found, 'repitched', ones, others, ({ onset, note }) => `${onset} ${note.string}`);
  matchBy(found, 'repitched', ones, others, ({ onset }) => onset);
};

/**
 * A bar that was transposed and one that was shifted both have pitches and times in common with their earlier selves:
 * the order that leaves fewer notes over says which it was. Where it is even, a bar that keeps its rhythm was
 * transposed.
 */
function stepsFor(ones: readonly Left[], others: readonly Left[]): readonly Step[] {
  const leftBy = (steps: readonly Step[]): number => {
    const trial = [ones, others].map((notes) => notes.map((one) => ({ ...one })));
    const [left = [], right = []] = trial;
    for (const step of steps) step([], left, right);
    return [...left, ...right].filter(({ taken }) => !taken).length;
  };
  const timesFirst = [RETIMED, REPITCHED];
  const pitchesFirst = [REPITCHED, RETIMED];
  const [byTimes, byPitches] = [leftBy(timesFirst), leftBy(pitchesFirst)];
  if (byTimes !== byPitches) return byTimes < byPitches ? timesFirst : pitchesFirst;
  return rhythmOf(ones) === rhythmOf(others) ? pitchesFirst : timesFirst;
}

function rhythmOf(notes: readonly Left[]): string {
  const onsets = notes.filter(({ taken }) => !taken).map(({ note }) => note.onset);
  return [...new Set(onsets)].sort().join(' ');
}

/** Pairs notes with the same key, in time order. */
function matchBy(
  found: NoteMatch[],
  kind: NoteMatch['kind'],
  ones: readonly Left[],
  others: readonly Left[],
  keyOf: (note: VersionNote) => string,
): void {
  const waiting = new Map<string, Left[]>();
  for (const other of others) {
    if (other.taken) continue;
    const key = keyOf(other.note);
    const list = waiting.get(key);
    if (list) list.push(other);
    else waiting.set(key, [other]);
  }
  for (const one of ones) {
    if (one.taken) continue;
    const other = waiting.get(keyOf(one.note))?.shift();
    if (other) take(found, kind, one, other);
  }
}

/** Pairs notes of the same pitch at the times that lie nearest, those on the same string first. */
function matchTimes(found: NoteMatch[], ones: readonly Left[], others: readonly Left[]): void {
  const pairs = ones
    .filter(({ taken }) => !taken)
    .flatMap((one) =>
      others
        .filter((other) => !other.taken && other.note.pitch === one.note.pitch)
        .map((other) => ({
          one,
          other,
          stringMoves: one.note.note.string === other.note.note.string ? 0 : 1,
          apart: Math.abs(toNumber(one.note.time) - toNumber(other.note.time)),
        })),
    )
    .sort((a, b) => a.stringMoves - b.stringMoves || a.apart - b.apart);
  for (const { one, other } of pairs) if (!one.taken && !other.taken) take(found, 'retimed', one, other);
}

function take(found: NoteMatch[], kind: NoteMatch['kind'], one: Left, other: Left): void {
  one.taken = true;
  other.taken = true;
  const over = one.pair === other.pair ? {} : { over: true as const };
  found.push({ kind, before: one.note, after: other.note, pair: other.pair, ...over });
}
