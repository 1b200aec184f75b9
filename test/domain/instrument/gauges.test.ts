import assert from 'node:assert/strict';
import fc from 'fast-check';
import { formatGauges, readGauges } from '../../../src/instrument/gauges';
import { INSTRUMENTS } from '../../../src/instrument/instruments';
import { errorOf, tuning, valueOf } from './read';

describe('the value of gauges', () => {
  it('is thousandths of an inch, low string first', () => {
    const gauges = valueOf(readGauges('46w 36w 26w 17 13 10', 6));
    assert.deepEqual(
      gauges.map(({ millimetres }) => millimetres),
      [1.1684, 0.9144, 0.6604, 0.4318, 0.3302, 0.254],
    );
    assert.deepEqual(
      gauges.map(({ wound }) => wound),
      [true, true, true, false, false, false],
    );
    assert.equal(formatGauges(gauges), '46w 36w 26w 17 13 10');
  });

  it('may be inches, millimetres, or both', () => {
    for (const text of [
      '.046w 10',
      '0.046w .010',
      '1.1684 mm w, 0.254mm',
      '1.1684w 0.254 mm',
      '46w-10',
      '46 wound 10 plain',
      '.046 in w .010"',
    ]) {
      const gauges = valueOf(readGauges(text, 2), text);
      assert.deepEqual(
        gauges.map(({ millimetres, wound }) => [millimetres, wound]),
        [
          [1.1684, true],
          [0.254, false],
        ],
        text,
      );
    }
  });

  it('names both strings of a course', () => {
    const [low, high] = valueOf(readGauges('47w/27w 10/10', 2));
    assert.equal(low?.partner?.millimetres, 0.6858);
    assert.equal(low.text, '47w/27w');
    assert.equal(high?.partner?.wound, false);
  });

  it('is turned over, and told, where it is written thin to thick on strings that rise', () => {
    const read = readGauges(' 10 13 17 26w 36w 46w', 6, tuning('standard'));
    assert.ok(read.ok);
    assert.equal(formatGauges(read.value), '46w 36w 26w 17 13 10');
    assert.deepEqual(
      read.notices.map(({ kind, suggestions, start, end }) => [kind, suggestions, start, end]),
      [['gauges-reversed', ['46w 36w 26w 17 13 10'], 1, 21]],
    );
  });

  it('stays as written where strings do not rise, or are all alike', () => {
    const ukulele = readGauges('22 28 32 36', 4, tuning('C6', 'ukulele'));
    assert.ok(ukulele.ok && ukulele.notices.length === 0);
    assert.equal(formatGauges(ukulele.value), '22 28 32 36');
    const alike = readGauges('10 10', 2);
    assert.ok(alike.ok && alike.notices.length === 0);
  });

  const ERRORS: readonly (readonly [string, string, string])[] = [
    ['46w 36w 26w 17 13', 'gauge-count', '46w 36w 26w 17 13'],
    ['46w 36w light 17 13 10', 'gauge', 'light'],
    ['460w 36w 26w 17 13 10', 'gauge-range', '460w'],
    ['1.2w 0.9w 0.66w 0.43 0.33 0.25', 'gauge-range', '1.2w'],
    ['1/2/3 36w 26w 17 13 10', 'gauge-range', '1/2/3'],
    ['46w/27w/10 36w 26w 17 13 10', 'gauge', '46w/27w/10'],
    ['46w/ 36w 26w 17 13 10', 'gauge', '46w/'],
  ];
  for (const [text, kind, at] of ERRORS) {
    it(`tells what is wrong with “${text}”`, () => {
      const error = errorOf(readGauges(text, 6), text);
      assert.equal(error.kind, kind, error.message);
      assert.equal(text.slice(error.start, error.end), at);
    });
  }

  it('offers millimetres where numbers look like them', () => {
    const [offer = ''] = errorOf(readGauges('1.2w 0.25', 2)).suggestions;
    assert.equal(offer, '1.2w 0.25 mm');
    assert.deepEqual(
      valueOf(readGauges(offer, 2)).map(({ millimetres }) => millimetres),
      [1.2, 0.25],
    );
  });

  it('reads every instrument’s usual set', () => {
    for (const { name, usualGauges, firstFrets, usualTuning, partners } of INSTRUMENTS) {
      if (usualGauges === undefined) continue;
      const read = readGauges(usualGauges, firstFrets.length, tuning(usualTuning, name));
      assert.ok(read.ok, `${name}: ${read.ok ? '' : read.error.message}`);
      assert.deepEqual(read.notices, [], name);
      read.value.forEach(({ partner }, index) => {
        assert.equal(partner !== undefined, partners[index] !== undefined, name);
      });
    }
  });

  it('law: what is written reads again, and no text throws', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.string({ unit: fc.constantFrom(...'0123456789.w/ m-,"') }),
    );
    fc.assert(
      fc.property(text, fc.integer({ min: 1, max: 4 }), (value, count) => {
        const read = readGauges(value, count);
        if (!read.ok) return assert.ok(read.error.start <= read.error.end && read.error.end <= value.length);
        const again = valueOf(
          readGauges(formatGauges(read.value), count),
          `${value} → ${formatGauges(read.value)}`,
        );
        assert.deepEqual(
          again.map((gauge) => [gauge.millimetres, gauge.wound]),
          read.value.map((gauge) => [gauge.millimetres, gauge.wound]),
        );
      }),
      { numRuns: 5000 },
    );
  });
});
