import type { PullOf } from '../../instrument/retuning/retuningOrder';
import { setPull } from '../../instrument/strings/setPull';
import type { Tuning } from '../../instrument/tuning';
import type { Header } from '../../notation/header';

/** How the strings of a header pull in any tuning. */
export interface SheetPullOf {
  readonly pullOf: PullOf;
  /** Whether in newtons; else in shares, each string pulling alike in the usual tuning. */
  readonly inNewtons: boolean;
}

/**
 * The pull of the header's own set of strings, which is on before and after.
 * @param from the tuning that the set comes from; it may have strings that are off afterwards
 */
export function pullUnder(header: Header, from: Tuning): SheetPullOf {
  const { instrument, gauges, scaleLength, referencePitch, tuning } = header;
  const strung = from.strings.length > tuning.strings.length ? from : tuning;
  const set = setPull({ instrument, gauges, scaleLength, referencePitch }, strung);
  return {
    inNewtons: set.unit === 'newtons',
    pullOf: ({ pitches }, number) =>
      set.pull(
        number,
        pitches.map(({ midi }) => midi),
      ),
  };
}
