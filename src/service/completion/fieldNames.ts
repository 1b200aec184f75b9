import { FIELD_NAMES } from '../../notation/fieldNames';
import { FIELD_GUIDE } from '../fieldGuide';
import type { Offer } from './item';

/**
 * Every field with what it is for.
 * @param bare whether the colon stands there already
 */
export function fieldOffers(bare: boolean): readonly Offer[] {
  return FIELD_NAMES.map((name) => ({
    label: name,
    detail: FIELD_GUIDE[name].what,
    documentation: FIELD_GUIDE[name].values,
    text: bare ? name : `${name}: `,
  }));
}
