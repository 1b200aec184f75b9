import assert from 'node:assert/strict';
import { guitar, OPENS, targetOf } from '../boards';
import { shapesOf, textOf, wanted } from './known';

const standard = targetOf(guitar(OPENS.standard));
const texts = (...asked: Parameters<typeof shapesOf>): readonly string[] => shapesOf(...asked).map(textOf);

describe('finding shapes', function () {
  this.timeout(20_000);

  it('gives twelve at most, and as many as are asked for', () => {
    assert.equal(shapesOf('C', standard).length, 12);
    assert.equal(shapesOf('C', standard, { limit: 3 }).length, 3);
    assert.ok(shapesOf('C', standard, { limit: 60, spread: false }).length === 60);
  });

  it('spreads them over the neck: no two of twelve differ in one string only, and most positions come twice at most', () => {
    const shapes = shapesOf('C', standard);
    shapes.forEach((a, i) =>
      shapes.slice(i + 1).forEach((b) => {
        const differ = a.frets.filter((fret, index) => fret !== b.frets[index]).length;
        assert.ok(differ > 1, `${textOf(a)} and ${textOf(b)}`);
      }),
    );
    assert.ok(new Set(shapes.map(({ grip }) => grip.position)).size >= 6);
  });

  it('without spreading gives the cheapest, in order', () => {
    const costs = shapesOf('C', standard, { limit: 40, spread: false }).map(({ cost }) => cost);
    assert.deepEqual(
      [...costs].sort((a, b) => a - b),
      costs,
    );
    const all = shapesOf('C', standard, { limit: Infinity }).map(({ cost }) => cost);
    costs.forEach((cost, i) => assert.ok(Math.abs(cost - (all[i] ?? NaN)) < 1e-9));
  });

  it('full before reduced, and reduced only by what the name lets go', () => {
    for (const { leftOut, sounding } of shapesOf('G7', standard)) {
      assert.equal(leftOut & ~wanted('G7').fifth, 0);
      assert.equal(sounding & wanted('G7').required, wanted('G7').required);
    }
    assert.equal(shapesOf('G7', standard)[0]?.leftOut, 0);
  });

  it('a third is asked for even in a dominant eleventh, where players pass it over', () => {
    assert.ok(wanted('C11').required & (1 << 4));
    assert.equal(wanted('C11').optional & (1 << 4), 0);
  });

  it('an altered dominant has at least one altered tone', () => {
    for (const { sounding } of shapesOf('C7alt', standard, { limit: 40 }))
      assert.ok(sounding & wanted('C7alt').oneOf);
  });

  it('the bass behind a slash is the lowest pitch, even on octave courses', () => {
    for (const { bass } of shapesOf('G/B', standard, { limit: 40 })) assert.equal(bass, 11);
    for (const { bass } of shapesOf('C/D', standard, { limit: 40 })) assert.equal(bass, 2);
  });

  it('no shape keeps more than two strings silent between others, and one that needs none comes first', () => {
    const inner = ({ innerMuted }: { readonly innerMuted: number }): number =>
      [...innerMuted.toString(2)].filter((bit) => bit === '1').length;
    const shapes = shapesOf('Gm6', standard, { limit: 200 });
    assert.ok(shapes.every((shape) => inner(shape) <= 2));
    assert.ok(shapes.some((shape) => inner(shape) > 0));
    assert.equal(inner(shapes[0] ?? { innerMuted: -1 }), 0);
  });

  it('with a slide: one straight bar, open strings beside it only', () => {
    const openD = targetOf(guitar([38, 45, 50, 54, 57, 62]), { slide: true });
    assert.equal(texts('G', openD)[0], '555555');
    for (const { frets, grip } of shapesOf('A', openD, { limit: 60 })) {
      const stopped = frets.flatMap((fret, index) =>
        fret !== undefined && fret > 0 ? [{ fret, index }] : [],
      );
      assert.ok(new Set(stopped.map(({ fret }) => fret)).size <= 1, grip.position.toString());
      const [from, to] = [stopped[0]?.index ?? 0, stopped.at(-1)?.index ?? 0];
      assert.ok(!frets.slice(from, to).includes(0));
    }
    assert.deepEqual(texts('Dm7b5', openD), []);
  });

  it('under a full capo frets count from it and names are as played', () => {
    const capo = targetOf(guitar(OPENS.standard, { fret: 3, strings: undefined }));
    assert.equal(texts('G', capo, { by: 3 })[0], '320003');
  });

  it('a partial capo is an open string for its own fret', () => {
    const partial = targetOf(guitar(OPENS.standard, { fret: 2, strings: [5, 4, 3] }));
    for (const { frets } of shapesOf('E', partial, { limit: 100 }))
      for (const index of [1, 2, 3])
        assert.ok(frets[index] === undefined || frets[index] === 0 || frets[index] > 2);
    assert.ok(texts('Esus4', partial, { limit: 60 }).includes('000000'));
  });

  it('a short string is open or stopped above its start', () => {
    const banjo = targetOf({ opens: OPENS.banjo, frets: 22, scaleLength: 667, firstFrets: [5, 0, 0, 0, 0] });
    assert.equal(texts('G', banjo)[0], '00000');
    for (const { frets } of shapesOf('C', banjo, { limit: 100 }))
      assert.ok(frets[0] === undefined || frets[0] === 0 || frets[0] > 5);
  });

  it('the thumb reaches what four fingers do not', () => {
    const options = { limit: Infinity, highestFret: 3 };
    assert.ok(!texts('D7/F#', standard, options).includes('230212'));
    assert.ok(texts('D7/F#', standard, options, { thumb: true }).includes('230212'));
  });

  it('up to the highest fret asked for', () => {
    for (const { frets } of shapesOf('C', standard, { highestFret: 3, limit: 60 }))
      for (const fret of frets) assert.ok((fret ?? 0) <= 3);
  });

  it('a power chord lies on the low strings', () => {
    assert.equal(texts('E5', standard)[0], '022xxx');
    assert.ok(texts('G5', standard).includes('355xxx'));
  });
});
