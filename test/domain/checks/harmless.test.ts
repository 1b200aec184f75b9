import assert from 'node:assert/strict';
import { checkDocument } from '../../../src/checks/checkDocument';
import { CHECKS } from '../../../src/checks/checks';
import { Document } from '../../../src/notation/document';
import { applyMend } from './apply';
import { SETTINGS } from './marked';

/** The codes whose mends may be taken all at once; a new one is a decision and belongs in this list. */
const HARMLESS = ['bar-sign-missing', 'gauges-thin-to-thick', 'look-alikes', 'tab-character', 'usual-labels'];

/** What is heard and read of a text, written out from the types of the reading. */
function heard(text: string): unknown {
  return new Document(text).systems.map(({ reading, header }) => ({
    tuning: header.tuning.strings.map(({ pitches }) => pitches.map(({ midi }) => midi)),
    gauges: header.gauges,
    notes: reading.notes.map(({ kind, string, fret, onset, ends, pitches, techniques }) => [
      kind,
      string,
      fret,
      onset,
      ends,
      pitches.map(({ midi }) => midi),
      techniques.map(({ kind: technique, to }) => [technique, to]),
    ]),
    bars: reading.bars.map(({ onset, length }) => [onset, length]),
    repeats: reading.repeats,
    rows: reading.rows.map(({ row, marks }) => [row, marks.map(({ text: mark, onset }) => [mark, onset])]),
  }));
}

describe('mends that are called harmless', () => {
  const found = CHECKS.flatMap(({ examples }) =>
    [...examples.raises, ...examples.quiet].flatMap((text) =>
      checkDocument(new Document(text), SETTINGS).flatMap(({ code, mends }) =>
        mends.filter(({ harmless }) => harmless).map((mend) => ({ code, text, mend })),
      ),
    ),
  );

  it('are those of a few checks, each with at least three examples', () => {
    assert.deepEqual([...new Set(found.map(({ code }) => code))].sort(), HARMLESS);
    for (const code of HARMLESS) assert.ok(found.filter((one) => one.code === code).length >= 3, code);
  });

  for (const { code, text, mend } of found) {
    it(`${code} changes nothing that sounds: ${JSON.stringify(text)}`, () => {
      const after = applyMend(text, mend);
      assert.notEqual(after, text);
      assert.deepEqual(heard(after), heard(text));
      assert.equal(after.split('\n').length, text.split('\n').length);
    });
  }

  it('would be seen if they did: other mends do change something', () => {
    const others = CHECKS.flatMap(({ examples }) =>
      examples.raises.flatMap((text) =>
        checkDocument(new Document(text), SETTINGS).flatMap(({ mends }) =>
          mends.filter(({ harmless }) => !harmless).map((mend) => ({ text, mend })),
        ),
      ),
    );
    const changing = others.filter(({ text, mend }) => {
      const [before, after] = [JSON.stringify(heard(text)), JSON.stringify(heard(applyMend(text, mend)))];
      return before !== after;
    });
    assert.ok(changing.length > 20, String(changing.length));
  });
});
