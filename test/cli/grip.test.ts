import assert from 'node:assert/strict';
import type { GripAnswer } from '../../src/service/grip/gripAnswer';
import { fileWith, json, pegbox, unreadable } from './pegbox';

const GRIPS = `E4 |0---|----|
B3 |1---|6---|
G3 |0---|----|
D3 |2---|----|
A2 |3---|1---|
E2 |----|----|
`;

describe('grip', () => {
  const file = fileWith('grips.pegbox', GRIPS);

  it('tells the fingers of a column in words, and string by string', async () => {
    const { code, out, err } = await pegbox(['grip', file, '2:5']);
    assert.deepEqual([code, err], [0, '']);
    // check-values.md T7: C x32010
    assert.equal(
      out,
      `Index at fret 1 on string 2; middle at fret 2 on string 4; ring at fret 3 on string 5. Open: strings 1 and 3. Frets 1 to 3 span 67 mm.
The fingers of least effort under the hand's table, for these notes alone.

string  fret  finger
     1     0          open
     2     1       1
     3     0          open
     4     2       2
     5     3       3
     6     x
`,
    );
    assert.equal((await pegbox(['grip', '-', '2:5'], GRIPS)).out, out);
  });

  it('answers as JSON, with the picture', async () => {
    const answer = (await json(['grip', file, '2:5'])) as GripAnswer;
    assert.deepEqual(
      answer.strings.map(({ finger }) => finger),
      [null, 3, 2, 0, 1, 0],
    );
    assert.equal(answer.position, 1);
    assert.match(answer.svg, /^<svg .*<\/svg>$/);
  });

  it('says by what rule a grip is impossible, for the reach that is given', async () => {
    const far = (await json(['grip', file, '2:10'])) as GripAnswer;
    assert.deepEqual(far.refused, ['strings 5 and 2, frets 1 and 6: 153 mm, the limit is 130']);
    const wide = (await json(['grip', file, '2:10', '--reach', '170'])) as GripAnswer;
    assert.deepEqual(wide.refused, []);
  });

  it('refuses what is no place, or one where nothing is held', async () => {
    assert.match(await unreadable(['grip', file]), /takes a file and one place in it/);
    assert.match(await unreadable(['grip', file, '2']), /“2” is no place.*12:7/);
    assert.match(await unreadable(['grip', file, '0:1']), /counted from 1/);
    assert.match(await unreadable(['grip', file, '99:1']), /has 7 lines, so there is no line 99/);
    assert.match(await unreadable(['grip', file, '7:1']), /No string is stopped or open at 7:1/);
  });
});
