import assert from 'node:assert/strict';
import { applyEdits } from '../../../../src/cli/applyEdits';
import type { EditableDocument, Report } from '../../../../src/service/serviceApi';
import { createLanguageService } from '../../../../src/service/languageService';
import type { Settings } from '../../../../src/service/records';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import type { FillRequest, SecondGuitarRequest } from '../../../../src/service/song/songAnswer';

export const service = createLanguageService();

/** A song of our own: chords over words, open tuning, nothing on the strings yet. */
export const LEDGER = `title:  The Harbour Ledger
remark: One of the songs of Oskerry, the invented island that keeps its bees on boats.
tuning: open G
key:    G
meter:  4/4
tempo:  96

[Verse]
chords |G               |C       G       |
words  |Ink on the pier,|salt    on me,  |

Some prose that stays.

chords |Em      D       |N.C.    G       |
words  |count the boats |home    to sea. |
`;

export function opened(text: string, settings: Settings = DEFAULT_SETTINGS): EditableDocument {
  return service.open(text, settings);
}

export interface Filled {
  readonly text: string;
  readonly report: Report;
  readonly edits: number;
}

/** Fills a text; a refusal fails the test. */
export function fill(text: string, more: Omit<FillRequest, 'range'> = {}): Filled {
  const result = service.fillChords(opened(text), { range: undefined, ...more }, DEFAULT_SETTINGS);
  assert.ok(!('error' in result), 'error' in result ? result.error : '');
  return { text: applyEdits(text, result.edits), report: result.report, edits: result.edits.length };
}

/** The same for a second guitar. */
export function second(text: string, more: Omit<SecondGuitarRequest, 'range'>): Filled {
  const result = service.secondGuitar(opened(text), { range: undefined, ...more }, DEFAULT_SETTINGS);
  assert.ok(!('error' in result), 'error' in result ? result.error : '');
  return { text: applyEdits(text, result.edits), report: result.report, edits: result.edits.length };
}
