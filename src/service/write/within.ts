import { compare, subtract, type Fraction } from '../../music/fraction';

/** What stands from a time on up to another one, its times counted from the first. */
export function within<Timed extends { readonly onset: Fraction }>(
  all: readonly Timed[],
  from: Fraction,
  to: Fraction,
): Timed[] {
  return all
    .filter(({ onset }) => compare(onset, from) >= 0 && compare(onset, to) < 0)
    .map((one) => ({ ...one, onset: subtract(one.onset, from) }));
}
