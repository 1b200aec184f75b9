import assert from 'node:assert/strict';
import type { NeckAnswer } from '../../src/service/neck/neckAnswer';
import { fileWith, json, pegbox, unreadable } from './pegbox';

const TAB = `tuning: open G
key: G

D4 |0---|
B3 |1---|
G3 |----|
D3 |----|
G2 |----|
D2 |0---|
`;

describe('neck', () => {
  const file = fileWith('neck.pegbox', TAB);

  it('shows where the scale lies, and what sounds at the place', async () => {
    const { code, out, err } = await pegbox(['neck', file, '4:5', '--frets', '5']);
    assert.deepEqual([code, err], [0, '']);
    assert.equal(
      out,
      `open G: D2 G2 D3 G3 B3 D4
G major: G A B C D E F#

string  open  0    1    2  3  4   5
     1  D4    [D]       E     F#  G
     2  B3    B    [C]     D      E
     3  G3    G         A     B   C
     4  D3    D         E     F#  G
     5  G2    G         A     B   C
     6  D2    [D]       E     F#  G

0 2 4 5 on the D and G strings; 0 1 3 5 on the B string
Bar 1, beat 1. Sounds here: D2 on string 6, open; C4 on string 2, fret 1; D4 on string 1, open.
D4 lies at string 1 open, string 2 fret 3, string 3 fret 7, string 4 fret 12 and string 5 fret 19.
`,
    );
    assert.equal((await pegbox(['neck', '-', '4:5', '--frets', '5'], TAB)).out, out);
  });

  it('answers as JSON and as a picture', async () => {
    const answer = (await json(['neck', file, '4:5', '--chord', 'Am7'])) as NeckAnswer;
    assert.deepEqual(answer.board?.tones.notes, ['A', 'C', 'E', 'G']);
    const { code, out } = await pegbox(['neck', file, '1:1', '--svg', '--upright', '--left-handed']);
    assert.equal(code, 0);
    assert.match(out, /^<svg [\s\S]*<\/svg>\n$/);
  });

  it('says in one line what to change', async () => {
    assert.match(await unreadable(['neck', file]), /takes a file and one place in it/);
    assert.match(await unreadable(['neck', file, '99:1']), /has 10 lines, so there is no line 99/);
    assert.match(await unreadable(['neck', file, '1:1', '--chord', 'Hm']), /^H is B here/);
    assert.match(await unreadable(['neck', file, '1:1', '--frets', '0']), /whole number from 1 to 36/);
    assert.match(await unreadable(['neck', file, '1:1', '--svg', '--json']), /give one of them/);
  });
});
