import assert from 'node:assert/strict';
import { checkDocument } from '../../../src/checks/checkDocument';
import type { CheckSettings } from '../../../src/checks/check';
import { Document } from '../../../src/notation/document';

export const SETTINGS: CheckSettings = { reach: 130, severities: {} };

interface Mark {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly told: string;
}

const MARK = /^( *)(\^+) (\S.*)$/;

/**
 * Checks a document against the marks that stand under its lines, `^^^ code: message`, and compares all that is told
 * with all that is marked. Throws where no mark stands, so that a test cannot pass by having none.
 */
export function expectTold(marked: string, settings: CheckSettings = SETTINGS): void {
  const text: string[] = [];
  const marks: Mark[] = [];
  for (const line of marked.split('\n')) {
    const mark = MARK.exec(line);
    if (!mark) {
      if (/^ *\^/.test(line)) throw new Error(`A mark without a message: ${line}`);
      text.push(line);
      continue;
    }
    if (text.length === 0) throw new Error('A mark stands above all lines.');
    const start = (mark[1] ?? '').length;
    marks.push({
      line: text.length - 1,
      start,
      end: start + (mark[2] ?? '').length,
      told: mark[3] ?? '',
    });
  }
  if (marks.length === 0) throw new Error('The text has no mark: ^^^ code: message');
  const found = checkDocument(new Document(text.join('\n')), settings).map(
    ({ range, code, severity, message }): Mark => ({
      line: range.start.line,
      start: range.start.character,
      end: range.end.character,
      told: `${severity} ${code}: ${message}`,
    }),
  );
  assert.deepEqual(found, marks);
}
