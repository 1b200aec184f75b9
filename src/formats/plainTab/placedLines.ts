import type { Instrument } from '../../instrument/instrument';
import type { Tuning } from '../../instrument/tuning';
import { usualTuning } from '../../notation/headerViews';
import { labelAgrees, placesThatFit } from '../../notation/labels';
import type { Label } from '../../notation/parsedLine';
import { parseLine } from '../../notation/parseLine';
import type { PlainSystem } from './plainSystems';
import type { Setting } from './setting';

/** What the lines of a system come to once instrument and tuning are settled. */
export type Placed = Pick<
  Setting,
  'instrument' | 'tuning' | 'upsideDown' | 'indices' | 'labelsAgree' | 'tuningBy'
>;

/** The labels of a system, top to bottom. */
export function labelsOf({ strings }: PlainSystem): Label[] {
  return strings.flatMap(({ label }) => {
    const line = parseLine(`${label} |---|`);
    return line.kind === 'string' ? [line.label] : [];
  });
}

/** Whether labels name the strings of a tuning, or some of them in order. */
export function labelsFit(labels: readonly Label[], tuning: Tuning, upsideDown: boolean): boolean {
  const inOrder = upsideDown ? labels.toReversed() : labels;
  const n = tuning.strings.length;
  if (inOrder.length === n) return inOrder.every((label, i) => labelAgrees(label, tuning, n - 1 - i));
  return inOrder.length < n && placesThatFit(inOrder, tuning, 1).length > 0;
}

/**
 * Sets the lines of a system on the strings of a tuning.
 * @param n how many lines there are
 * @param turned whether the words say that they stand upside down; labels that fit decide against it
 */
export function placeLines(
  instrument: Instrument,
  tuning: Tuning,
  labels: readonly Label[],
  n: number,
  tuningBy: Setting['tuningBy'],
  turned: boolean,
): Placed {
  const count = tuning.strings.length;
  const upright = labels.length > 0 && labelsFit(labels, tuning, false);
  const numbered = labels.some(({ number }) => number !== undefined);
  const upsideDown = upright ? false : labels.length > 0 && labelsFit(labels, tuning, true) ? true : turned;
  const inOrder = upsideDown ? labels.toReversed() : labels;
  const byLabels = n < count ? neighbours(inOrder, tuning) : undefined;
  const byUsual = n < count ? neighbours(inOrder, usualTuning(instrument)) : undefined;
  const indices =
    byLabels ?? byUsual ?? Array.from({ length: n }, (_, i) => n - 1 - i + Math.max(0, count - n));
  const labelsAgree =
    numbered ||
    (labels.length > 0 && inOrder.every((label, i) => labelAgrees(label, tuning, indices[i] ?? -1)));
  return { instrument, tuning, upsideDown, indices, labelsAgree, tuningBy };
}

/** Ways to place labels that are looked at. */
const MOST_WAYS = 16;

/** The strings that labels name: those that lie side by side, where labels allow it. */
function neighbours(labels: readonly Label[], tuning: Tuning): readonly number[] | undefined {
  const ways = placesThatFit(labels, tuning, MOST_WAYS);
  return ways.find((way) => (way[0] ?? 0) - (way.at(-1) ?? 0) === way.length - 1) ?? ways[0];
}
