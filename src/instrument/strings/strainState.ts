import type { StrainLimits } from './limits';
import type { SetLoad, StringLoad } from './stringLoads';

/**
 * How a string stands. `first to break`: of a set strung as the trade strings it, the string nearest to its strength;
 * that is no warning. `outside`: its gauge lies beyond the published sizes, so that its tension is not known.
 */
export type StrainState =
  | 'as usual'
  | 'changed'
  | 'slack'
  | 'first to break'
  | 'information'
  | 'warning'
  | 'error'
  | 'outside'
  | 'unknown';

/** A change of tension below this share is none: gauges and scale lengths are rounded by more. */
const NO_CHANGE = 0.02;

/**
 * How each string of a set stands, in the order of `set.strings`.
 * @example strainStates(stringLoads(twelveStringGuitar), USUAL_LIMITS)[7] // 'first to break', the octave G
 */
export function strainStates({ strings }: SetLoad, limits: StrainLimits): readonly StrainState[] {
  const first = firstToBreak(strings, limits);
  return strings.map((load): StrainState => {
    if (cannotBeStrung(load)) return 'error';
    if (load === first) return 'first to break';
    const share = load.strungAsUsual ? 0 : (load.share ?? 0);
    if (share > limits.warning) return 'warning';
    if (share > limits.information) return 'information';
    if (!load.gauge) return 'unknown';
    if (load.ratio !== undefined && load.ratio < limits.slack) return 'slack';
    if (load.tension === undefined) return 'outside';
    return load.ratio !== undefined && Math.abs(load.ratio - 1) > NO_CHANGE ? 'changed' : 'as usual';
  });
}

/** Whether a string is asked for the least strength of its wire or more; of a wound string, for more than any steel. */
export function cannotBeStrung({ share, beyondSteel }: StringLoad): boolean {
  return beyondSteel || (share ?? 0) >= 1;
}

/** Of the strings that are strung as usual and above the limit of information, the one nearest to its strength. */
function firstToBreak(strings: readonly StringLoad[], limits: StrainLimits): StringLoad | undefined {
  return strings.reduce<StringLoad | undefined>((most, load) => {
    if (!load.strungAsUsual || (load.share ?? 0) <= limits.information) return most;
    return (load.share ?? 0) > (most?.share ?? 0) ? load : most;
  }, undefined);
}

/** Nobody tunes a string up by an octave: these are other strings, as in high strung. */
const OCTAVE = 12;

/** Gauges are sold in steps of more than this share of their tension. */
const SAME_STRING = 0.97;

/**
 * The most half steps by which a string is tuned above its usual pitch without being thinner than usual for it, so that
 * it pulls as much more as its pitch says; 0 where none is. Decimals are cents.
 * @example raisedBy(stringLoads(openE)) // 2
 */
export function raisedBy({ strings }: SetLoad): number {
  return strings.reduce((most, { pitch, usual, ratio, pitchRatio }) => {
    const steps = usual ? Math.round((pitch.midi - usual.midi) * 1e4) / 1e4 : 0;
    const thinner = ratio !== undefined && pitchRatio !== undefined && ratio < pitchRatio * SAME_STRING;
    return steps === OCTAVE || thinner ? most : Math.max(most, steps);
  }, 0);
}
