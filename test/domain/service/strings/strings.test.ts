import assert from 'node:assert/strict';
import { createLanguageService } from '../../../../src/service/languageService';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import type {
  StringsAnswer,
  StringsRequest,
  StringStrain,
} from '../../../../src/service/strings/stringsAnswer';

const service = createLanguageService();

function answer(request: StringsRequest): StringsAnswer {
  const found = service.requestedStrings(request, DEFAULT_SETTINGS);
  assert.ok(!('error' in found), JSON.stringify(found));
  return found;
}

function refusal(request: StringsRequest): string {
  const found = service.requestedStrings(request, DEFAULT_SETTINGS);
  assert.ok('error' in found);
  return found.error;
}

function string(found: StringsAnswer, number: number, course = 1): StringStrain {
  const one = found.strings.find((item) => item.number === number && item.course === course);
  assert.ok(one, `string ${number}`);
  return one;
}

function at(text: string, line: number): StringsAnswer {
  return service.strings(service.open(text, DEFAULT_SETTINGS), { line, character: 0 }, DEFAULT_SETTINGS);
}

describe('what the strings bear, as it is answered', () => {
  // Pounds: published unit weights at 25.5 in, strings-and-frets.md §2.5.
  it('each string with its change, its tension and its strength; the whole set', () => {
    const found = answer({ scaleLength: '25.5 in' });
    assert.deepEqual(
      found.strings.map(({ number, note, pounds }) => [number, note, Math.round((pounds ?? 0) * 10) / 10]),
      [
        [6, 'E2', 17.5],
        [5, 'A2', 19.5],
        [4, 'D3', 18.4],
        [3, 'G3', 16.6],
        [2, 'B3', 15.4],
        [1, 'E4', 16.2],
      ],
    );
    assert.ok(found.strings.every(({ state }) => state === 'as usual'));
    assert.ok(Math.abs((found.total?.pounds ?? 0) - 103.5) <= 0.1);
    assert.ok(Math.abs((found.total?.change?.ratio ?? 0) - 1) < 0.002);
    assert.deepEqual(found.told, []);
    assert.match(found.against, /^the usual set of the guitar, 46w 36w 26w 17 13 10, in standard on 648 mm/);
  });

  it('changes count pitch, gauge, length and reference pitch', () => {
    // P8: a whole step is 2^(2/6); T ∝ L² and f²
    assert.ok(Math.abs((string(answer({ tuning: 'drop D' }), 6).change?.ratio ?? 0) - 0.794) < 5e-4);
    assert.ok(
      Math.abs((string(answer({ referencePitch: '415' }), 1).change?.ratio ?? 0) - (415 / 440) ** 2) < 1e-4,
    );
    assert.ok(
      Math.abs((string(answer({ scaleLength: '600 mm' }), 1).change?.ratio ?? 0) - (600 / 648) ** 2) < 1e-4,
    );
    // .011 by .010 of plain steel: 2.680 / 2.215 (§2.4)
    const thicker = string(answer({ gauges: '46w 36w 26w 17 13 11' }), 1);
    assert.ok(Math.abs((thicker.change?.ratio ?? 0) - 2.68 / 2.215) < 1e-3);
    assert.equal(thicker.halfSteps, 0);
    const sum = answer({ tuning: 'open C' });
    const parts = sum.strings.reduce((total, { change }) => total + (change?.newtons ?? NaN), 0);
    assert.ok(Math.abs(parts - (sum.total?.change?.newtons ?? NaN)) < 0.05, 'the parts add up');
  });

  it('wound strings have no figure of strength, and it says why; materials are said in words', () => {
    const found = answer({});
    assert.deepEqual(
      found.strings.map(({ steel }) => steel !== null),
      [false, false, false, true, true, true],
    );
    const remarks = found.remarks.join(' ');
    assert.match(remarks, /Wound strings.*break at the core, whose thickness is rarely published/);
    assert.match(remarks, /Plain steel and nickel-plated wound strings are assumed/);
    assert.match(remarks, /usual set of the guitar is assumed; a gauges field says otherwise/);
    assert.match(remarks, /ASTM A228.*string maker’s figures come first/);
    assert.match(
      answer({ instrument: 'classical guitar' }).remarks.join(' '),
      /Plain nylon and silvered copper/,
    );
    assert.doesNotMatch(answer({ instrument: 'bass' }).remarks.join(' '), /ASTM/);
  });

  it('the octave G of a 12-string guitar gets one line, “the first to break”, and no caution about raising', () => {
    const found = answer({ instrument: '12-string guitar' });
    assert.equal(found.strings.length, 12);
    assert.equal(found.told.length, 1);
    assert.match(found.told[0] ?? '', /^String 3, the second of its course, gauge 8, is the first to break/);
    assert.equal(string(found, 3, 2).state, 'first to break');
    assert.doesNotMatch(found.cautions.join(' '), /raises strings/);
  });

  it('a string that cannot be strung says so with what can be done, and gets no gauge', () => {
    const found = answer({ tuning: 'all fifths' });
    const first = string(found, 1);
    assert.equal(first.state, 'error');
    assert.match(first.told, /cannot be strung in plain steel at this length: B4 at 648 mm/);
    assert.match(first.told, /Tune it lower, take a shorter neck, or say in a gauges field/);
    assert.equal(first.suggestedGauge, null);
    assert.ok((first.steel?.halfStepsToBreaking ?? 0) < 0);
  });

  it('a slack string names a common size that pulls about as usual', () => {
    const found = answer({ tuning: 'drop B' });
    const sixth = string(found, 6);
    assert.equal(sixth.state, 'slack');
    assert.equal(sixth.suggestedGauge, '60w');
    assert.match(sixth.told, /56 % of its usual tension at B1.*60w pulls about as usual/);
    const mended = answer({ tuning: 'drop B', gauges: '60w 44w 30w 20 15 12' });
    assert.ok(Math.abs((string(mended, 6).change?.ratio ?? 0) - 1) < 0.1);
  });

  it('always cautions: slowly, eyes away, the string maker’s figures, a luthier', () => {
    for (const request of [
      {},
      { tuning: 'open E' },
      { tuning: 'all fifths' },
      { instrument: 'lap steel' },
      { instrument: 'mandolin' },
    ]) {
      const cautions = answer(request).cautions.join(' ');
      assert.match(cautions, /slowly/);
      assert.match(cautions, /eyes and face away/);
      assert.match(cautions, /string maker’s figures/);
      assert.match(cautions, /luthier/);
    }
    assert.match(answer({ tuning: 'open E' }).cautions.join(' '), /The whole set pulls 11 % more than usual/);
    assert.match(answer({ tuning: 'open E' }).cautions.join(' '), /up to 2 half steps/);
    assert.match(
      answer({ instrument: 'classical guitar', gauges: '53w 42w 32w 24w 16 12' }).cautions[0] ?? '',
      /steel strings on an instrument that is built for nylon/,
    );
  });

  it('an instrument without a usual set asks for gauges and tells changes by pitch alone', () => {
    const found = answer({ instrument: 'lap steel', tuning: 'open D' });
    assert.equal(found.gaugesAre, 'unknown');
    assert.equal(found.total, null);
    assert.equal(string(found, 1).newtons, null);
    assert.match(
      found.remarks.join(' '),
      /No set of strings is usual for the lap steel.*6 strings in a gauges field/,
    );
    // with gauges the changes count from the same strings in the usual tuning: E4 to D4 is a whole step
    const written = answer({ instrument: 'lap steel', tuning: 'open D', gauges: '36w 30w 26w 18 16 14' });
    assert.ok(Math.abs((string(written, 1).change?.ratio ?? 0) - 0.794) < 5e-4);
    assert.match(written.against, /^the same strings on the same neck/);
  });

  it('what cannot be read is refused in one sentence that says what to change', () => {
    assert.match(refusal({ scaleLength: '0 mm' }), /between 100 mm and 2000 mm/);
    assert.match(refusal({ gauges: '46w 36w' }), /6 strings, and 2 gauges/);
    assert.match(refusal({ gauges: '460w 36w 26w 17 13 10' }), /between \.005 in and \.200 in/);
    assert.match(refusal({ tuning: 'opne E' }), /open E/);
    assert.match(refusal({ instrument: 'gitar' }), /guitar/);
    assert.match(refusal({ referencePitch: '4400' }), /380 to 500/);
  });
});

