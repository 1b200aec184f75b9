import type { Target } from '../../playing/target';

/**
 * A neck whose strings sound the half step nearest to what they are tuned to: a name means the fret that players call
 * so, on a string that is tuned some cents off as well.
 */
export function toNearest(target: Target): Target {
  const { fingerboard } = target;
  return {
    ...target,
    fingerboard: {
      ...fingerboard,
      pitches: (index, fret) => fingerboard.pitches(index, fret)?.map(Math.round),
      openMidi: (index) => Math.round(fingerboard.openMidi(index)),
      fretFor: (index, midi) => {
        const off = fingerboard.openMidi(index);
        return fingerboard.fretFor(index, midi + off - Math.round(off));
      },
    },
  };
}
