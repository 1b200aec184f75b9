import assert from 'node:assert/strict';
import { atCursor, hoverLines } from './cursor';

describe('the helper of the feature tests', () => {
  it('throws without a mark, and with two', () => {
    assert.throws(() => atCursor('E |0-|'), /One <\|> is expected/);
    assert.throws(() => atCursor('E<|> |0<|>-|'), /2 stand in it/);
  });

  it('finds line and character of its mark', () => {
    assert.deepEqual(atCursor('a\nb<|>c'), { text: 'a\nbc', place: { line: 1, character: 1 } });
  });

  it('throws where nothing is told', () => {
    assert.throws(() => hoverLines('Let ev<|>ery string ring.'), /Nothing is told/);
  });
});
