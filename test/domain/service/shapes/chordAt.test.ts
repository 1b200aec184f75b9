// The chord that the box of the shapes begins with: the name at the cursor.
import assert from 'node:assert/strict';
import { chordAt } from '../../../../src/service/shapes/chordAt';
import { openAt } from '../cursor';

/** The same two bars, the cursor in one place after the other. */
const cases: readonly (readonly [where: string, text: string, chord: string | undefined])[] = [
  ['on a name', 'chords |G/<|>B     C       |', 'G/B'],
  ['before a name', 'chords |<|>G/B     C       |', 'G/B'],
  ['right behind a name', 'chords |G/B<|>     C       |', 'G/B'],
  ['between two names', 'chords |G/B  <|>   C       |', 'G/B'],
  ['on the next', 'chords |G/B     C<|>       |', 'C'],
  ['where no chord is to sound', 'chords |G/B     N.C.<|>    |', undefined],
  ['on no chord', 'chords |G/B     hum<|>     |', undefined],
];

const strings = `E4     |0---------------|
B3     |----------------|
G3     |----------------|
D3     |----------------|
A2     |----------------|
E2     |----------------|
`;

describe('the chord at a place', () => {
  for (const [where, row, chord] of cases)
    it(`${where}: ${chord ?? 'none'}`, () => {
      const { document, place } = openAt(`${row}\n${strings}`);
      assert.equal(chordAt(document, place), chord);
    });

  it('on a string the one that holds in that column', () => {
    const { document, place } = openAt(
      `chords |  G/B   C       |\n${strings.replace('0-------', '0-------<|>')}`,
    );
    assert.equal(chordAt(document, place), 'C');
    assert.equal(chordAt(document, { ...place, character: place.character - 2 }), 'G/B');
    assert.equal(chordAt(document, { ...place, character: 8 }), undefined);
  });

  it('nowhere outside a system', () => {
    const { document, place } = openAt(`key: G<|>\n\nchords |C               |\n${strings}`);
    assert.equal(chordAt(document, place), undefined);
  });
});
