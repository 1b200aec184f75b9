import assert from 'node:assert/strict';
import { isDeepStrictEqual } from 'node:util';
import { readLineByGrammar } from '../../../src/notation/grammarLine';
import { scanLine } from '../../../src/notation/scanLine';
import { demoSongs, mutatedLine, seedLines } from '../support/lines';
import { randomFrom } from '../support/random';

/*
 * The grammar is the definition; the scanner may take a line only where it says the same to the letter.
 * PEGBOX_FUZZ=1000000 looks at so many mutated lines instead of the few of a usual run; PEGBOX_SEED chooses others.
 */
const LINES = Number(process.env['PEGBOX_FUZZ'] ?? 30_000);
const SEED = Number(process.env['PEGBOX_SEED'] ?? 20_261_125);

/** Whether the scanner took the line; fails where it reads it otherwise than the grammar. */
function taken(text: string): boolean {
  const scanned = scanLine(text);
  if (!scanned) return false;
  const read = readLineByGrammar(text);
  if (!isDeepStrictEqual(scanned, read)) {
    assert.deepEqual(scanned, read, `the scanner and the grammar read ${JSON.stringify(text)} differently`);
  }
  return true;
}

describe('the scanner and the grammar', () => {
  it('read every seed alike', () => {
    for (const line of seedLines()) taken(line);
  });

  it(`read ${LINES} mutated lines alike`, function () {
    this.timeout(0);
    const random = randomFrom(SEED);
    const seeds = seedLines();
    let byScanner = 0;
    for (let i = 0; i < LINES; i++) if (taken(mutatedLine(seeds, random))) byScanner += 1;
    // A scanner that declines everything would agree with everything.
    assert.ok(byScanner > LINES / 10, `only ${byScanner} of ${LINES} lines were taken`);
  });

  it('take a remark against the last bar sign alike, and no more of the run with it', () => {
    for (const remark of ['x2', '5', '(x3)', '*', '7 let ring', 'h5p', '*5', 'x2 - softly']) {
      const text = `G3|--5--|0---|${remark}`;
      assert.ok(taken(text), text);
      const line = scanLine(text);
      assert.equal(line?.kind === 'string' && line.remark?.text, remark);
    }
    assert.ok(taken('G3|--5--|0---|-5'));
    // A dash or a bar line in it is not for the scanner to judge.
    assert.ok(!taken('G3|--5--|*--') && !taken('G3|--5--|*|'));
  });

  it('leave little of a song to the grammar', () => {
    const lines = demoSongs().flatMap((song) => song.split('\n'));
    const declined = lines.filter((line) => !scanLine(line));
    const share = 1 - declined.length / lines.length;
    assert.ok(share >= 0.95, `${(share * 100).toFixed(1)} % taken; declined:\n${declined.join('\n')}`);
  });
});
