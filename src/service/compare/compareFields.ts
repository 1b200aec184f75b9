import { formatCapo } from '../../instrument/capo';
import { formatTuning } from '../../instrument/tuningFormat';
import { formatKey } from '../../music/key';
import { formatMeter } from '../../music/meter';
import type { Header } from '../../notation/header';
import type { ComparedField } from './compareAnswer';

/** What each field says, as it would be written; `none` where nothing is. */
const FIELDS: readonly (readonly [string, (header: Header) => string])[] = [
  ['title', ({ title }) => title ?? 'none'],
  ['instrument', ({ instrument }) => instrument.name],
  ['tuning', ({ tuning, instrument }) => formatTuning(tuning, instrument)],
  ['capo', ({ capo }) => formatCapo(capo)],
  ['key', ({ key }) => (key ? formatKey(key) : 'none')],
  ['meter', ({ meter }) => formatMeter(meter)],
  ['tempo', ({ tempo }) => tempo.text],
  ['feel', ({ feel }) => feel],
];

/** The fields that say another thing where a part begins. */
export function compareFields(
  part: string | undefined,
  before: Header | undefined,
  after: Header | undefined,
): readonly ComparedField[] {
  if (!before || !after || before === after) return [];
  return FIELDS.flatMap(([field, tell]) => {
    const [one, other] = [tell(before), tell(after)];
    return one === other ? [] : [{ part: part ?? null, field, before: one, after: other }];
  });
}
