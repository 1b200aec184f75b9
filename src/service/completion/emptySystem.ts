import type { Header } from '../../notation/header';
import { emptySystem } from '../start/emptySystem';
import { usualLayout } from '../start/layout';
import type { Offer } from './item';

/** A whole system for the tuning in force: a label a string and four bars of dashes. */
export function emptySystemOffer(header: Header): Offer {
  const layout = usualLayout(header.meter);
  const { length } = header.tuning.strings;
  return {
    label: 'empty system',
    detail: `${length} ${length === 1 ? 'string' : 'strings'}, ${layout.bars} bars`,
    documentation: `The strings of the tuning in force, from string 1 down, with ${layout.bars} bars of dashes.`,
    text: emptySystem(header, layout).lines.join('\n'),
  };
}
