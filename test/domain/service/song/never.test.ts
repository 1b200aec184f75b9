import assert from 'node:assert/strict';
import fc from 'fast-check';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import { applyEdits } from '../../../../src/cli/applyEdits';
import { opened, service } from './song';

// Whatever stands in the rows, filling neither fails nor loses a name; what it writes reads back with the same names.

const sign = fc.constantFrom('|', '|', '|', '|:', ':|', '||', ':|:');
const name = fc.constantFrom('G', 'Am', 'D/F#', 'N.C.', 'x2', '%', 'C', 'Hm', 'F#m7b5', 'G7#9', 'é', '4/4');
const gap = fc.integer({ min: 1, max: 9 }).map((count) => ' '.repeat(count));
const row = fc
  .array(
    fc.oneof(
      { weight: 3, arbitrary: fc.tuple(name, gap).map((pair) => pair.join('')) },
      { weight: 1, arbitrary: sign },
      { weight: 1, arbitrary: gap },
    ),
    {
      maxLength: 14,
    },
  )
  .map((pieces) => `|${pieces.join('')}`);

const text = fc
  .record({
    fields: fc.constantFrom(
      '',
      'meter: 6/8\n',
      'meter: 7/8\n',
      'tuning: open D\n',
      'fretting: slide\ntuning: open E\n',
      'instrument: banjo\n',
      'instrument: bass\n',
      'frets: 3\n',
      'capo: 2 on 5 4\n',
      'instrument: 12-string guitar\n',
    ),
    systems: fc.array(
      fc.record({
        chords: row,
        other: fc.option(fc.tuple(fc.constantFrom('words', 'count', 'PM', 'ending', 'ring', 'chords'), row), {
          nil: undefined,
        }),
        string: fc.constantFrom(
          '',
          '',
          '',
          'E4 |----|\n',
          'E4 |----|\nB3 |----|\nG3 |----|\nD3 |----|\nA2 |----|\nE2 |----|\n',
          'E4 |0---|\n',
        ),
      }),
      { maxLength: 3 },
    ),
  })
  .map(
    ({ fields, systems }) =>
      `${fields}\n${systems
        .map(
          ({ chords, other, string }) =>
            `chords ${chords}\n${other ? `${other[0]} ${other[1]}\n` : ''}${string}`,
        )
        .join('\n')}`,
  );

/** Every name of the chords rows, in order. */
function names(written: string): string[] {
  return opened(written).systems.flatMap(({ lines }) =>
    lines.flatMap((line) =>
      line.kind === 'row' && line.row === 'chords' ? line.marks.map((mark) => mark.text) : [],
    ),
  );
}

describe('rows of any kind', () => {
  it('are filled or told, and keep their names', function () {
    this.timeout(120_000);
    let filled = 0;
    fc.assert(
      fc.property(text, fc.constantFrom('once' as const, 'beats' as const), (written, strum) => {
        const document = opened(written);
        const result = service.fillChords(document, { range: undefined, strum }, DEFAULT_SETTINGS);
        service.chordChart(document, { range: undefined }, DEFAULT_SETTINGS);
        const other = service.secondGuitar(document, { range: undefined, name: 'other' }, DEFAULT_SETTINGS);
        if (!('error' in other)) {
          const both = names(applyEdits(written, other.edits));
          assert.ok(both.length >= names(written).length);
        }
        if ('error' in result) return;
        const after = applyEdits(written, result.edits);
        assert.deepEqual(names(after), names(written), after);
        if (result.edits.length > 0) filled++;
        const again = service.fillChords(opened(after), { range: undefined, strum }, DEFAULT_SETTINGS);
        assert.ok(!('error' in again) && again.edits.length === 0, after);
      }),
      { numRuns: 60, seed: 20261127 },
    );
    assert.ok(filled > 15, `${filled} filled`);
  });
});
