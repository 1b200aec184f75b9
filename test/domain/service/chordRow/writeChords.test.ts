import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import type { Change } from '../../../../src/service/serviceApi';
import { randomSong } from '../change/randomSong';
import { service, settings } from '../cursor';

interface Written {
  readonly text: string;
  readonly rows: readonly string[];
  readonly change: Change;
}

function write(text: string, replace = false): Written {
  const document = service.open(text, settings);
  const change = service.writeChords(document, { range: undefined, replace });
  assert.ok(!('error' in change), JSON.stringify(change));
  document.edit(change.edits);
  const rows = document
    .text()
    .split('\n')
    .filter((line) => /^ *chords /.test(line));
  return { text: document.text(), rows, change };
}

/** Shapes as a system: one a bar of 8 columns, or several in one bar; highest string number first, `x` left out. */
function tab(shapes: readonly (readonly string[])[], row?: string): string {
  const lines = ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'].map((label, i) => {
    const bars = shapes.map((bar) =>
      bar.map((shape) => (shape.charAt(5 - i).replace('x', '-') || '-').padEnd(8 / bar.length, '-')).join(''),
    );
    return `${label}     |${bars.join('|')}|`;
  });
  return `${row === undefined ? '' : `${row}\n`}${lines.join('\n')}\n`;
}

describe('the row of chords is written from what sounds', () => {
  // Open shapes as every beginner's chart has them: common practice, no source.
  const shapes: readonly (readonly [name: string, shape: string])[] = [
    ['C', 'x32010'],
    ['G', '320003'],
    ['D', 'xx0232'],
    ['Am', 'x02210'],
    ['Em', '022000'],
    ['E', '022100'],
    ['A', 'x02220'],
    ['Dm', 'xx0231'],
    ['F', '133211'],
    ['E7', '020100'],
    ['B7', 'x21202'],
    ['Cadd9', 'x32030'],
    ['Dsus4', 'xx0233'],
    ['D/F#', '200232'],
    ['G5', '355xxx'],
  ];
  for (const [name, shape] of shapes)
    it(`${shape} is ${name}`, () =>
      assert.deepEqual(write(tab([[shape]])).rows, [`chords |${name.padEnd(8)}|`]));

  it('names stand where chords begin, once as long as they last', () =>
    assert.deepEqual(write(tab([['x32010'], ['x32010'], ['x02210', '133211'], ['320003']])).rows, [
      'chords |C       |        |Am  F   |G       |',
    ]));

  it('an arpeggio is one chord', () => {
    const text =
      'E4     |------0-|\nB3     |----1---|\nG3     |--0---0-|\nD3     |--------|\nA2     |3-------|\nE2     |--------|\n';
    assert.deepEqual(write(text).rows, ['chords |C       |']);
  });

  it('a tune over a chord does not rename it', () => {
    const text =
      'E4     |0-1-3-1-|\nB3     |1-------|\nG3     |0-------|\nD3     |2-------|\nA2     |3-------|\nE2     |--------|\n';
    assert.deepEqual(write(text).rows, ['chords |C       |']);
  });

  it('a tune alone is no chord, and that is told', () => {
    const { rows, change } = write('E4 |0-1-3-5-|\nB3 |--------|\n');
    assert.deepEqual(rows, []);
    assert.deepEqual(change.edits, []);
    assert.ok(change.report.remarks.includes('Bar 1: what sounds has no everyday name, so none is written.'));
  });

  it('under a full capo names are those of the shapes, as in hovers', () =>
    assert.deepEqual(write(`capo: 2\n\n${tab([['xx0232']])}`).rows, ['chords |D       |']));

  it('all lines get room for the word', () =>
    assert.equal(
      write('E|0---|\nB|1---|\nG|0---|\nD|2---|\nA|3---|\nE|----|\n').text,
      'chords |C   |\nE      |0---|\nB      |1---|\nG      |0---|\nD      |2---|\nA      |3---|\nE      |----|\n',
    ));
});

