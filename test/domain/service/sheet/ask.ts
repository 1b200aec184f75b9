import assert from 'node:assert/strict';
import type { SheetAnswer, SheetRequest } from '../../../../src/service/sheet/sheetAnswer';
import { service, settings } from '../cursor';

/** The sheet at the end of a text; the test fails where there is none. */
export function sheetOf(text: string, request: SheetRequest = {}): SheetAnswer {
  const answer = asked(text, request);
  assert.ok(!('error' in answer), 'error' in answer ? answer.error : '');
  return answer;
}

/** Why there is no sheet; the test fails where there is one. */
export function refusalOf(text: string, request: SheetRequest = {}): string {
  const answer = asked(text, request);
  assert.ok('error' in answer, 'a sheet is there');
  return answer.error;
}

function asked(text: string, request: SheetRequest): ReturnType<typeof service.tuningSheet> {
  const document = service.open(text, settings);
  return service.tuningSheet(document, { line: document.lineCount - 1, character: 0 }, request, settings);
}
