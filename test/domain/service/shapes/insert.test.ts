import assert from 'node:assert/strict';
import { applyEdits } from '../../../../src/cli/applyEdits';
import { openAt, service } from '../cursor';

function inserted(marked: string, frets: readonly (number | null)[], chord?: string): string {
  const { document, place } = openAt(marked);
  const change = service.insertShape(document, place, { frets, ...(chord !== undefined && { chord }) });
  if ('error' in change) throw new Error(change.error);
  assert.ok(change.edits.length <= 1);
  return applyEdits(document.text(), change.edits);
}

const TAB = `chords |C
D      |2---|
A      |3---|
G      |0---|
D      |2---|
A      |3---|
D      |----|`;

describe('a shape written at the cursor', () => {
  it('in a system as a column, over what stands there, with a muted stroke between strings that sound', () => {
    assert.equal(
      inserted(
        'tuning: drop D\n\nE4 |5---0---|\nB3 |<|>--------|\nG3 |--------|\nD3 |--------|\nA2 |7-------|\nD2 |0-------|\n',
        [0, null, 2, 0, null, null],
      ),
      'tuning: drop D\n\nE4 |----0---|\nB3 |--------|\nG3 |0-------|\nD3 |2-------|\nA2 |x-------|\nD2 |0-------|\n',
    );
  });

  it('on a blank line as a system of its own, named by what it sounds or as asked', () => {
    const frets = [null, 3, 2, 0, 3, 2];
    assert.equal(inserted('tuning: DADGAD\n\n<|>', frets), `tuning: DADGAD\n\n${TAB}`);
    assert.equal(inserted('tuning: DADGAD\n<|>\nWords.\n', frets), `tuning: DADGAD\n\n${TAB}\n\nWords.\n`);
    assert.match(inserted('tuning: DADGAD\n\n<|>', frets, 'C/maj'), /^chords \|C\/maj$/m);
  });

  it('under a line of words, with a blank line between', () => {
    assert.equal(
      inserted('tuning: DADGAD\nLet it<|> ring.\n', [null, 3, 2, 0, 3, 2]),
      `tuning: DADGAD\nLet it ring.\n\n${TAB}\n`,
    );
  });

  it('frets that are not there: one sentence', () => {
    const { document, place } = openAt('tuning: DADGAD\n<|>');
    const ask = (frets: readonly (number | null)[]): string => {
      const answer = service.insertShape(document, place, { frets });
      return 'error' in answer ? answer.error : 'no error';
    };
    assert.match(ask([1]), /^1 fret is given for 6 strings/);
    assert.match(ask([99, 0, 0, 0, 0, 0]), /^String 6 has no fret 99 that can be played in this tuning\.$/);
  });
});
