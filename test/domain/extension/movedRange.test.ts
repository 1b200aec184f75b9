import assert from 'node:assert/strict';
import { common, movedRange } from '../../../src/extension/preview/movedRange';

type Numbers = readonly [line: number, character: number, endLine: number, endCharacter: number];

const range = ([line, character, endLine, endCharacter]: Numbers): Parameters<typeof movedRange>[0] => ({
  start: { line, character },
  end: { line: endLine, character: endCharacter },
});

describe('where a range goes when its text is edited', () => {
  const before: Numbers = [5, 2, 9, 4];
  const cases: readonly [name: string, change: Numbers, text: string, after: Numbers | undefined][] = [
    ['a line above', [1, 0, 1, 0], 'title: x\n', [6, 2, 10, 4]],
    ['a line taken away above', [1, 0, 2, 0], '', [4, 2, 8, 4]],
    ['letters before it on its first line', [5, 0, 5, 1], 'abc', [5, 4, 9, 4]],
    ['letters put in at its start stay outside', [5, 2, 5, 2], 'ab', [5, 4, 9, 4]],
    ['letters put in at its end stay outside', [9, 4, 9, 4], 'ab', [5, 2, 9, 4]],
    ['letters inside on its last line', [9, 1, 9, 1], 'ab', [5, 2, 9, 6]],
    ['a line inside', [7, 0, 7, 0], 'x\n', [5, 2, 10, 4]],
    ['text behind it', [9, 5, 12, 0], 'x', [5, 2, 9, 4]],
    ['its beginning replaced', [4, 0, 6, 3], 'one\ntwo', [5, 3, 8, 4]],
    ['its end replaced', [8, 1, 10, 0], 'x\ny', [5, 2, 8, 1]],
    ['all of it replaced', [5, 2, 9, 4], 'x', undefined],
    ['more than it taken away', [0, 0, 20, 0], '', undefined],
  ];
  for (const [name, change, text, after] of cases)
    it(name, () => {
      assert.deepEqual(movedRange(range(before), [{ range: range(change), text }]), after && range(after));
    });

  it('follows several changes in their order', () => {
    const line = { range: range([0, 0, 0, 0]), text: '\n' };
    assert.deepEqual(movedRange(range(before), [line, line]), range([7, 2, 11, 4]));
  });
});

describe('what two ranges have in common', () => {
  it('is the later start and the earlier end', () => {
    assert.deepEqual(common(range([1, 0, 5, 3]), range([2, 4, 9, 0])), range([2, 4, 5, 3]));
  });
  it('is nothing when they are apart', () => {
    assert.equal(common(range([1, 0, 2, 0]), range([3, 0, 4, 0])), undefined);
  });
  it('is the first when the other is the whole file', () => {
    assert.deepEqual(common(range([1, 0, 2, 0]), undefined), range([1, 0, 2, 0]));
  });
});
