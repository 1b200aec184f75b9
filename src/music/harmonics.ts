/**
 * Natural harmonics: touched at a node, a string sounds its n-th partial. A node at k/n of the length lies at fret
 * 12 · log2(1 / (1 - k/n)); the partial sounds 12 · log2 n half steps above the open (or capoed) string. Physics
 * of the ideal string; the frets that name a node are common practice, no source.
 */
export type Harmonic = NaturalHarmonic | AmbiguousHarmonic;

export interface NaturalHarmonic {
  readonly kind: 'harmonic';
  /** 2 … 8: the string sounds this many times its frequency. */
  readonly partial: number;
  /** Exact fret position of the node, such as 3.86 for the fifth partial written at fret 4. */
  readonly node: number;
  /** Half steps above the string, exact: 27.863 for the fifth partial. */
  readonly semitones: number;
  /** Cents away from the nearest note of equal temperament, -13.69 for the fifth partial. */
  readonly cents: number;
}

/** Fret 3, where two nodes are near. */
export interface AmbiguousHarmonic {
  readonly kind: 'ambiguous';
  /** Decimals that say which is meant. */
  readonly choices: readonly number[];
}

/** A node offered instead of a place without one. */
export interface NodeChoice {
  /** How to write it: a whole fret of convention, or one decimal. */
  readonly fret: number;
  readonly harmonic: NaturalHarmonic;
}

const HIGHEST_PARTIAL = 8;
const LAST_FRET = 24;
/** Frets between a written place and a node that it still means. */
const REACH = 0.25;

/** Whole frets by convention → partial; 3 is left to the writer and 17 is no convention but near the eighth. */
const BY_CONVENTION: Readonly<Record<number, number>> = {
  12: 2,
  7: 3,
  19: 3,
  5: 4,
  24: 4,
  4: 5,
  9: 5,
  16: 5,
};

const NODES: readonly NaturalHarmonic[] = allNodes();

function allNodes(): readonly NaturalHarmonic[] {
  const nodes: NaturalHarmonic[] = [];
  for (let partial = 2; partial <= HIGHEST_PARTIAL; partial++) {
    for (let k = 1; k < partial; k++) {
      const node = -12 * Math.log2(1 - k / partial);
      // 2/4 of the length is a node of the second partial already, and sounds it.
      if (node > LAST_FRET + REACH || nodes.some((other) => Math.abs(other.node - node) < 1e-9)) continue;
      const semitones = 12 * Math.log2(partial);
      const cents = (semitones - Math.round(semitones)) * 100;
      nodes.push(Object.freeze({ kind: 'harmonic', partial, node, semitones, cents }));
    }
  }
  return Object.freeze(nodes.sort((a, b) => a.node - b.node));
}

const AMBIGUOUS: AmbiguousHarmonic = Object.freeze({ kind: 'ambiguous', choices: Object.freeze([3.2, 2.7]) });

/**
 * The natural harmonic touched at a fret, counted from where the string stops (nut, capo or stopped fret).
 * Whole frets 12 7 19 5 24 4 9 16 are read by convention; 3 is ambiguous; any other place means the node within a
 * quarter of a fret, or undefined (offer `nearestNodes` then).
 * @param fret decimals allowed, 0…24.
 * @example harmonicAt(4) // { kind: 'harmonic', partial: 5, node: 3.863, semitones: 27.863, cents: -13.69 }
 */
export function harmonicAt(fret: number): Harmonic | undefined {
  if (fret === 3) return AMBIGUOUS;
  const partial = BY_CONVENTION[fret];
  const [nearest] = byDistance(fret).filter((node) => partial === undefined || node.partial === partial);
  return nearest && Math.abs(nearest.node - fret) <= REACH ? nearest : undefined;
}

/**
 * The nodes nearest to a place, nearest first.
 * @param count how many at most
 * @example nearestNodes(11).map((choice) => choice.fret) // [12, 9.7, 9]
 */
export function nearestNodes(fret: number, count = 3): readonly NodeChoice[] {
  return byDistance(fret)
    .slice(0, count)
    .map((harmonic) => Object.freeze({ fret: writtenFret(harmonic), harmonic }));
}

/** The place as players write it: the whole fret where convention has one, else one decimal. */
export function writtenFret(harmonic: NaturalHarmonic): number {
  const whole = Math.round(harmonic.node);
  return BY_CONVENTION[whole] === harmonic.partial ? whole : Math.round(harmonic.node * 10) / 10;
}

function byDistance(fret: number): NaturalHarmonic[] {
  return [...NODES].sort((a, b) => Math.abs(a.node - fret) - Math.abs(b.node - fret));
}
