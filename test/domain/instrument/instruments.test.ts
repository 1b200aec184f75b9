import assert from 'node:assert/strict';
import fc from 'fast-check';
import { findInstrument, GUITAR, INSTRUMENTS, readInstrument } from '../../../src/instrument/instruments';
import { nameKey, nearestNames } from '../../../src/instrument/nameMatching';
import { letterDistance } from '../../../src/music/letterDistance';
import { retuningCaution } from '../../../src/instrument/retuningCaution';
import { formatTuning, sameTuning, stepsFrom, tuningDistance } from '../../../src/instrument/tuningFormat';
import { findTuning, tuningsFor } from '../../../src/instrument/tunings';
import { errorOf, tuning, valueOf } from './read';
import { TUNING_TABLE } from './tuningTable';

describe('the value of instrument', () => {
  const NAMES: readonly (readonly [string, string])[] = [
    ['guitar', 'guitar'],
    [' Twelve String Guitar ', '12-string guitar'],
    ['12 string', '12-string guitar'],
    ['7-string guitar', 'seven-string guitar'],
    ['five string bass', 'five-string bass'],
    ['uke', 'ukulele'],
    ['LAP-STEEL', 'lap steel'],
    ['tenorbanjo', 'tenor banjo'],
  ];
  for (const [text, name] of NAMES) {
    it(`reads “${text}”`, () => assert.equal(valueOf(readInstrument(text)).name, name));
  }

  it('offers the nearest names for another word', () => {
    const error = errorOf(readInstrument(' mandolyn'));
    assert.equal(error.kind, 'unknown-instrument');
    assert.deepEqual([error.start, error.end], [1, 9]);
    assert.equal(error.suggestions[0], 'mandolin');
    assert.deepEqual(errorOf(readInstrument('xylophone')).suggestions, []);
    assert.equal(errorOf(readInstrument('  ')).kind, 'no-instrument');
  });

  it('holds every instrument of the handbook table', () => {
    for (const row of TUNING_TABLE) assert.ok(findInstrument(row.instrument), row.instrument);
    assert.equal(GUITAR.name, 'guitar');
  });

  it('has one entry a string in every list, and no name twice', () => {
    const keys = new Set<string>();
    for (const each of INSTRUMENTS) {
      assert.equal(each.firstFrets.length, each.usualTuning.split(' ').length, each.name);
      assert.equal(each.partners.length, each.firstFrets.length, each.name);
      assert.ok(
        each.scaleLength >= 100 && each.scaleLength <= 2000 && each.frets >= 1 && each.frets <= 36,
        each.name,
      );
      for (const name of [each.name, ...each.aliases]) {
        assert.ok(!keys.has(nameKey(name)), name);
        keys.add(nameKey(name));
      }
    }
  });

  it('bars only the lap steel by nature', () => {
    assert.deepEqual(
      INSTRUMENTS.filter(({ slide }) => slide).map(({ name }) => name),
      ['lap steel'],
    );
  });

  it('law: no text throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const read = readInstrument(text);
        assert.ok(read.ok || read.error.end <= text.length);
      }),
    );
  });
});

describe('names that are near', () => {
  // Levenshtein's distance with swaps of neighbours; the first two pairs are the textbook's, from memory.
  for (const [a, b, distance] of [
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['', 'abc', 3],
    ['standrad', 'standard', 1],
  ] as const) {
    it(`counts ${distance} from “${a}” to “${b}”`, () => assert.equal(letterDistance(a, b), distance));
  }

  it('come best first', () => {
    assert.deepEqual(nearestNames('mandolyn', ['guitar', 'mandola', 'mandolin']), ['mandolin', 'mandola']);
    assert.deepEqual(nearestNames('', ['guitar']), []);
  });
});

describe('two tunings', () => {
  it('are the same when they sound the same', () => {
    assert.ok(sameTuning(tuning('half step down'), tuning('D#2 G#2 C#3 F#3 A#3 D#4')));
    assert.ok(!sameTuning(tuning('standard'), tuning('drop D')));
    assert.ok(!sameTuning(tuning('DADGAD'), tuning('DADGAD', '12-string guitar')));
    assert.equal(formatTuning(tuning('D#2 G#2 C#3 F#3 A#3 D#4')), 'D#2 G#2 C#3 F#3 A#3 D#4');
  });

  it('are as far apart as the half steps of retuning', () => {
    const standard = tuning('standard');
    assert.deepEqual(stepsFrom(standard, tuning('DADGAD')), [-2, 0, 0, 0, -2, -2]);
    assert.equal(tuningDistance(standard, tuning('DADGAD')), 6);
    assert.equal(tuningDistance(standard, tuning('five-string open G')), 12 + 2 + 0 + 0 + 0 + 2);
    assert.deepEqual(stepsFrom(tuning('five-string open G'), standard), [undefined, 2, 0, 0, 0, 2]);
    assert.deepEqual(stepsFrom(standard, tuning('E2 A2 D3 G3-14c B3 E4')), [0, 0, 0, -0.14, 0, 0]);
  });

  it('law: the distance is the same both ways and 0 for the same tuning', () => {
    const all = TUNING_TABLE.map((row) => tuning(row.name, row.instrument));
    for (const a of all) {
      assert.equal(tuningDistance(a, a), 0);
      for (const b of all) assert.equal(tuningDistance(a, b), tuningDistance(b, a));
    }
  });
});

describe('the caution for strings that are raised', () => {
  // Tension ratios for half steps up: 1.122, 1.260, 1.414 (Mersenne and Taylor, computed).
  for (const [steps, percent] of [
    [1, '12 %'],
    [2, '26 %'],
    [3, '41 %'],
  ] as const) {
    it(`says how much tension ${steps} half steps add, and whom to ask`, () => {
      const caution = retuningCaution(steps) ?? '';
      for (const word of [percent, 'slowly', 'eyes', 'string maker', 'luthier'])
        assert.ok(caution.includes(word), word);
    });
  }

  it('is silent where no string is raised', () => {
    assert.equal(retuningCaution(0), undefined);
    assert.equal(retuningCaution(-2), undefined);
    assert.equal(retuningCaution(NaN), undefined);
  });

  it('goes with a remark on every guitar tuning that raises a string by two half steps or more', () => {
    const standard = tuning('standard');
    for (const each of tuningsFor(GUITAR)) {
      const raised = Math.max(...stepsFrom(standard, tuning(each.name)).map((steps) => steps ?? 0));
      if (raised >= 2) assert.ok(each.remark, each.name);
    }
    assert.match(findTuning('open E', GUITAR)?.remark ?? '', /open D with a capo/);
    assert.match(findTuning('all fifths', GUITAR)?.remark ?? '', /B4/);
  });
});
