import { lazily } from '../lazily';
import { degree, type Degree } from './degree';

/** A kind of chord: its symbol after the root and its tones above the root. */
export interface ChordType {
  /** What stands after the root: '' for major, `m7`, `sus4`. */
  readonly symbol: string;
  /** How far the name is from everyday, 0 … 13: the base of the cost. */
  readonly rank: number;
  readonly degrees: readonly Degree[];
  /** Those of `degrees` that a player leaves out without changing the name. */
  readonly optional: readonly Degree[];
  /** Bit n is the tone n half steps above the root; bit 0 is the root. */
  readonly mask: number;
  /** How players say it; '' where the symbol says it all. */
  readonly words: string;
}

/**
 * Symbol, degrees after the root (`?` may be missing) and words, by rank. Which tones a symbol means and what may
 * be left out is common practice, no source; the ranks were measured on the shapes of the open data set chords-db
 * and on grips of our own (test/domain/music/chord). A fifth may be missing only where it is perfect and something
 * else defines the chord.
 */
const ROWS: Readonly<Record<number, readonly string[]>> = {
  0: [': 3 5 : major', 'm: b3 5 : minor'],
  4: [
    '7: 3 5? b7 : dominant seventh',
    'maj7: 3 5? 7 : major seventh',
    'm7: b3 5? b7 : minor seventh',
    'sus4: 4 5 : suspended fourth, no third',
    'dim: b3 b5 : diminished',
    'aug: 3 #5 : augmented',
    'dim7: b3 b5 bb7 : diminished seventh',
  ],
  5: [
    'sus2: 2 5 : suspended second, no third',
    '6: 3 5? 6 : sixth',
    'm6: b3 5? 6 : minor sixth',
    'm7b5: b3 b5 b7 : half-diminished',
    '7sus4: 4 5? b7 : seventh, suspended fourth, no third',
    'add9: 3 5? 9 : added ninth',
    '9: 3 5? b7 9 : dominant ninth',
    'maj9: 3 5? 7 9 : major ninth',
    'm9: b3 5? b7 9 : minor ninth',
  ],
  6: [
    'm(add9): b3 5? 9 : minor, added ninth',
    '6/9: 3 5? 6 9 : sixth and ninth',
    'm(maj7): b3 5? 7 : minor, major seventh',
    '9sus4: 4 5? b7 9 : ninth, suspended fourth, no third',
    '7(no3): 5 b7 : seventh, no third',
    'm11: b3 5? b7 9? 11 : minor eleventh',
    '7#5: 3 #5 b7 : augmented seventh',
    '7b9: 3 5? b7 b9 : seventh, flat ninth',
    '7#9: 3 5? b7 #9 : seventh, sharp ninth',
    'maj7#5: 3 #5 7 : augmented, major seventh',
    'm(maj7)b5: b3 b5 7',
  ],
  7: [
    'm7(add11): b3 5? b7 11 : minor seventh, added eleventh',
    'add11: 3 5? 11 : added eleventh',
    'm(add11): b3 5? 11 : minor, added eleventh',
    '7b5: 3 b5 b7 : seventh, flat fifth',
    '7#11: 3 5? b7 #11',
    'maj7#11: 3 5? 7 #11',
    'maj7b5: 3 b5 7',
    'm6/9: b3 5? 6 9 : minor sixth and ninth',
    '13sus4: 4 5? b7 9? 13 : thirteenth, suspended fourth, no third',
    'sus2sus4: 2 4 5 : suspended second and fourth, no third',
    '7sus2: 2 5 b7 : seventh, suspended second, no third',
    'maj7(no3): 5 7 : major seventh, no third',
    '6(no3): 5 6 : sixth, no third',
    '11: 3 5? b7 9? 11 : dominant eleventh',
    'm(maj9): b3 5? 7 9',
    'm9b5: b3 b5 b7 9',
    '7b9sus4: 4 5? b7 b9',
    '7b13: 3 5 b7 b13',
    '9#11: 3 5? b7 9 #11',
    '9b5: 3 b5 b7 9',
    '9#5: 3 #5 b7 9',
    '13b9: 3 5? b7 b9 13',
  ],
  8: [
    '(b5): 3 b5 : major, flat fifth',
    '13: 3 5? b7 9? 11? 13 : dominant thirteenth',
    '7(add11): 3 5? b7 11 : seventh, added eleventh',
    'maj7(add11): 3 5? 7 11',
    'maj11: 3 5? 7 9? 11 : major eleventh',
    'maj7sus2: 2 5 7 : major seventh, suspended second, no third',
    'maj7sus4: 4 5 7 : major seventh, suspended fourth, no third',
    '6sus2: 2 5 6 : sixth, suspended second, no third',
    '9b13: 3 5 b7 9 b13',
    'maj9#11: 3 5? 7 9 #11',
    'maj9#5: 3 #5 7 9',
    '13#9: 3 5? b7 #9 13',
    '13#11: 3 5? b7 9? #11 13',
    '6/9#11: 3 5? 6 9 #11',
    '7#5b9: 3 #5 b7 b9',
    '7#5#9: 3 #5 b7 #9',
    '7b9b13: 3 5 b7 b9 b13',
    '7#9b13: 3 5 b7 #9 b13',
  ],
  9: [
    'maj13: 3 5? 7 9? 11? 13 : major thirteenth',
    'm13: b3 5? b7 9? 11? 13 : minor thirteenth',
    'dim(add9): b3 b5 9',
    'm11b5: b3 b5 b7 9? 11',
    'm7b5(add11): b3 b5 b7 11',
    'm(maj7)(add11): b3 5? 7 11',
    'm(maj11): b3 5? 7 9? 11',
    'maj9sus4: 4 5? 7 9',
    'maj9b5: 3 b5 7 9',
    '13b5: 3 b5 b7 9? 13',
    'maj13#11: 3 5? 7 9? #11 13',
    '6#11: 3 5? 6 #11',
    '7b5b9: 3 b5 b7 b9',
    '7b5#9: 3 b5 b7 #9',
    '7b9#9: 3 5? b7 b9 #9',
    '7b9#11: 3 5? b7 b9 #11',
    '7#9#11: 3 5? b7 #9 #11',
  ],
  10: [
    '6sus4: 4 5 6 : sixth, suspended fourth, no third',
    '7#11b13: 3 5 b7 #11 b13',
    '9#11b13: 3 5 b7 9 #11 b13',
    '9#5#11: 3 #5 b7 9 #11',
    '7#5b9#11: 3 #5 b7 b9 #11',
    '13b9#11: 3 5? b7 b9 #11 13',
    '13#9#11: 3 5? b7 #9 #11 13',
    'maj7#9#11: 3 5? 7 #9 #11',
    'maj7b9: 3 5? 7 b9',
    'maj7b13: 3 5 7 b13',
    'm7#5: b3 #5 b7',
    'm#5: b3 #5',
    'm(b6): b3 5 b6',
    'm7(b6): b3 5 b7 b6',
    'm7b9: b3 5? b7 b9',
    'aug(add9): 3 #5 9',
  ],
  11: [
    'm(maj13): b3 5? 7 9? 11? 13',
    '6/9sus4: 4 5 6 9',
    '7b9#11b13: 3 5 b7 b9 #11 b13',
    '7#9#11b13: 3 5 b7 #9 #11 b13',
    'm9#5: b3 #5 b7 9',
    'm(maj7)b6: b3 5 7 b6',
  ],
  12: [
    'm(maj9)b6: b3 5 7 9 b6',
    'dim7(maj7): b3 b5 bb7 7',
    '7#5sus4: 4 #5 b7',
    '7b9b13sus4: 4 5 b7 b9 b13',
    'aug(add#9): 3 #5 #9',
  ],
  13: ['maj7#5sus4: 4 #5 7', 'm11#5: b3 #5 b7 9? 11', 'maj9#5sus4: 4 #5 7 9', 'mb6b9: b3 b6 b9'],
};

