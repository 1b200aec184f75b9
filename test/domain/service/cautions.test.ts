import assert from 'node:assert/strict';
import { retuningCaution } from '../../../src/instrument/retuningCaution';
import { createLanguageService } from '../../../src/service/languageService';
import { DEFAULT_SETTINGS } from '../../../src/service/settings';

const text = `tuning: standard

E4 |0---3---|
B3 |--1-----|
G3 |--------|
D3 |--------|
A2 |--------|
E2 |--------|
`;

describe('cautions of a conversion', () => {
  const service = createLanguageService();
  const document = service.open(text, DEFAULT_SETTINGS);
  for (const keep of ['sound', 'shapes'] as const) {
    it(`keeping the ${keep}, stand apart from the other remarks where strings go up`, () => {
      // Open E: strings 5 and 4 a whole step above standard tuning, string 3 a half step (E A D G B E, E B E G♯ B E).
      const change = service.convert(
        document,
        { range: undefined, tuning: 'open E', keep },
        DEFAULT_SETTINGS,
      );
      assert.ok('report' in change);
      assert.deepEqual(change.report.cautions, [retuningCaution(2)]);
      assert.ok(change.report.remarks.includes(retuningCaution(2) ?? ''));
    });
    it(`keeping the ${keep}, are none where strings only go down`, () => {
      const change = service.convert(
        document,
        { range: undefined, tuning: 'DADGAD', keep },
        DEFAULT_SETTINGS,
      );
      assert.ok('report' in change);
      assert.equal(change.report.cautions, undefined);
    });
  }
});
