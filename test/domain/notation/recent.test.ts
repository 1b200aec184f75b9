import assert from 'node:assert/strict';
import { parseLine } from '../../../src/notation/parseLine';
import { Recent } from '../../../src/notation/recent';

describe('what was used lately', () => {
  it('is found again', () => {
    const recent = new Recent<string, number>(2);
    recent.set('a', 1);
    assert.equal(recent.get('a'), 1);
    assert.equal(recent.get('b'), undefined);
  });

  it('stays while it is asked for, and goes when it is not', () => {
    const recent = new Recent<number, number>(10);
    recent.set(-1, -1);
    recent.set(-2, -2);
    for (let i = 0; i < 100; i++) {
      recent.set(i, i);
      assert.equal(recent.get(-1), -1, `after ${i + 1} others`);
    }
    assert.equal(recent.get(-2), undefined);
  });

  it('is at most two generations', () => {
    const recent = new Recent<number, number>(10);
    for (let i = 0; i < 1000; i++) recent.set(i, i);
    const kept = Array.from({ length: 1000 }, (_, i) => i).filter((i) => recent.get(i) !== undefined);
    assert.ok(kept.length >= 10 && kept.length <= 20, `${kept.length} kept`);
    assert.ok(kept.includes(999));
  });

  it('gives the same record for the same line', () => {
    assert.equal(parseLine('E4|--0--3--|'), parseLine('E4|--0--3--|'));
  });
});