describe('what the strings bear at a place of a document', () => {
  const text = [
    'tuning: high strung',
    '',
    'E4 |0---|',
    '',
    'tuning: drop D',
    'gauges: 49w 38w 28w 18 14 11',
    'scale length: 25.5 in',
    '',
    'E4 |0---|',
    '',
  ].join('\n');

  it('goes by the fields in force there', () => {
    assert.equal(at(text, 2).gaugesAre, 'octave');
    const below = at(text, 8);
    assert.equal(below.gaugesAre, 'written');
    assert.equal(below.scaleLength, 647.7);
    assert.equal(below.tuning, 'drop D');
    // .049w at E2 is 19.7 lb (§2.5); a whole step lower .794 of it
    assert.ok(Math.abs((string(below, 6).pounds ?? 0) - 19.7 * 0.794) < 0.1);
  });

  it('takes gauges that are written like the usual ones for written', () => {
    const same = at('tuning: high strung\ngauges: 46w 36w 26w 17 13 10\n', 1);
    assert.equal(same.gaugesAre, 'written');
    assert.equal(string(same, 3).state, 'warning');
  });

  it('follows the limits that the user has set', () => {
    const document = service.open('tuning: standard up 2\n', DEFAULT_SETTINGS);
    const state = (strain: typeof DEFAULT_SETTINGS.strain): string =>
      string(service.strings(document, { line: 0, character: 0 }, { ...DEFAULT_SETTINGS, strain }), 1).state;
    assert.equal(state(DEFAULT_SETTINGS.strain), 'information');
    assert.equal(state({ information: 0.5, warning: 0.65, slack: 0.6 }), 'warning');
    assert.equal(state({ information: 0.9, warning: 0.95, slack: 0.6 }), 'changed');
  });
});
