import assert from 'node:assert/strict';
import {
  isCount,
  isNullable,
  isOneOf,
  isText,
  kindOf,
  messageReader,
} from '../../../src/views/messages/message';
import { readFromNeck, readToNeck } from '../../../src/views/messages/neckMessages';

type Said =
  | { readonly kind: 'ready' }
  | { readonly kind: 'place'; readonly line: number; readonly name: string | null; readonly side: 'a' | 'b' };

const read = messageReader<Said>({
  ready: {},
  place: { line: isCount, name: isNullable(isText), side: isOneOf('a', 'b') },
});

describe('messages between a page and the extension', () => {
  const PLACE = { kind: 'place', line: 3, name: null, side: 'a' };

  it('are read when they are what they should be', () => {
    assert.deepEqual(read({ kind: 'ready' }), { kind: 'ready' });
    assert.deepEqual(read(PLACE), PLACE);
  });

  for (const wrong of [
    undefined,
    null,
    'ready',
    {},
    { kind: 'unknown' },
    { kind: 'constructor' },
    { kind: '__proto__' },
    { ...PLACE, line: -1 },
    { ...PLACE, line: '3' },
    { ...PLACE, name: 4 },
    { ...PLACE, side: 'c' },
    { kind: 'place', line: 3, side: 'a' },
  ])
    it(`are passed over otherwise: ${JSON.stringify(wrong)}`, () => assert.equal(read(wrong), undefined));

  it('of the neck are read in both directions', () => {
    assert.ok(readFromNeck({ kind: 'write', string: 3, fret: 2 }));
    assert.equal(readFromNeck({ kind: 'write', string: 3, fret: 2.5 }), undefined);
    assert.ok(readFromNeck({ kind: 'choose', choice: { chord: 'G/B' } }));
    assert.equal(readFromNeck({ kind: 'choose', choice: { chord: 7 } }), undefined);
    assert.ok(readToNeck({ kind: 'neck', answer: { moment: {} }, leftHanded: false, problem: '' }));
    assert.equal(readToNeck({ kind: 'neck', answer: {}, leftHanded: false, problem: '' }), undefined);
  });

  it('that are not understood are told by their kind alone', () => {
    assert.equal(kindOf({ kind: 'secret', text: 'a song' }), '“secret”');
    assert.equal(kindOf(7), 'no message');
  });
});
