import { BARS } from './bars';
import { COLUMNS } from './columns';
import { INSTRUMENTS } from './instruments';
import { LABELS } from './labels';
import { NO_TAB_AT_ALL } from './noTab';
import { SIGNS } from './signs';
import { SLIDES_AND_BENDS } from './slidesAndBends';
import type { Snippet } from './snippet';
import { SYSTEMS } from './systems';
import { TEXT_AROUND } from './textAround';
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
  ...TEXT_AROUND,
  ...SYSTEMS,
  ...NO_TAB_AT_ALL,
];
