import assert from 'node:assert/strict';
import { fileWith, pegbox } from './pegbox';

const SONG = `key: D

E4 |2---|0---|
B3 |3---|2---|
G3 |2---|2---|
D3 |0---|2---|
A2 |----|0---|
E2 |----|----|
`;

describe('a tab is begun and named on the command line', () => {
  const file = fileWith('low-water.pegbox', SONG);

  it('new prints fields and an empty system that check finds nothing wrong with', async () => {
    const { code, out } = await pegbox(['new', 'DADGAD', '--bars', '2', '--rows', 'chords count']);
    assert.equal(code, 0);
    assert.match(out, /^title: {2}New tab\ntuning: DADGAD\nmeter: {2}4\/4\n\ncount {2}\|1 {3}2/);
    assert.equal((await pegbox(['check', '-'], out)).code, 0);
    assert.match((await pegbox(['new', '--instrument', 'bass'])).out, /^G2 \|-{16}\|/m);
  });

  it('new says what it cannot read', async () => {
    for (const [args, expected] of [
      [['new', 'Q'], /./],
      [['new', '--bars', 'many'], /--bars takes a whole number from 1 to 16/],
      [['new', '--rows', 'drums'], /--rows takes a list of count, chords.*“drums” is none/],
    ] as const) {
      const { code, out, err } = await pegbox(args);
      assert.notEqual(code, 0);
      assert.equal(out, '');
      assert.match(err, expected);
    }
  });

  it('names prints the tab with its notes', async () => {
    const { code, out } = await pegbox(['names', file]);
    assert.equal(code, 0);
    assert.equal(out.split('\n')[2], 'E4 |F#---|E----|');
    assert.equal((await pegbox(['names', '-', '--octaves'], SONG)).out.split('\n')[2], 'E4 |F#4---|E4----|');
  });

  it('name-chords writes the row, and what it did on standard error', async () => {
    const { code, out, err } = await pegbox(['name-chords', file]);
    assert.equal(code, 0);
    assert.equal(out.split('\n')[2], 'chords |D   |A   |');
    assert.match(err, /2 names written\./);
    const wrong = out.replace('|D   |', '|Em  |');
    assert.equal((await pegbox(['name-chords', '-'], wrong)).out, wrong);
    assert.equal((await pegbox(['name-chords', '-', '--replace'], wrong)).out, out);
  });
});
