import assert from 'node:assert/strict';
import { fileWith, json, pegbox, unreadable } from './pegbox';
import { FERRY, firstString } from './texts';

/** An error on line 2, characters 6 to 11, and a warning on line 3. */
const BAD_CAPO = `title: Mooring Song\ncapo: banana\ntunning: DADGAD\n\n${firstString('0---')}`;
/** Frets 1 and 9 of one column, the one on string 6, the other on string 4. */
const WIDE = `E4 |----|\nB3 |----|\nG3 |----|\nD3 |9---|\nA2 |----|\nE2 |1---|\n`;

describe('check', () => {
  it('says nothing of a text without a mistake', async () => {
    const file = fileWith('ferry.pegbox', FERRY);
    assert.deepEqual(await pegbox(['check', file]), { code: 0, out: '', err: '' });
    assert.deepEqual(await json(['check', file]), []);
  });

  it('gives each diagnostic a line, and exit code 1 when one is an error', async () => {
    const file = fileWith('bad.pegbox', BAD_CAPO);
    const { code, out, err } = await pegbox(['check', file]);
    assert.equal(code, 1);
    assert.equal(err, '');
    const lines = out.split('\n');
    assert.equal(lines.length, 3);
    assert.ok(lines[0]?.startsWith(`${file}:2:7 error capo-value Write the fret of the capo`), out);
    assert.ok(lines[1]?.startsWith(`${file}:3:1 warning field-misspelled “tunning” is no field`), out);
    assert.equal(lines[2], '');
  });

  it('answers with the same as JSON', async () => {
    const { code, out } = await pegbox(['check', '-', '--json'], BAD_CAPO);
    assert.equal(code, 1);
    const found = JSON.parse(out) as Record<string, unknown>[];
    assert.deepEqual(
      found.map(({ message, ...rest }) => [rest, typeof message]),
      [
        [{ file: '-', line: 2, column: 7, severity: 'error', code: 'capo-value' }, 'string'],
        [{ file: '-', line: 3, column: 1, severity: 'warning', code: 'field-misspelled' }, 'string'],
      ],
    );
  });

  it('takes warnings alone for no failure', async () => {
    const { code, out } = await pegbox(['check', '-'], 'tunning: DADGAD\n');
    assert.match(out, /^-:1:1 warning field-misspelled /);
    assert.equal(code, 0);
  });

  it('checks several files in the order given', async () => {
    const good = fileWith('ferry.pegbox', FERRY);
    const bad = fileWith('bad.pegbox', BAD_CAPO);
    const near = fileWith('near.pegbox', 'tunning: DADGAD\n');
    const { code, out } = await pegbox(['check', near, good, bad]);
    assert.equal(code, 1);
    assert.deepEqual(
      out.split('\n').map((line) => line.split(' ')[0]),
      [`${near}:1:1`, `${bad}:2:7`, `${bad}:3:1`, ''],
    );
  });

  it('does not count a byte order mark as a column', async () => {
    const { out } = await pegbox(['check', '-'], '\uFEFFcapo: banana\r\n');
    assert.match(out, /^-:1:7 error capo-value /);
  });

  it('counts lines by every kind of line end', async () => {
    const { out } = await pegbox(['check', '-'], 'a\rb\r\nc\ncapo: banana');
    assert.match(out, /^-:4:7 error capo-value /);
  });

  it('measures a stretch by the reach it is given', async () => {
    const wide = ['check', '-', '--reach'];
    assert.match((await pegbox(['check', '-'], WIDE)).out, /^-:\d:\d warning stretch-over-reach .*130 mm/);
    assert.match((await pegbox([...wide, '150'], WIDE)).out, /stretch-over-reach .*150 mm/);
    // from fret 1 to fret 9 of 648 mm it is 648 (2^(−1/12) − 2^(−9/12)) = 226.3 mm (equal temperament)
    assert.equal((await pegbox([...wide, '226 mm'], WIDE)).out.includes('stretch-over-reach'), true);
    assert.equal((await pegbox([...wide, '227'], WIDE)).out, '');
    for (const value of ['0', 'wide', '1e999'])
      assert.match(await unreadable([...wide, value]), /millimetres/);
    assert.match(await unreadable([...wide, '-5']), /millimetres above 0/);
  });

  it("knows the user's own tunings", async () => {
    const text = 'tuning: harbour\n\nD4 |0---|\nB3 |----|\nG3 |----|\nD3 |----|\nG2 |----|\nC2 |----|\n';
    assert.equal((await pegbox(['check', '-'], text)).code, 1);
    const own = fileWith('own.json', '\uFEFF{ "harbour": "C2 G2 D3 G3 B3 D4" }');
    assert.deepEqual(await pegbox(['check', '-', '--tunings', own], text), { code: 0, out: '', err: '' });
  });

  it('reads standard input once only, and writes nothing when a file cannot be read', async () => {
    assert.match(await unreadable(['check', '-', '-'], FERRY), /once/);
    const bad = fileWith('bad.pegbox', BAD_CAPO);
    assert.match(await unreadable(['check', bad, `${bad}.not-there`]), /There is no file/);
  });
});
