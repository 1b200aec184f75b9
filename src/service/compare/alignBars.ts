import { diffArrays } from 'diff';
import type { VersionBar } from './versionBars';

/** A bar that both versions have, or one that only one of them has. */
export interface BarPair {
  readonly before?: VersionBar;
  readonly after?: VersionBar;
}

/**
 * Lines up the bars of two versions of a part: bars that are the same by the longest common subsequence, and what
 * stands between two of those by likeness, so that a changed bar meets its earlier self and a new one meets none.
 * @returns in the order of both versions
 */
export function alignBars(before: readonly VersionBar[], after: readonly VersionBar[]): readonly BarPair[] {
  const pairs: BarPair[] = [];
  let [i, j] = [0, 0];
  let [lost, added]: [VersionBar[], VersionBar[]] = [[], []];
  const closeGap = (): void => {
    pairs.push(...alignAlike(lost, added));
    [lost, added] = [[], []];
  };
  for (const piece of diffArrays(before.map(keyOf), after.map(keyOf))) {
    for (let n = 0; n < piece.value.length; n++) {
      const [one, other] = [before[i], after[j]];
      if (piece.removed) {
        if (one) lost.push(one);
        i++;
      } else if (piece.added) {
        if (other) added.push(other);
        j++;
      } else {
        closeGap();
        pairs.push({ ...(one && { before: one }), ...(other && { after: other }) });
        i++;
        j++;
      }
    }
  }
  closeGap();
  return pairs;
}

function keyOf({ key }: VersionBar): string {
  return key;
}

/** Above so many pairs of bars they are taken in their order: a whole part that was changed throughout. */
const MOST_PAIRS = 400_000;

/** Pairs of bars that are most alike in all, in order. Bars that have nothing in common do not meet. */
function alignAlike(before: readonly VersionBar[], after: readonly VersionBar[]): readonly BarPair[] {
  if (before.length === 0) return after.map((bar) => ({ after: bar }));
  if (after.length === 0) return before.map((bar) => ({ before: bar }));
  if (before.length * after.length > MOST_PAIRS) return inOrder(before, after);
  const traits = { before: before.map(traitsOf), after: after.map(traitsOf) };
  const width = after.length + 1;
  const best = new Float64Array((before.length + 1) * width);
  const alike = new Float64Array(before.length * after.length);
  for (let i = before.length - 1; i >= 0; i--)
    for (let j = after.length - 1; j >= 0; j--) {
      const score = likeness(traits.before[i], traits.after[j]);
      alike[i * after.length + j] = score;
      const met = score > 0 ? score + (best[(i + 1) * width + j + 1] ?? 0) : 0;
      const apart = Math.max(best[(i + 1) * width + j] ?? 0, best[i * width + j + 1] ?? 0);
      best[i * width + j] = Math.max(met, apart);
    }
  const pairs: BarPair[] = [];
  let [i, j] = [0, 0];
  while (i < before.length && j < after.length) {
    const [one, other] = [before[i], after[j]];
    const score = alike[i * after.length + j] ?? 0;
    const here = best[i * width + j] ?? 0;
    if (one && other && score > 0 && here === score + (best[(i + 1) * width + j + 1] ?? 0)) {
      pairs.push({ before: one, after: other });
      i++;
      j++;
    } else if (here === (best[(i + 1) * width + j] ?? 0)) {
      if (one) pairs.push({ before: one });
      i++;
    } else {
      if (other) pairs.push({ after: other });
      j++;
    }
  }
  return [
    ...pairs,
    ...before.slice(i).map((bar) => ({ before: bar })),
    ...after.slice(j).map((bar) => ({ after: bar })),
  ];
}

function inOrder(before: readonly VersionBar[], after: readonly VersionBar[]): readonly BarPair[] {
  return Array.from({ length: Math.max(before.length, after.length) }, (_, i) => {
    const [one, other] = [before[i], after[i]];
    return { ...(one && { before: one }), ...(other && { after: other }) };
  });
}

interface Traits {
  readonly notes: number;
  readonly sounds: ReadonlySet<string>;
  readonly times: ReadonlySet<string>;
  readonly pitches: ReadonlySet<string>;
  readonly stops: ReadonlySet<string>;
}

function traitsOf({ notes }: VersionBar): Traits {
  return {
    notes: notes.length,
    sounds: new Set(notes.map(({ onset, pitch }) => `${onset} ${pitch}`)),
    times: new Set(notes.map(({ onset }) => onset)),
    pitches: new Set(notes.map(({ pitch }) => pitch)),
    stops: new Set(notes.map(({ onset, stop }) => `${onset} ${stop}`)),
  };
}

/**
 * From 0, nothing in common, to 1. The same sound at the same time counts most, then the same fret (a piece in another
 * tuning), then times and pitches alone. Engineering weights.
 */
function likeness(a: Traits | undefined, b: Traits | undefined): number {
  if (!a || !b) return 0;
  if (a.notes === 0 && b.notes === 0) return 0.5;
  if (a.notes === 0 || b.notes === 0) return 0.05; // an empty bar that was filled, where nothing is more alike
  return (
    0.5 * shared(a.sounds, b.sounds) +
    0.25 * shared(a.stops, b.stops) +
    0.15 * shared(a.times, b.times) +
    0.1 * shared(a.pitches, b.pitches)
  );
}

/** The share of two sets that they have in common. */
function shared(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  let both = 0;
  for (const one of a) if (b.has(one)) both++;
  return both / (a.size + b.size - both);
}
