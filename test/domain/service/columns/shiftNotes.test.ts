import { expect } from 'chai';
import fc from 'fast-check';
import { applyEdits } from '../../../../src/cli/applyEdits';
import type { ColumnsRequest } from '../../../../src/service/columns/columnsRequest';
import { service, settings } from '../cursor';

// Our own texts. That a bar keeps its length and that nothing is written over is common practice, no source.

const lines = (...all: string[]): string => `tuning: D A D\n\n${all.map((line) => `${line}\n`).join('')}`;
const TAB = lines('D |0---2---|----3---|', 'A |0-------|0-------|', 'D |--------|--------|');

type Asked = Omit<ColumnsRequest, 'range'>;
const later: Asked = { action: 'shiftLater' };
const sooner: Asked = { action: 'shiftSooner' };

/** The string lines after a shift of what is selected from one place to another, or the sentence that refuses it. */
function shift(text: string, asked: Asked, from: [number, number], to: [number, number] = from): string[] {
  const [start, end] = [from, to].map(([line, character]) => ({ line, character }));
  if (!start || !end) throw new Error('no range');
  const answer = service.columns(service.open(text, settings), { ...asked, range: { start, end } }, settings);
  return 'error' in answer ? [answer.error] : applyEdits(text, answer.edits).split('\n').slice(2, -1);
}

describe('shifting the notes that are selected', () => {
  it('moves them a column or a beat, and nothing else', () => {
    expect(shift(TAB, later, [2, 3])).to.deep.equal([
      'D |-0--2---|----3---|',
      'A |0-------|0-------|',
      'D |--------|--------|',
    ]);
    expect(shift(TAB, { ...later, step: 'beat' }, [2, 3], [3, 4])).to.deep.equal([
      'D |--0-2---|----3---|',
      'A |--0-----|0-------|',
      'D |--------|--------|',
    ]);
  });

  it('takes along what signs join, and the stop that ends it', () => {
    const text = lines('D |5h7-.---|--------|', 'A |0-------|0-------|', 'D |--------|--------|');
    expect(shift(text, { ...later, step: 'beat' }, [2, 3])[0]).to.equal('D |--5h7-.-|--------|');
  });

  it('goes on into the next bar, or refuses to go over the bar sign, as asked', () => {
    const end = lines('D |0-----2-|----3---|', 'A |0-------|0-------|', 'D |--------|--------|');
    expect(shift(end, { ...later, step: 'beat' }, [2, 9])[0]).to.equal('D |0-------|2---3---|');
    expect(shift(end, { ...later, step: 'beat', overBar: 'refuse' }, [2, 9])).to.deep.equal([
      'Fret 2 on string 1 in bar 1, beat 4 would go over the bar sign: leave it out of the selection, or let notes go on into the next bar.',
    ]);
  });

  it('puts on a bar at the end, inside the repeat, so that nothing falls off', () => {
    const full = lines('D |:0-----2-:|', 'A |:0-------:|', 'D |:--------:|');
    expect(shift(full, { ...later, step: 'beat' }, [2, 10])[0]).to.equal('D |:0-------|2-------:|');
  });

  it('never writes over a note, and says where one is in the way', () => {
    expect(shift(TAB, { ...later, step: 'beat' }, [2, 7])[0]).to.equal('D |0-----2-|----3---|');
    const near = lines('D |0-2-----|', 'A |--------|', 'D |--------|');
    expect(shift(near, { ...later, step: 'beat' }, [2, 3])[0]).to.match(
      /^Something stands where fret 0 on string 1 would go, in bar 1, beat 2: clear that first/,
    );
    expect(shift(TAB, sooner, [2, 3])[0]).to.match(/would begin before its system does/);
    expect(shift(TAB, later, [4, 6])[0]).to.match(/^No note is selected/);
  });

  it('law: later and sooner again is no change; the notes that were not selected keep their times', () => {
    const bar = fc
      .array(fc.constantFrom('0-', '--', '--', '5-'), { minLength: 4, maxLength: 4 })
      .map((c) => c.join(''));
    let moved = 0;
    fc.assert(
      fc.property(fc.tuple(bar, bar, bar, bar), fc.integer({ min: 3, max: 19 }), ([a, b, c, d], at) => {
        const text = lines(
          'count |1 2 3 4 |1 2 3 4 |',
          `D     |${a}|${b}|`,
          `A     |${c}|${d}|`,
          'D     |--------|--------|',
        );
        const range = { start: { line: 3, character: 7 }, end: { line: 3, character: 4 + at } };
        const answer = service.columns(service.open(text, settings), { ...later, range }, settings);
        if ('error' in answer || answer.report.remarks.some((said) => said.includes('put on'))) return;
        moved += 1;
        const now = applyEdits(text, answer.edits);
        expect(answer.report.notesIn).to.equal(answer.report.kept + answer.report.moved);
        expect(now.split('\n')[4]).to.equal(text.split('\n')[4]);
        const [first, ...ranges] = answer.selects ?? [];
        if (!first) throw new Error('nothing is selected after it');
        const back = service.columns(
          service.open(now, settings),
          { ...sooner, range: first, ranges },
          settings,
        );
        expect('error' in back ? back.error : applyEdits(now, back.edits)).to.equal(text);
      }),
      { numRuns: 150 },
    );
    expect(moved).to.be.greaterThan(20);
  });
});
