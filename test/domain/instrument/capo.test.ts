import assert from 'node:assert/strict';
import fc from 'fast-check';
import { formatCapo, isPartial, readCapo, type Capo } from '../../../src/instrument/capo';
import { errorOf, valueOf } from './read';

describe('the value of capo', () => {
  const READ: readonly (readonly [string, Capo | undefined])[] = [
    ['3', { fret: 3, strings: undefined }],
    ['3rd fret', { fret: 3, strings: undefined }],
    ['fret 3', { fret: 3, strings: undefined }],
    ['none', undefined],
    ['0', undefined],
    ['', undefined],
    ['2 on 5 4 3', { fret: 2, strings: [5, 4, 3] }],
    ['2 on 3 4 5', { fret: 2, strings: [5, 4, 3] }],
    ['2 on 5-3', { fret: 2, strings: [5, 4, 3] }],
    ['2 on strings 5, 4 and 3', { fret: 2, strings: [5, 4, 3] }],
    ['2nd fret on strings 5 to 3', { fret: 2, strings: [5, 4, 3] }],
    ['2 on the strings 6 and 1', { fret: 2, strings: [6, 1] }],
    ['2 on 6-1', { fret: 2, strings: undefined }],
    ['2 on all strings', { fret: 2, strings: undefined }],
  ];
  for (const [text, capo] of READ) {
    it(`reads “${text}”`, () => assert.deepEqual(valueOf(readCapo(text, 6, 22)), capo));
  }

  const ERRORS: readonly (readonly [string, string, string, string | undefined])[] = [
    ['second', 'capo', 'second', undefined],
    ['III', 'capo', 'III', '3'],
    ['022200', 'capo', '022200', '2 on 5 4 3'],
    ['22', 'capo-fret', '22', undefined],
    [' 40th fret', 'capo-fret', '40', undefined],
    ['2 on 7 6', 'capo-string', '7', undefined],
    ['2 on 5-9', 'capo-string', '5-9', undefined],
    ['2 on 5 4 G', 'capo-string', 'G', undefined],
  ];
  for (const [text, kind, at, offer] of ERRORS) {
    it(`tells what is wrong with “${text}”`, () => {
      const error = errorOf(readCapo(text, 6, 22), text);
      assert.equal(error.kind, kind);
      assert.equal(text.slice(error.start, error.end), at);
      if (offer !== undefined) assert.deepEqual(error.suggestions, [offer]);
    });
  }

  it('knows a partial capo', () => {
    assert.equal(isPartial(valueOf(readCapo('2 on 5 4', 6, 22))), true);
    assert.equal(isPartial(valueOf(readCapo('2 on 4 3 2 1', 4, 22))), false);
    assert.equal(isPartial(undefined), false);
  });

  it('law: what is written reads again', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 14 }),
        fc.integer({ min: 1, max: 21 }),
        fc.uniqueArray(fc.integer({ min: 1, max: 14 })),
        (count, fret, numbers) => {
          const strings = numbers.filter((number) => number <= count).sort((a, b) => b - a);
          const partial = strings.length > 0 && strings.length < count;
          const capo: Capo = { fret, strings: partial ? strings : undefined };
          assert.deepEqual(valueOf(readCapo(formatCapo(capo), count, 22)), capo);
        },
      ),
    );
    assert.equal(valueOf(readCapo(formatCapo(undefined), 6, 22)), undefined);
  });

  it('law: no text throws, and errors lie inside it', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.string({ unit: fc.constantFrom(...'0123456789 onstrig-,') }),
    );
    fc.assert(
      fc.property(text, fc.integer({ min: 1, max: 14 }), (value, count) => {
        for (const written of [value, `2 on ${value}`]) {
          const read = readCapo(written, count, 22);
          if (read.ok) continue;
          assert.ok(read.error.start <= read.error.end);
          assert.ok(read.error.end <= written.length + 1);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
