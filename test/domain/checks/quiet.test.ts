import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import type { CheckSettings } from '../../../src/checks/check';
import { checkDocument } from '../../../src/checks/checkDocument';
import { Document } from '../../../src/notation/document';
import { randomPiece } from '../support/randomPiece';
import { SETTINGS } from './marked';

const DEMO = resolve(__dirname, '../../../media/demo');

/** Some tunings of the trade, such as drop B, ask for other strings than an ordinary set: that is no slip of the pen. */
const WITH_FITTING_STRINGS: CheckSettings = {
  ...SETTINGS,
  severities: { 'string-slack': 'off', 'string-near-breaking': 'off' },
};

function told(text: string, settings = SETTINGS): string[] {
  return checkDocument(new Document(text), settings).map(
    ({ range, code, message }) => `line ${range.start.line + 1} ${code}: ${message}`,
  );
}

describe('well-formed tab', () => {
  const songs = readdirSync(DEMO).filter((name) => name.endsWith('.pegbox'));
  it('has demo songs to look at', () => assert.ok(songs.length >= 4));
  for (const name of songs) {
    it(`raises nothing: ${name}`, () => {
      assert.deepEqual(told(readFileSync(resolve(DEMO, name), 'utf8')), []);
    });
  }

  it('raises nothing: 200 pieces at random', () => {
    let notes = 0;
    fc.assert(
      fc.property(randomPiece(), (text) => {
        notes += new Document(text).systems.reduce((sum, { reading }) => sum + reading.notes.length, 0);
        assert.deepEqual(told(text, WITH_FITTING_STRINGS), [], text);
      }),
      { numRuns: 200 },
    );
    assert.ok(notes > 5000, `the pieces have notes: ${notes}`);
  });
});
