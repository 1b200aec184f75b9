// Frets of a shape as people type them.
import assert from 'node:assert/strict';
import { readFrets } from '../../../src/extension/views/fretsText';

const cases: readonly (readonly [text: string, frets: readonly (number | null)[] | undefined])[] = [
  ['x32010', [null, 3, 2, 0, 1, 0]],
  ['x 3 2 0 1 0', [null, 3, 2, 0, 1, 0]],
  [' X-3-2-0-1-0 ', [null, 3, 2, 0, 1, 0]],
  ['10, 12, 12, 11', [10, 12, 12, 11]],
  ['0003', [0, 0, 0, 3]],
  ['C', undefined],
  ['G/B', undefined],
  ['C6', undefined],
  ['3 2 0', undefined],
  ['x 3 2 0 1 100', undefined],
  ['x 3 2 o 1 0', undefined],
  ['', undefined],
];

describe('frets as typed', () => {
  for (const [text, frets] of cases)
    it(`“${text}” ${frets ? 'is a shape' : 'is none'}`, () => assert.deepEqual(readFrets(text), frets));
});
