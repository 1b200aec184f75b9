import { USUAL_LIMITS, type StrainLimits } from '../instrument/strings/limits';

/**
 * Reads what the user has set under `pegbox.strain`: shares above 0, to 1. What is left out is as usual; a value of a
 * wrong kind is passed over, and `tell` gets one sentence that says what was expected.
 * @example readStrain({ warning: 0.75 }, console.error).warning // 0.75
 */
export function readStrain(value: unknown, tell: (problem: string) => void): StrainLimits {
  if (value === undefined || value === null) return USUAL_LIMITS;
  if (typeof value !== 'object' || Array.isArray(value)) {
    tell(
      'The setting pegbox.strain was expected as an object of shares, such as { "warning": 0.7 }; the usual ones hold.',
    );
    return USUAL_LIMITS;
  }
  const given = new Map<string, unknown>(Object.entries(value));
  const share = (name: keyof StrainLimits): number => {
    const one = given.get(name);
    if (one === undefined || one === null) return USUAL_LIMITS[name];
    const least = name === 'slack' ? 0 : Number.MIN_VALUE;
    if (typeof one === 'number' && one >= least && one <= 1) return one;
    tell(
      `The setting pegbox.strain was expected to give "${name}" a share from 0 to 1, such as ${USUAL_LIMITS[name]}; ${USUAL_LIMITS[name]} holds.`,
    );
    return USUAL_LIMITS[name];
  };
  const limits = { information: share('information'), warning: share('warning'), slack: share('slack') };
  const usual =
    limits.information === USUAL_LIMITS.information &&
    limits.warning === USUAL_LIMITS.warning &&
    limits.slack === USUAL_LIMITS.slack;
  return usual ? USUAL_LIMITS : limits;
}
