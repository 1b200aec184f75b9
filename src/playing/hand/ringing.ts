import type { Item, Moment } from '../moments';

/** A moment with the earlier notes that should sound on through it. */
export interface RingingMoment {
  readonly onset: number;
  /** Notes that begin here, lowest first, muted strokes last. */
  readonly own: readonly Item[];
  /** Earlier notes that a join holds through the moment: their string and finger stay. */
  readonly through: readonly Item[];
  /** Earlier notes whose joined note begins here: it takes their string. */
  readonly sources: readonly Item[];
  /** Earlier notes that should ring on; the hand may let them go. */
  readonly ringing: readonly Item[];
  readonly moment: Moment;
}

/**
 * No more notes than this are followed as ringing at once, those that began last; an older one is let go without a
 * price. Two hands' worth of voices never reach it (engineering value: it bounds the search).
 */
export const MOST_RINGING = 4;

const TOGETHER = 1e-9;

/**
 * Which notes ring through which moments, by their `end`. A note also ends when its own pitch is struck again: that
 * cuts nothing short. A note let go by `MOST_RINGING` does not come back.
 */
export function ringingMoments(moments: readonly Moment[]): RingingMoment[] {
  let sounding: Item[] = [];
  return moments.map((moment, at) => {
    const { onset } = moment;
    const struck = new Set(moment.own.map(({ note }) => note.midi));
    sounding = sounding.filter(({ note, follower }) =>
      follower ? follower.moment > at : note.end > onset + TOGETHER && !struck.has(note.midi),
    );
    const free = sounding.filter((item) => item.follower === undefined);
    const ringing = free.slice(-MOST_RINGING);
    const dropped = new Set(free.slice(0, -MOST_RINGING));
    sounding = sounding.filter((item) => !dropped.has(item));
    sounding.push(...moment.own.filter(({ note }) => note.midi !== undefined));
    return {
      onset,
      own: moment.own,
      through: moment.incoming.filter((item) => item.follower !== undefined && item.follower.moment > at),
      sources: moment.incoming.filter((item) => item.follower?.moment === at),
      ringing,
      moment,
    };
  });
}
