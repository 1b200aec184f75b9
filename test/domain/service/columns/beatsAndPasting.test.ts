import { expect } from 'chai';
import fc from 'fast-check';
import { applyEdits } from '../../../../src/cli/applyEdits';
import type { ColumnsRequest } from '../../../../src/service/columns/columnsRequest';
import { service, settings } from '../cursor';

// Our own texts; that a bar keeps its length and nothing falls off is common practice, no source.

const lines = (...all: string[]): string => `tuning: D A D\n\n${all.map((line) => `${line}\n`).join('')}`;

const COUNTED = lines(
  'chords |D       |A       |',
  'count  |1 2 3 4 |1 2 3 4 |',
  'D      |0---2---|----3---|',
  'A      |0-------|0-------|',
  'D      |--------|--------|',
);

function change(text: string, line: number, character: number, asked: Omit<ColumnsRequest, 'range'>): string {
  const place = { line, character };
  const document = service.open(text, settings);
  const answer = service.columns(document, { ...asked, range: { start: place, end: place } }, settings);
  if ('error' in answer) return answer.error;
  const { notesIn, kept, moved, unplaced } = answer.report;
  expect(notesIn, 'no note is lost in silence').to.equal(kept + moved + unplaced.length);
  return applyEdits(text, answer.edits);
}

const heard = (text: string): string[] =>
  service
    .notes(service.open(text, settings))
    .map(({ name, string, onsetFraction: [n, d] }) => `${name} ${string} ${n / d}`);

describe('beats, empty bars and pasting', () => {
  it('put in a beat: what follows is a beat later, over the bar sign, with its chord', () => {
    const later = change(COUNTED, 4, 12, { action: 'insertBeat' });
    expect(later).to.equal(
      lines(
        'chords |D       |  A     |',
        'count  |1 2 3 4 |1 2 3 4 |',
        'D      |0-----2-|------3-|',
        'A      |0-------|--0-----|',
        'D      |--------|--------|',
      ),
    );
    expect(change(later, 4, 12, { action: 'removeBeat' })).to.equal(COUNTED);
  });

  it('put on a bar where the last one is full', () => {
    const full = lines('D |0-2-4-5-|', 'A |--------|', 'D |--------|');
    expect(change(full, 2, 3, { action: 'insertBeat' }).split('\n')[2]).to.equal('D |--0-2-4-|5-------|');
  });

  it('leave the other bars as they are where nothing may go over a bar sign', () => {
    const room = COUNTED.replace('D      |0---2---', 'D      |0-2-----');
    expect(change(room, 4, 10, { action: 'insertBeat', overBar: 'refuse' }).split('\n')[4]).to.equal(
      'D      |0---2---|----3---|',
    );
    const full = COUNTED.replace('|0---2---', '|0---2-5-');
    expect(change(full, 4, 8, { action: 'insertBeat', overBar: 'refuse' })).to.match(
      /^Something stands in the last beat of bar 1 and would go over the bar sign/,
    );
  });

  it('keep each comment above the line that it stood above', () => {
    const text = lines(
      'D |0-------|2-------|',
      '# let it ring',
      'A |0-------|--------|',
      'D |--------|--------|',
    );
    const split = change(text, 4, 14, { action: 'splitSystem' });
    expect(split.split('\n').slice(2, 5)).to.deep.equal(['D |0-------|', '# let it ring', 'A |0-------|']);
    expect(change(split, 4, 5, { action: 'joinSystems' })).to.equal(text);
    expect(change(text, 4, 5, { action: 'duplicateBars' }).split('\n')[3]).to.equal('# let it ring');
  });

  it('take out no beat in which something stands', () => {
    expect(change(COUNTED, 4, 8, { action: 'removeBeat' })).to.match(/^Something stands in the beat/);
  });

  it('put in an empty bar that is counted like its neighbour', () => {
    expect(change(COUNTED, 4, 20, { action: 'insertBar' })).to.equal(
      lines(
        'chords |D       |        |A       |',
        'count  |1 2 3 4 |1 2 3 4 |1 2 3 4 |',
        'D      |0---2---|--------|----3---|',
        'A      |0-------|--------|0-------|',
        'D      |--------|--------|--------|',
      ),
    );
  });

  it('take out an empty column and no other', () => {
    const wide = change(COUNTED, 4, 10, { action: 'insertColumn' });
    expect(wide.split('\n')[4]).to.equal('D      |0----2---|----3---|');
    expect(heard(wide)).to.deep.equal(heard(COUNTED));
    expect(change(wide, 4, 10, { action: 'removeColumn' })).to.equal(COUNTED);
    expect(change(COUNTED, 4, 8, { action: 'removeColumn' })).to.match(/^Something stands in this column/);
  });

  it('paste copied bars between others and over them', () => {
    const at = { line: 4, character: 20 };
    const copied = service.copyBars(service.open(COUNTED, settings), { start: at, end: at });
    if ('error' in copied) throw new Error(copied.error);
    const { text } = copied;
    expect(text.split('\n')[2]).to.equal('D      |----3---|');
    const between = change(COUNTED, 4, 8, { action: 'pasteBetween', text });
    expect(between.split('\n')[4]).to.equal('D      |----3---|0---2---|----3---|');
    const over = change(COUNTED, 4, 8, { action: 'pasteOver', text });
    expect(over.split('\n').slice(2, 5)).to.deep.equal([
      'chords |A       |A       |',
      'count  |1 2 3 4 |1 2 3 4 |',
      'D      |----3---|----3---|',
    ]);
    expect(change(COUNTED, 4, 8, { action: 'pasteOver', text: 'Dear Fenna,' })).to.match(/no bars/);
  });

  it('law: a beat put in and taken out again is no change; nothing before the cursor moves', () => {
    const cell = fc.constantFrom('0-', '2-', '--', '--', '5-');
    const bar = fc.array(cell, { minLength: 4, maxLength: 4 }).map((cells) => cells.join(''));
    const strings = fc.tuple(...[0, 1, 2].map(() => fc.tuple(bar, bar)));
    fc.assert(
      fc.property(strings, fc.integer({ min: 0, max: 7 }), (given, beat) => {
        const names = ['D', 'A', 'D'];
        const text = lines(
          'count |1 2 3 4 |1 2 3 4 |',
          ...given.map(([a, b], i) => `${names[i] ?? ''}     |${a}|${b}|`),
        );
        const character = 7 + beat * 2 + (beat > 3 ? 1 : 0);
        const later = change(text, 3, character, { action: 'insertBeat' });
        const due = (one: string): string => {
          const [name = '', string = '', onset = ''] = one.split(' ');
          return `${name} ${string} ${Number(onset) + (Number(onset) >= beat ? 1 : 0)}`;
        };
        expect(heard(later)).to.have.members(heard(text).map(due));
        expect(heard(change(later, 3, character, { action: 'removeBeat' }))).to.deep.equal(heard(text));
      }),
      { numRuns: 150 },
    );
  });
});
