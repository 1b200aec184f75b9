import { INSTRUMENTS } from './instruments';
import { LABELS } from './labels';
import type { Snippet } from './snippet';
import { TUNINGS } from './tunings';

/** Every snippet, in the order of its tables. */
export const SNIPPETS: readonly Snippet[] = [...LABELS, ...INSTRUMENTS, ...TUNINGS];
