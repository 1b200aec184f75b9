import type { StringChange } from '../../instrument/retuning/stringChanges';
import { retuningCaution } from '../../instrument/retuningCaution';
import { stringNumber } from '../../instrument/tuning';
import { stepsFrom } from '../../instrument/tuningFormat';
import { findTuning } from '../../instrument/tunings';
import type { Header } from '../../notation/header';
import { usualTuning } from '../../notation/headerViews';
import { movedBy } from './noteText';

/**
 * What keeps someone from harm on the way to a tuning; nothing where no string goes up or is put on. Above the
 * instrument's usual tuning the full cautions hold. The advice is common practice, no source.
 */
export function retuningCautions(
  changes: readonly StringChange[],
  { tuning, instrument }: Header,
): readonly string[] {
  if (!changes.some(({ kind }) => kind === 'up' || kind === 'add' || kind === 'exchange')) return [];
  const cautions: string[] = [];
  const remark = tuning.name === undefined ? undefined : findTuning(tuning.name, instrument)?.remark;
  if (remark !== undefined) cautions.push(remark);
  const rising = changes.filter(({ kind }) => kind === 'up');
  const above = new Map(
    stepsFrom(usualTuning(instrument), tuning).map((steps, at) => [stringNumber(tuning, at), steps ?? 0]),
  );
  const caution = retuningCaution(Math.max(0, ...rising.map(({ number }) => above.get(number) ?? 0)));
  const most = Math.max(0, ...rising.map(({ halfSteps: steps }) => steps));
  if (caution !== undefined) cautions.push(caution);
  else if (most > 0)
    cautions.push(
      `Strings go up by up to ${movedBy(most)}: tune up slowly and keep your eyes and face away from the strings, as a string can break.`,
    );
  if (changes.some(({ kind }) => kind === 'add' || kind === 'exchange'))
    cautions.push(
      'Use a string that its maker gives for this pitch and length, bring it up slowly, and keep your eyes and face away from it. Change strings one at a time, so that the neck is never let go all at once.',
    );
  return cautions;
}
