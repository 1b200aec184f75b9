import { HAND_CONSTANTS, type HandConstants } from './constants';

/** What a hand may do and what is asked of the search. */
export interface HandOptions {
  /**
   * `total`: the least sum. `hardest`: in each group the hardest move as easy as it can be, then the least sum below
   * it; moves that no fingering avoids are set aside.
   */
  readonly objective: 'total' | 'hardest';
  /** False: closed, every note is stopped (harmonics and muted strokes are not). */
  readonly openStrings: boolean;
  /** Player's string numbers that may be used; undefined for all. A muted stroke ignores it. */
  readonly strings: readonly number[] | undefined;
  /** Thumb over the neck, on the string with the highest number, within two frets of the lowest finger. */
  readonly thumb: boolean;
  readonly caps: HandCaps;
  readonly constants: HandConstants;
  /** 1 to 3. Each answer plays some one bar in another position and on other places than the answers before it. */
  readonly alternatives: number;
  /** The bar of a note, by id. */
  readonly barOf: (id: number) => number;
  /** The section of a note, by id, for `hardest`; one group for the whole passage when left out. */
  readonly groupOf?: (id: number) => number;
  /** Tempo: seconds for a quarter note, above 0. */
  readonly secondsPerQuarter: number;
  /** Added to the cost when a player asks for another fingering of the same notes. */
  readonly weights?: RefingerWeights;
}

export interface HandCaps {
  /** Widest span of the fingers along the neck, millimetres. */
  readonly span?: number;
  /** Most fingers at once, 0 to 4, the thumb counted. */
  readonly fingers?: number;
  /** False: no finger stops more than one string. */
  readonly barres?: boolean;
  /** Highest fret, counted as frets are written. */
  readonly highestFret?: number;
}

export interface RefingerWeights {
  /** Cost of each fret of each stopped note. */
  readonly lowOnNeck?: number;
  /** Cost of each stopped note. */
  readonly moreOpen?: number;
}

/**
 * Options where nothing is asked for: least sum, open strings, every string, no thumb, no caps, one answer, one bar,
 * a quarter note in half a second.
 * @example handOptions({ openStrings: false })
 */
export function handOptions(more: Partial<HandOptions> = {}): HandOptions {
  return {
    objective: 'total',
    openStrings: true,
    strings: undefined,
    thumb: false,
    caps: {},
    constants: HAND_CONSTANTS,
    alternatives: 1,
    barOf: () => 0,
    secondsPerQuarter: 0.5,
    ...more,
  };
}
