import assert from 'node:assert/strict';
import { Document } from '../../../../src/notation/document';
import type { Range } from '../../../../src/notation/tabDocument';
import { convert } from '../../../../src/service/change/convert';
import { moveCapo } from '../../../../src/service/change/moveCapo';
import { transpose } from '../../../../src/service/change/transpose';
import type { ChangeResult, Report } from '../../../../src/service/serviceApi';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';

/** A text as written in a test: without the line breaks at its ends. */
export function tab(text: string): string {
  return text.replace(/^\n/, '').replace(/\n *$/, '\n');
}

/** The place of a mark `‹…›` in a text, and the text without it. */
export function marked(text: string): { text: string; range: Range | undefined } {
  const place = (at: number): Range['start'] => {
    const before = text.slice(0, at).replace(/[‹›]/g, '').split('\n');
    return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
  };
  const [start, end] = [text.indexOf('‹'), text.indexOf('›')];
  const range = start < 0 ? undefined : { start: place(start), end: place(end) };
  return { text: text.replace(/[‹›]/g, ''), range };
}

/** What an edit of a text gives. */
export interface Changed {
  readonly text: string;
  readonly report: Report;
}

function changed(
  text: string,
  make: (document: Document, range: Range | undefined) => ChangeResult,
): Changed {
  const { text: plain, range } = marked(tab(text));
  const document = new Document(plain);
  const result = make(document, range);
  assert.ok(!('error' in result), 'error' in result ? result.error : '');
  document.edit(result.edits);
  return { text: document.text(), report: result.report };
}

/** The sentence that refuses a change. */
export function refused(
  text: string,
  make: (document: Document, range: Range | undefined) => ChangeResult,
): string {
  const { text: plain, range } = marked(tab(text));
  const result = make(new Document(plain), range);
  assert.ok('error' in result, 'it was changed');
  return result.error;
}

export type Keep = 'sound' | 'shapes';

export function toTuning(tuning: string, keep: Keep = 'sound') {
  return (document: Document, range: Range | undefined): ChangeResult =>
    convert(document, { range, tuning, keep }, DEFAULT_SETTINGS);
}

export function by(amount: number | string) {
  return (document: Document, range: Range | undefined): ChangeResult =>
    transpose(document, { range, by: amount }, DEFAULT_SETTINGS);
}

export function toCapo(capo: string, keep: Keep = 'sound') {
  return (document: Document, range: Range | undefined): ChangeResult =>
    moveCapo(document, { range, capo, keep }, DEFAULT_SETTINGS);
}

/** A passage, between `‹` and `›`, changed; without marks the whole text. */
export function change(
  text: string,
  make: (document: Document, range: Range | undefined) => ChangeResult,
): Changed {
  return changed(text, make);
}
