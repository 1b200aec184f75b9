import assert from 'node:assert/strict';
import { guitar, OPENS, targetOf } from '../boards';
import { shapesOf, textOf } from './known';

/*
 * Worked examples T7 to T10 and T14 of this project's handbook (shared/facts/check-values.md): shapes of the trade by
 * pitch, checked by script; common practice, no source.
 */
const OPEN_D = [38, 45, 50, 54, 57, 62];
const HIGH_STRUNG = [52, 57, 62, 67, 59, 64];
const TABLE: readonly (readonly [tuning: string, opens: readonly number[], chord: string, shape: string])[] =
  [
    ['standard', OPENS.standard, 'C', 'x32010'],
    ['standard', OPENS.standard, 'A', 'x02220'],
    ['standard', OPENS.standard, 'G', '320003'],
    ['standard', OPENS.standard, 'E', '022100'],
    ['standard', OPENS.standard, 'D', 'xx0232'],
    ['standard', OPENS.standard, 'Am', 'x02210'],
    ['standard', OPENS.standard, 'Em', '022000'],
    ['standard', OPENS.standard, 'Dm', 'xx0231'],
    ['standard', OPENS.standard, 'F', '133211'],
    ['standard', OPENS.standard, 'B7', 'x21202'],
    ['standard', OPENS.standard, 'G7', '320001'],
    ['standard', OPENS.standard, 'E7', '020100'],
    ['standard', OPENS.standard, 'C7', 'x32310'],
    ['open G', OPENS.openG, 'C/E', '202012'],
    ['open G', OPENS.openG, 'Em', '202002'],
    ['open G', OPENS.openG, 'Am', 'x22212'],
    ['open G', OPENS.openG, 'G7', '000003'],
    ['DADGAD', OPENS.dadgad, 'D5', '000200'],
    ['DADGAD', OPENS.dadgad, 'G', '520020'],
    ['DADGAD', OPENS.dadgad, 'Em7(add11)', '222000'],
    ['DADGAD', OPENS.dadgad, 'A7sus4', 'x02000'],
    ['DADGAD', OPENS.dadgad, 'A5', 'x02202'],
    ['open D', OPEN_D, 'G/B', 'x20120'],
    ['open D', OPEN_D, 'Em', '222122'],
    ['open D', OPEN_D, 'A7(no3)', 'x02102'],
    ['high strung', HIGH_STRUNG, 'C', 'x32010'],
  ];

/** Those that a list of twelve shows; the others are found among all that the hand can hold. */
const WITHIN_TWELVE = 23;

describe('shapes of the handbook (T7–T10, T14)', () => {
  const judged = TABLE.map(([tuning, opens, chord, shape]) => {
    const target = targetOf(guitar(opens));
    const twelve = shapesOf(chord, target).map(textOf);
    const all = shapesOf(chord, target, { limit: Infinity, highestFret: 5 }).map(textOf);
    return { label: `${chord} in ${tuning}: ${shape}`, shape, twelve, all };
  });
  for (const { label, shape, all } of judged) it(`${label} is found`, () => assert.ok(all.includes(shape)));

  it('most of them within the twelve', function () {
    const shown = judged.filter(({ twelve, shape }) => twelve.includes(shape));
    const missed = judged.filter(({ twelve, shape }) => !twelve.includes(shape)).map(({ label }) => label);
    console.log(
      `      T7–T10, T14: ${shown.length} of ${TABLE.length} within twelve; else ${missed.join('; ')}`,
    );
    assert.ok(shown.length >= WITHIN_TWELVE);
  });

  it('the everyday shape comes first in standard tuning', () => {
    const first = (chord: string): string | undefined =>
      shapesOf(chord, targetOf(guitar(OPENS.standard)), { limit: 1 }).map(textOf)[0];
    for (const [tuning, , chord, shape] of TABLE)
      if (tuning === 'standard' && !['F', 'B7', 'C7'].includes(chord))
        assert.equal(first(chord), shape, chord);
  });

  it('020210 in open G has no third, so it is never offered for D7 (T8)', () => {
    const all = shapesOf('D7', targetOf(guitar(OPENS.openG)), { limit: Infinity, highestFret: 5 });
    assert.ok(!all.map(textOf).includes('020210'));
  });
});