/** The power chord: for two tones, and for the upper part of a slash chord. */
export const POWER: ChordType = makeType('5: 5 : power chord, no third', 4);

/** Every written-out type, simplest first. */
export const writtenTypes = lazily((): readonly ChordType[] =>
  Object.freeze(
    Object.entries(ROWS).flatMap(([rank, rows]) => rows.map((row) => makeType(row, Number(rank)))),
  ),
);

function makeType(row: string, rank: number): ChordType {
  const [symbol = '', tones = '', words = ''] = row.split(':').map((part) => part.trim());
  const texts = tones.split(' ');
  return newType(
    symbol,
    rank,
    texts.map((text) => degree(text.replace('?', ''))),
    texts.filter((text) => text.endsWith('?')).map((text) => degree(text.slice(0, -1))),
    words,
  );
}

function newType(
  symbol: string,
  rank: number,
  degrees: readonly Degree[],
  optional: readonly Degree[],
  words: string,
): ChordType {
  const mask = degrees.reduce((bits, { halfSteps }) => bits | (1 << halfSteps), 1);
  return Object.freeze({
    symbol,
    rank,
    degrees: Object.freeze(degrees),
    optional: Object.freeze(optional),
    mask,
    words,
  });
}

/** Plain types to which one tone may be added, for sets that no row names. */
const BASES = new Set(
  (
    ' m dim aug sus2 sus4 7 maj7 m7 m(maj7) 6 m6 m7b5 dim7 7sus4 add9 m(add9) 9 maj9 m9 6/9 m6/9 9sus4 ' +
    '7#5 maj7#5 7(no3) maj7(no3) 6(no3) sus2sus4 11 m11 13'
  ).split(' '),
);

/** What may be added, and what it adds to the rank of its base. */
const ADDED: readonly (readonly [string, number])[] = [
  ['9', 5],
  ['11', 5],
  ['13', 5],
  ['#11', 7],
  ['b9', 11],
  ['#9', 11],
  ['b13', 11],
];
const ADDED_TO_SYMMETRIC = 3;

/**
 * Types made by adding one tone to a plain one, such as `m7(add13)`: the cheapest for each set that no row names.
 */
export const addedTypes = lazily((): readonly ChordType[] => Object.freeze(makeAdded()));

function makeAdded(): ChordType[] {
  const named = new Set(writtenTypes().map((type) => type.mask));
  const found = new Map<number, ChordType>();
  for (const base of writtenTypes().filter(({ symbol }) => BASES.has(symbol))) {
    const symmetric = base.symbol.startsWith('dim') || base.symbol.startsWith('aug');
    const extra: readonly (readonly [string, number])[] =
      base.symbol === 'dim' || base.symbol === 'aug' ? [['maj7', 5]] : [];
    for (const [text, cost] of [...ADDED, ...extra]) {
      const tone = degree(text === 'maj7' ? '7' : text);
      const mask = base.mask | (1 << tone.halfSteps);
      if (mask === base.mask || named.has(mask)) continue;
      if (text === '#9' && !base.degrees.includes(degree('3'))) continue;
      const rank = base.rank + cost + (symmetric ? ADDED_TO_SYMMETRIC : 0);
      if ((found.get(mask)?.rank ?? Infinity) <= rank) continue;
      const symbol = `${base.symbol}(add${text})`;
      found.set(mask, newType(symbol, rank, [...base.degrees, tone], base.optional, ''));
    }
  }
  return [...found.values()];
}
