import { findTuning } from '../../instrument/tunings';
import type { Header } from '../../notation/header';

/** Nobody tunes a string up by an octave: these are other strings, as in high strung. */
export const OCTAVE = 12;

/** What there is to know before tuning so, where the tuning has a name. */
export function tuningRemark({ instrument, tuning }: Header): string | undefined {
  return findTuning(tuning.name ?? '', instrument)?.remark;
}
