import { LABELS } from './labels';
import type { Snippet } from './snippet';

/** Every snippet, in the order of its tables. */
export const SNIPPETS: readonly Snippet[] = [...LABELS];
