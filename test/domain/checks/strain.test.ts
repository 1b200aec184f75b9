import assert from 'node:assert/strict';
import { checkDocument } from '../../../src/checks/checkDocument';
import type { CheckSettings, Diagnostic } from '../../../src/checks/check';
import { allTunings } from '../../../src/instrument/tunings';
import { INSTRUMENTS } from '../../../src/instrument/instruments';
import { Document } from '../../../src/notation/document';
import { applyMend } from './apply';
import { expectTold, SETTINGS } from './marked';

const CODES = ['string-near-breaking', 'string-slack', 'tuning-raises-strings'];

function told(text: string, settings: CheckSettings = SETTINGS): readonly Diagnostic[] {
  return checkDocument(new Document(text), settings).filter(({ code }) => CODES.includes(code));
}

const brief = (text: string, settings?: CheckSettings): string[] =>
  told(text, settings).map(({ severity, code, range }) => `${range.start.line + 1} ${severity} ${code}`);

const CAUTION =
  'Tune slowly and keep your eyes and face away from the strings: a string can break. The string maker’s figures decide; ask a luthier.';

describe('what is told of the strings', () => {
  // tunings.md row 31: 1.16 × the least strength of .008; bending it to .008 leaves no other caution to give.
  it('an error where a string cannot be strung, with ways out', () => {
    expectTold(
      `
tuning: all fifths
gauges: 56w 42w 26w 15 10 8
`.replace(
        'tuning: all fifths\n',
        `tuning: all fifths\n        ^^^^^^^^^^ error string-near-breaking: String 1 cannot be strung in plain steel at this length: B4 at 648 mm asks 116 % of the least strength of gauge 8 (ASTM A228). Tune it lower, or take a shorter neck. ${CAUTION} On a full-size neck (648 mm) no plain steel string bears the high B4: string 1 needs a shorter neck or another note.\n`,
      ),
    );
  });

  // strings-and-frets.md §2.3: .010 E4 is at .534 of the least strength, and six half steps double it.
  it('information above 60 %, a warning above 70 %, by the share', () => {
    assert.deepEqual(brief('tuning: standard up 1\n'), []);
    assert.deepEqual(brief('tuning: standard up 2\n'), ['1 information string-near-breaking']);
    assert.deepEqual(brief('tuning: standard up 3\n'), ['1 warning string-near-breaking']);
    assert.deepEqual(brief('tuning: standard up 6\n'), ['1 error string-near-breaking']);
  });

  it('the user’s limits, and the user’s severity above them', () => {
    const strain = { information: 0.9, warning: 0.95, slack: 0.5 };
    assert.deepEqual(brief('tuning: standard up 3\n', { ...SETTINGS, strain }), [
      '1 information tuning-raises-strings',
    ]);
    assert.deepEqual(brief('tuning: drop B\n', { ...SETTINGS, strain }), []);
    assert.deepEqual(brief('tuning: standard up 6\n', { ...SETTINGS, strain }), [
      '1 error string-near-breaking',
    ]);
    const severities = { 'string-near-breaking': 'hint' as const };
    assert.deepEqual(brief('tuning: standard up 3\n', { ...SETTINGS, severities }), [
      '1 hint string-near-breaking',
    ]);
  });

  it('one diagnostic for one thing: what strings near breaking say is not said again', () => {
    for (const tuning of ['standard up 3', 'CGDAEG', 'all fifths', 'E2 A2 D3 G3 B3 A4'])
      assert.equal(told(`tuning: ${tuning}\n`).length, 1, tuning);
    const [found] = told('tuning: CGDAEG\n');
    assert.match(
      found?.message ?? '',
      /String 1, gauge 10, bears 76 %.*up to 5 half steps.*eyes and face.*luthier/,
    );
    assert.match(found?.message ?? '', /lighter strings than usual/);
    assert.deepEqual(brief('instrument: classical guitar\ntuning: standard up 3\n'), [
      '2 information tuning-raises-strings',
    ]);
  });

  it('stands at the field that brought it about, and only there', () => {
    assert.deepEqual(brief('gauges: 46w 36w 26w 17 13 10\nscale length: 780 mm\n'), [
      '1 warning string-near-breaking',
    ]);
    assert.deepEqual(brief('scale length: 780 mm\nreference pitch: 442\n'), [
      '1 warning string-near-breaking',
    ]);
    const later = 'tuning: CGDAEG\n\nE4 |0---|\n\nkey: G\n\nE4 |0---|\n';
    assert.deepEqual(brief(later), ['1 warning string-near-breaking']);
    assert.deepEqual(brief('tuning: CGDAEG\n\nG4 |0---|\n\ngauges: 56w 42w 26w 15 10 8\n\nG4 |0---|\n'), [
      '1 warning string-near-breaking',
      '5 warning string-near-breaking',
    ]);
    assert.deepEqual(brief('tuning: blorp\n'), []);
  });

  it('both strings of a course', () => {
    const [found] = told('instrument: 12-string guitar\ntuning: standard up 2\n');
    assert.equal(found?.severity, 'warning');
    assert.match(found.message, /String 3, the second of its course, gauge 8, bears 92 %/);
    assert.match(found.message, /String 1, gauge 10, bears 67 %/);
  });

  it('mends a slack set by common sizes, and a string near breaking by a lower tuning', () => {
    const slack = told('tuning: drop B\n')[0];
    assert.deepEqual(
      slack?.mends.map(({ title }) => title),
      ['Say that the gauges are 60w 44w 30w 20 15 12, which pull about as usual'],
    );
    const [first] = slack.mends;
    assert.ok(first);
    assert.equal(applyMend('tuning: drop B\n', first), 'tuning: drop B\ngauges: 60w 44w 30w 20 15 12\n');
    const near = told('tuning: all fifths\n')[0];
    assert.deepEqual(
      near?.mends.map(({ title }) => title),
      [
        'Tune string 1 down to F4',
        'Tune all strings 6 half steps lower',
        'Say that the scale length is 458 mm',
      ],
    );
    for (const mend of near.mends) {
      const left = brief(applyMend('tuning: all fifths\n', mend));
      assert.ok(!left.join().includes('string-near-breaking'), mend.title);
    }
  });

  it('nothing of any instrument as it is usually strung and tuned, also at 442 Hz', () => {
    for (const { name } of INSTRUMENTS)
      for (const pitch of [440, 442])
        assert.deepEqual(brief(`instrument: ${name}\nreference pitch: ${pitch}\n`), [], name);
  });

  /*
   * Named tunings that an ordinary set does not suit. Drop B and open B lower string 6 five half steps; BEAD on an
   * ordinary bass lowers every string as far; the others raise a plain string (shares in the loads' tests). Everything
   * else in the table of the trade is quiet.
   */
  it('only of the tunings of the trade that an ordinary set does not suit', () => {
    const found = new Map<string, string[]>();
    for (const { instrument, name } of allTunings()) {
      const lines = brief(`instrument: ${instrument}\ntuning: ${name}\n`).map(
        (line) => line.split(' ')[1] ?? '',
      );
      if (lines.length > 0) found.set(`${instrument}: ${name}`, lines);
    }
    const guitar = [...found].filter(([key]) => key.startsWith('guitar:'));
    assert.deepEqual(guitar, [
      ['guitar: drop B', ['information']],
      ['guitar: open B', ['information']],
      ['guitar: all fifths', ['error']],
      ['guitar: CGDAEG', ['warning']],
      ['guitar: augmented fourths', ['information']],
    ]);
    assert.deepEqual(found.get('bass: BEAD'), ['information']);
    assert.deepEqual(found.get('12-string guitar: open A'), ['warning']);
    assert.equal(found.get('12-string guitar: open G'), undefined);
    assert.equal(found.get('mandolin: standard'), undefined);
  });
});
