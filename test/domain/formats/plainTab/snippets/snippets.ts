import { BARS } from './bars';
import { COLUMNS } from './columns';
import { INSTRUMENTS } from './instruments';
import { LABELS } from './labels';
import type { Snippet } from './snippet';
import { SIGNS } from './signs';
import { SLIDES_AND_BENDS } from './slidesAndBends';
import { TUNINGS } from './tunings';

/** Every snippet, in the order of its tables. */
export const SNIPPETS: readonly Snippet[] = [
  ...LABELS,
  ...INSTRUMENTS,
  ...TUNINGS,
  ...SLIDES_AND_BENDS,
  ...SIGNS,
  ...BARS,
  ...COLUMNS,
];
