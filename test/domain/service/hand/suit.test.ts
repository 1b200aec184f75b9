import assert from 'node:assert/strict';
import { Document } from '../../../../src/notation/document';
import { convert } from '../../../../src/service/change/convert';
import type { ServiceError, SuitRequest, SuitResult, SuitStep } from '../../../../src/service/serviceApi';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { suit } from '../../../../src/service/suit/suit';

function run(
  text: string,
  request: Partial<SuitRequest> = {},
): { result: SuitResult | ServiceError; steps: SuitStep[] } {
  const search = suit(new Document(text), { range: undefined, within: 1, ...request }, DEFAULT_SETTINGS);
  const steps: SuitStep[] = [];
  let step = search.next();
  while (!step.done) {
    steps.push(step.value);
    step = search.next();
  }
  return { result: step.value, steps };
}

const BARS = [1, 2, 3, 4, 1, 2, 3, 4].map((fret) => `${fret}---`).join('|');
const HIGH = Array.from({ length: 8 }, () => '22--').join('|');
const EMPTY = Array.from({ length: 8 }, () => '----').join('|');

/** Eight bars, each with a bass about fret 3 and a note at fret 22 at once: no hand spans it, and no tuning has all the basses open. */
const WIDE = `E4 |${HIGH}|
B3 |${EMPTY}|
G3 |${EMPTY}|
D3 |${EMPTY}|
A2 |${EMPTY}|
E2 |${BARS}|
`;

const TUNE = `E4 |--------|0-------|
B3 |------1-|----1---|
G3 |----0---|------0-|
D3 |--2-----|--2-----|
A2 |3-------|3-------|
E2 |--------|--------|
`;

describe('which tuning suits', () => {
  it('eight bars that no tuning on offer plays end in a report', () => {
    const { result } = run(WIDE);
    assert.ok(!('error' in result));
    assert.equal(result.here, null);
    assert.deepEqual([result.best, result.byStringsChanged], [[], []]);
    assert.ok(result.named.every(({ cost }) => cost === null));
    assert.equal(result.total, result.unplayable);
    assert.match(result.remarks[0] ?? '', /^No tuning on offer plays every note; /);
  });

  it('its tunings are values that convert takes, at the cost it tells', () => {
    const { result, steps } = run(TUNE);
    assert.ok(!('error' in result));
    assert.ok(
      steps.every(({ done, total }) => done <= total) && steps.some(({ phase }) => phase === 'retunings'),
    );
    assert.equal(result.total, result.evaluated + result.unplayable + result.ruledOut);
    for (const { tuning, cost } of [...result.best, ...result.named.slice(0, 5)]) {
      const change = convert(new Document(TUNE), { range: undefined, tuning }, DEFAULT_SETTINGS);
      assert.ok(!('error' in change), tuning);
      if (cost === null || change.edits.length === 0) continue;
      assert.equal(change.report.unplaced.length, 0, tuning);
      assert.ok(Math.abs((change.report.measures?.cost ?? NaN) - cost) < 0.002, `${tuning} ${cost}`);
    }
    assert.equal(JSON.stringify(JSON.parse(JSON.stringify(result))), JSON.stringify(result));
    assert.match(result.remarks.join(' '), /Best for this cost, this passage, these limits: .*\d+ %/);
  });

  it('a passage that is none, or is not one, is told in a sentence', () => {
    const told = (text: string, request: Partial<SuitRequest> = {}): string => {
      const { result } = run(text, request);
      assert.ok('error' in result);
      return result.error;
    };
    assert.match(told('title: Nothing\n'), /There is no tab/);
    assert.match(told('E4|x---|\n'), /no notes with a pitch/);
    assert.match(told('E4|40--|\n'), /mend that first/);
    assert.match(told('part: a\n\nE4|0---|\n\npart: b\n\nE4|0---|\n'), /several parts/);
    assert.match(told('E4|0---|\n\ncapo: 2\n\nE4|0---|\n'), /changes its tuning or capo/);
    assert.match(told(TUNE, { within: 5 }), /0 to 3/);
  });
});
