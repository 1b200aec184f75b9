import assert from 'node:assert/strict';
import { fingerGrip } from '../../../../src/playing/hand/grips';
import { handOptions } from '../../../../src/playing/hand/options';
import { guitar, OPENS, targetOf } from '../boards';

const standard = targetOf(guitar(OPENS.standard));

/** `x1xx6x`, low string first. */
function judge(shape: string, more: Parameters<typeof handOptions>[0] = {}, target = standard) {
  const places = [...shape].flatMap((sign, i) =>
    sign === 'x' ? [] : [{ string: shape.length - i, fret: Number(sign) }],
  );
  return fingerGrip(places, target, handOptions(more));
}

describe('a grip that no hand can hold says by what rule', () => {
  it('too wide, with the millimetres: frets 1 and 6 are 153.4 mm at 648 mm (x = L(1 − 2^(−f/12)))', () => {
    assert.deepEqual(judge('x1xx6x').refused, ['strings 5 and 2, frets 1 and 6: 153 mm, the limit is 130']);
    // A capo five frets up, a short string, a hand with a wider reach: another answer.
    assert.ok(judge('x1xx6x', {}, targetOf({ ...guitar(OPENS.standard), scaleLength: 540 })).best);
    assert.ok(judge('x1xx6x', {}, targetOf(guitar(OPENS.standard), { reach: 160 })).best);
    assert.ok(judge('x1xx6x', {}, targetOf(guitar(OPENS.standard, { fret: 4, strings: undefined }))).best);
  });

  it('five stopped strings and an open one under the barre', () => {
    assert.deepEqual(judge('102341').refused, [
      '5 stopped strings and four fingers: it takes a barre, and string 5 has to ring open under it',
    ]);
  });

  it('more frets than fingers', () => {
    assert.deepEqual(judge('132435').refused, [
      'strings 6, 5, 4, 3, 2 and 1 at frets 1, 3, 2, 4, 3 and 5: more than 4 fingers can stop',
    ]);
  });

  it('what the player has capped: span, fingers, barres', () => {
    assert.deepEqual(judge('x1xx4x', { caps: { span: 90 } }).refused, [
      'strings 5 and 2, frets 1 and 4: 97 mm, the limit is 90',
    ]);
    assert.match(judge('320003', { caps: { fingers: 2 } }).refused.join(), /more than 2 fingers can stop$/);
    assert.match(
      judge('133211', { caps: { barres: false } }).refused.join(),
      /it takes a barre, and barres are not wanted$/,
    );
  });

  it('a slide bar stops one fret, and no open string rings under it', () => {
    const slide = targetOf(guitar([38, 45, 50, 54, 57, 62]), { slide: true });
    assert.ok(judge('777777', {}, slide).best);
    assert.ok(judge('0x7777', {}, slide).best);
    assert.match(
      judge('77777x'.replace('7', '5'), {}, slide).refused.join(),
      /one straight bar stops one fret$/,
    );
    assert.match(
      judge('770777', {}, slide).refused.join(),
      /an open string cannot ring under the bar between them$/,
    );
  });

  it('what is not there, and what is given twice', () => {
    assert.deepEqual(fingerGrip([{ string: 7, fret: 1 }], standard, handOptions()).refused, [
      'string 7 has no fret 1 that can be played',
    ]);
    const twice = [
      { string: 2, fret: 1 },
      { string: 2, fret: 3 },
    ];
    assert.deepEqual(fingerGrip(twice, standard, handOptions()).refused, ['string 2 is given twice']);
  });

  it('the thumb takes string 6 over the neck, and the open string beside it rings', () => {
    assert.equal(judge('102341').best, undefined);
    const places = judge('102341', { thumb: true }).best?.placements;
    assert.equal(places?.[0]?.finger, 'T');
  });
});