describe('a row of chords that is there', () => {
  it('keeps names that agree, in the player’s own spelling', () => {
    // C6 and Am7/C are the same notes; so are an everyday and a fuller name of them.
    const own = tab([['x32210'], ['x32010']], 'chords |Am7/C   |CM      |');
    assert.equal(write(own).text, own);
    assert.equal(write(own, true).text, own);
  });

  it('gets the names that are missing before, behind and between', () =>
    assert.deepEqual(
      write(
        tab([['x32010'], ['x02210'], ['133211'], ['320003']], 'chords |        |        |F       |        |'),
      ).rows,
      ['chords |C       |Am      |F       |G       |'],
    ));

  it('keeps a name that disagrees and tells so, unless it was asked to correct', () => {
    const own = tab([['x32010'], ['x02210']], 'chords |C       |D       |');
    const kept = write(own);
    assert.equal(kept.text, own);
    assert.ok(kept.change.report.remarks.includes('Bar 2: D stays, though something else sounds.'));
    assert.deepEqual(write(own, true).rows, ['chords |C       |Am      |']);
    assert.equal(write(own, true).change.report.remarks[0], '0 names written, 1 of yours kept, 1 replaced.');
  });

  it('keeps what it cannot read', () =>
    assert.match(write(tab([['x32010']], 'chords |hmm     |'), true).rows.join(), /hmm/));

  it('a name without room over its column is told', () => {
    const { change, rows } = write(tab([['x32030', '200232', '022000', '320003']]));
    assert.deepEqual(rows, ['chords |      G |']);
    assert.deepEqual(
      change.report.remarks.filter((remark) => remark.includes('no room')),
      [
        'Bar 1: Cadd9 has no room over its column, so it is not written.',
        'Bar 1: D/F# has no room over its column, so it is not written.',
        'Bar 1: Em has no room over its column, so it is not written.',
      ],
    );
  });
});

// The demo songs' rows were written by hand, by ear; the songs are our own.
describe('the rows of the demo songs come back', () => {
  const demo = (name: string): string =>
    readFileSync(path.resolve(__dirname, `../../../../media/demo/${name}.pegbox`), 'utf8');
  const bare = (text: string): string =>
    text
      .split('\n')
      .filter((line) => !line.startsWith('chords '))
      .join('\n');
  const names = (rows: readonly string[]): readonly string[] =>
    rows.map((row) =>
      row
        .slice(row.indexOf('|') + 1)
        .replace(/[|\s]+/g, ' ')
        .trim(),
    );

  it('power chords of a riff, at their beats', () => {
    const [first, second] = names(write(bare(demo('smoke-the-hive'))).rows);
    assert.equal(first, 'G5 Bb5 C5 G5 F5 G5 G5 Bb5 C5 Bb5 F5 G5');
    assert.equal(second, first);
  });

  it('picked chords in 6/8', () => {
    const rows = names(write(bare(demo('two-boats-out'))).rows);
    assert.deepEqual(rows.slice(0, 3), ['G Em C D G', 'G Em C D G', 'C G/B Am7 Dsus4']);
  });

  for (const name of ['bees-on-the-water', 'two-boats-out', 'wax-and-salt', 'smoke-the-hive'])
    it(`in ${name} no written name disagrees with what sounds, and a second time changes nothing`, () => {
      const { text } = write(bare(demo(name)));
      const document = service.open(text, settings);
      const wrong = service
        .diagnostics(document, settings)
        .filter(({ code }) => code === 'chord-disagrees' || code === 'chord-name');
      assert.deepEqual(wrong, []);
      assert.equal(write(text).text, text);
    });
});

describe('writing chords', () => {
  it('changes no note and no time, loses no own name, and is one change', function () {
    this.timeout(60_000);
    fc.assert(
      fc.property(randomSong, fc.boolean(), (text, replace) => {
        const document = service.open(text, settings);
        const before = service.notes(document).map(({ line: _, column: __, ...note }) => note);
        const result = service.writeChords(document, { range: undefined, replace });
        if ('error' in result) return;
        document.edit(result.edits);
        const after = service.notes(document).map(({ line: _, column: __, ...note }) => note);
        assert.deepEqual(after, before);
        assert.ok(result.edits.length <= 1);
        assert.equal(result.report.notesIn, result.report.kept);
      }),
      { numRuns: 60 },
    );
  });

  it('without tab there is nothing to name', () => {
    const result = service.writeChords(service.open('Hello.\n', settings), { range: undefined });
    assert.ok('error' in result);
  });
});
