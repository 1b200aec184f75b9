import { centsBetween, frequencyOf } from '../music/frequency';
import { harmonicAt } from '../music/harmonics';
import { stringNumber, type Tuning } from './tuning';

/** A natural harmonic, or an open string, that is compared with another one. */
export interface Touched {
  /** Player's number. */
  readonly string: number;
  /** Where it is touched, as players write it; 0 for an open string. */
  readonly touched: number;
  /** The string sounds so many times its own frequency; 1 for an open string. */
  readonly partial: number;
  /** Hertz. */
  readonly frequency: number;
}

/** Two strings that should agree at these harmonics. */
export interface HarmonicCheck {
  /** The higher-numbered string comes first. */
  readonly first: Touched;
  readonly second: Touched;
  /** MIDI number of the note that both are near. */
  readonly midi: number;
  /** Cents from the first up to the second when both are tuned as written. */
  readonly cents: number;
  /** Beats a second that are then heard: the difference of the frequencies, hertz. */
  readonly beats: number;
}

/**
 * Harmonics that players tune by: 12, 7, 5 and 4 (common practice, no source); the open string too, since a harmonic
 * is often compared with one. Higher ones are hard to hear.
 */
const TOUCHED: readonly { readonly touched: number; readonly partial: number }[] = [0, 12, 7, 5, 4].flatMap(
  (touched) => {
    const harmonic = touched === 0 ? undefined : harmonicAt(touched);
    if (touched === 0) return [{ touched, partial: 1 }];
    return harmonic?.kind === 'harmonic' ? [{ touched, partial: harmonic.partial }] : [];
  },
);

/** Harmonics farther apart than this, in cents, are not meant to agree. A just major third is 13.7 off the tempered. */
const MOST_CENTS = 17;

/*
 * What makes a pair good, in cents: agreement, then low partials, then strings side by side. Engineering values.
 */
const PARTIAL_COST = 0.3;
const DISTANCE_COST = 0.5;

/**
 * Which two natural harmonics of different strings should agree in this tuning, the best first: as few pairs as link
 * all strings that can be linked, so that each string can be heard against the others. The strings' fundamentals are
 * as the tuning says; partials are whole multiples, so that two tempered strings a fourth apart do not agree quite:
 * 4 · f against 3 · f · 2^(5/12) is 1.96 cents (strings as ideal ones; a stiff string's partials lie higher).
 * @param referencePitch hertz of A4
 * @example harmonicChecks(standard, 440)[1] // strings 6 (fret 5) and 5 (fret 7): E4, 1.96 cents, 0.37 beats a second
 */
export function harmonicChecks(tuning: Tuning, referencePitch: number): readonly HarmonicCheck[] {
  const pairs = tuning.strings.flatMap((_, a) =>
    tuning.strings
      .slice(a + 1)
      .flatMap((_other, above) => bestPair(tuning, a, a + 1 + above, referencePitch)),
  );
  pairs.sort((one, other) => one.cost - other.cost);
  // The cheapest links that join everything (Kruskal): a string is joined once.
  const group = tuning.strings.map((_, index) => index);
  const kept: HarmonicCheck[] = [];
  for (const { a, b, check } of pairs) {
    const [from, to] = [group[a], group[b]];
    if (from === to || from === undefined || to === undefined) continue;
    group.forEach((one, index) => {
      if (one === to) group[index] = from;
    });
    kept.push(check);
  }
  return kept;
}

interface Pair {
  readonly a: number;
  readonly b: number;
  readonly cost: number;
  readonly check: HarmonicCheck;
}

function bestPair(tuning: Tuning, a: number, b: number, referencePitch: number): readonly Pair[] {
  let best: Pair | undefined;
  for (const first of touchedOn(tuning, a, referencePitch)) {
    for (const second of touchedOn(tuning, b, referencePitch)) {
      if (first.partial === 1 && second.partial === 1) continue;
      const cents = centsBetween(first.frequency, second.frequency);
      if (Math.abs(cents) > MOST_CENTS) continue;
      const cost =
        Math.abs(cents) + PARTIAL_COST * (first.partial + second.partial) + DISTANCE_COST * Math.abs(b - a);
      if (best && best.cost <= cost) continue;
      const open = tuning.strings[a]?.pitches[0].midi ?? NaN;
      const check = {
        first,
        second,
        midi: Math.round(open + 12 * Math.log2(first.partial)),
        cents: Math.abs(cents) < 1e-6 ? 0 : cents,
        beats: Math.abs(first.frequency - second.frequency),
      };
      best = { a, b, cost, check };
    }
  }
  return best ? [best] : [];
}

/** A string that begins up the neck is compared open: its nodes lie at no fret of convention. */
function touchedOn(tuning: Tuning, index: number, referencePitch: number): readonly Touched[] {
  const string = tuning.strings[index];
  if (!string) return [];
  const open = frequencyOf(string.pitches[0].midi, referencePitch);
  return TOUCHED.filter(({ partial }) => partial === 1 || string.firstFret === 0).map(
    ({ touched, partial }) => ({
      string: stringNumber(tuning, index),
      touched,
      partial,
      frequency: open * partial,
    }),
  );
}
