import assert from 'node:assert/strict';
import { format } from '../../../../src/service/format/format';
import { open } from '../../../../src/service/open';
import { DEFAULT_SETTINGS } from '../../../../src/service/settings';
import type { Range } from '../../../../src/notation/tabDocument';
import { applyEdits } from '../../checks/apply';

function formatted(text: string, range?: Range): string {
  return applyEdits(text, [...format(open(text, DEFAULT_SETTINGS), range)].reverse());
}

const lines = (...texts: string[]): string => [...texts, ''].join('\n');

interface Case {
  readonly what: string;
  readonly before: string;
  readonly after: string;
}

const UKULELE = 'instrument: ukulele\n\n';

const CASES: readonly Case[] = [
  {
    what: 'labels are padded to the longest, rows with them',
    before: lines('count |1 2 |', 'A|0-2-|', '  E  |----|', 'C |----|', 'G|----|'),
    after: lines('count |1 2 |', 'A     |0-2-|', 'E     |----|', 'C     |----|', 'G     |----|'),
  },
  {
    what: 'a longer label makes room for itself only',
    before: lines('A|0---|', 'Eb|----|', 'C|----|', 'G|----|'),
    after: lines('A |0---|', 'Eb|----|', 'C |----|', 'G |----|'),
  },
  {
    what: 'room that most labels have is kept',
    before: lines('A   |0---|', 'E   |----|', 'C |----|', 'G   |----|'),
    after: lines('A   |0---|', 'E   |----|', 'C   |----|', 'G   |----|'),
  },
  {
    what: 'look-alikes become plain, on any line and in any number',
    before: lines('A│0–––│', 'E|────|', 'C¦----¦', 'G|—−--|'),
    after: lines('A|0---|', 'E|----|', 'C|----|', 'G|----|'),
  },
  {
    what: 'lines that end early go on, with the bar signs of the others',
    before: lines('A|0-2-|3-----|', 'E|', 'C|--', 'G|----|--'),
    after: lines('A|0-2-|3-----|', 'E|----|------|', 'C|----|------|', 'G|----|------|'),
  },
  {
    what: 'a remark behind a line that ends early stays behind it',
    before: lines('A|0-2-|3---|', 'E|----|-- x3', 'C|----|----|  softly  –  here', 'G|----|----|'),
    after: lines('A|0-2-|3---|', 'E|----|----| x3', 'C|----|----|  softly  –  here', 'G|----|----|'),
  },
  {
    what: 'a last bar sign out of line is moved',
    before: lines('A|0---|2--|', 'E|----|----|', 'C|----|----|', 'G|----|------|'),
    after: lines('A|0---|2---|', 'E|----|----|', 'C|----|----|', 'G|----|----|'),
  },
  {
    what: 'a bar sign that is missing is written over its dash',
    before: lines('A|0---|2---|', 'E|----|----|', 'C|---------|', 'G|----|----|'),
    after: lines('A|0---|2---|', 'E|----|----|', 'C|----|----|', 'G|----|----|'),
  },
  {
    what: 'chords move with the bar line of their row',
    before: lines(
      'chords |G      |D      |',
      'A      |0-------|2-------|',
      'E|--------|--------|',
      'C|--------|--------|',
      'G|--------|--------|',
    ),
    after: lines(
      'chords |G       |D       |',
      'A      |0-------|2-------|',
      'E      |--------|--------|',
      'C      |--------|--------|',
      'G      |--------|--------|',
    ),
  },
  {
    what: 'a row that draws one bar line draws them all, and one that draws none stays bare',
    before: lines(
      'words |low tide|ebbs',
      'count |1 3      1 3',
      'A     |0---2---|3---5---|0-------|',
      'E|--------|--------|--------|',
      'C|--------|--------|--------|',
      'G|--------|--------|--------|',
    ),
    after: lines(
      'words |low tide|ebbs    |        |',
      'count |1 3      1 3',
      'A     |0---2---|3---5---|0-------|',
      'E     |--------|--------|--------|',
      'C     |--------|--------|--------|',
      'G     |--------|--------|--------|',
    ),
  },
  {
    what: 'tabs and no-break spaces outside remarks are spaces',
    before: lines('A\t|0---|', 'E\u00a0|----|', 'C |----|\t(soft\tly)', 'G |----|'),
    after: lines('A |0---|', 'E |----|', 'C |----| (soft\tly)', 'G |----|'),
  },
  {
    what: 'repeat dots stay where they are',
    before: lines('A|:0---:|', 'E  |-----', 'C|------|', 'G|------|'),
    after: lines('A|:0---:|', 'E|-----:|', 'C|------|', 'G|------|'),
  },
];

const UNTOUCHED: readonly Case[] = [
  {
    what: 'a bar sign whose move would give a note another time: its diagnostic stays, too',
    before: lines('A|0---|2---|', 'E|---|--2-|', 'C|----|----|', 'G|----|----|'),
    after: lines('A|0---|2---|', 'E|---|--2-|', 'C|----|----|', 'G|----|----|'),
  },
  {
    what: 'what follows a space inside a bar',
    before: lines('A|0-- 2--|', 'E|-------|', 'C|-------|', 'G|-------|'),
    after: lines('A|0-- 2--|', 'E|-------|', 'C|-------|', 'G|-------|'),
  },
  {
    what: 'the columns under chords that stand loose above the strings',
    before: lines('   Am     F', 'A  |0---3---|', 'Eb |--------|', 'C|--------|', 'G  |--------|'),
    after: lines('   Am     F', 'A  |0---3---|', 'Eb |--------|', 'C  |--------|', 'G  |--------|'),
  },
  {
    what: 'the distance of strings from words below them',
    before: lines('A|0---3---|', 'Eb|--------|', 'C|--------|', 'G|--------|', '  low tide'),
    after: lines('A|0---3---|', 'Eb|--------|', 'C|--------|', 'G|--------|', '  low tide'),
  },
];

describe('formatting', () => {
  for (const { what, before, after } of [...CASES, ...UNTOUCHED]) {
    it(what, () => {
      assert.equal(formatted(UKULELE + before), UKULELE + after);
      assert.equal(formatted(UKULELE + after), UKULELE + after, 'once is enough');
    });
  }

  it('leaves fields, prose, headings, comments and blank lines as they are', () => {
    const text = [
      'title:    Salt   Road',
      'instrument:ukulele',
      'instrument:  ukulele   ',
      '',
      '',
      '[ Verse ]   x2',
      'Slowly  –  and  quietly,   ',
      '   ',
      'A|0---|',
      '#   softly   –',
      'Eb  |----|',
      'C|----|',
      'G|----|',
      '  ',
      'A | D | E | A |',
      '\tthe end',
    ].join('\n');
    const after = formatted(text).split('\n');
    text.split('\n').forEach((line, i) => {
      if (![8, 10, 11, 12].includes(i)) assert.equal(after[i], line);
    });
    assert.equal(after[8], 'A  |0---|');
  });

  for (const end of ['\r\n', '\r']) {
    it(`keeps line ends, ${JSON.stringify(end)}`, () => {
      const text = (UKULELE + lines('A|0---|', 'E |----', 'C|----|', 'G|----|')).replaceAll('\n', end);
      const after = formatted(text);
      assert.equal(
        after,
        (UKULELE + lines('A|0---|', 'E|----|', 'C|----|', 'G|----|')).replaceAll('\n', end),
      );
    });
  }

  it('of a range reaches the systems that it touches, whole, and no others', () => {
    const system = lines('A |0---|', 'E|----', 'C|----|', 'G|----|');
    const inOrder = lines('A|0---|', 'E|----|', 'C|----|', 'G|----|');
    const text = `${UKULELE}${system}\n${system}\n${system}`;
    const lineOf = 2 + 5 + 1;
    const at = (from: number, to: number): Range => ({
      start: { line: from, character: 2 },
      end: { line: to, character: 2 },
    });
    assert.equal(formatted(text, at(lineOf, lineOf)), `${UKULELE}${system}\n${inOrder}\n${system}`);
    assert.equal(formatted(text, at(lineOf - 1, lineOf + 9)), `${UKULELE}${system}\n${inOrder}\n${inOrder}`);
    const whole: Range = { start: { line: 2, character: 0 }, end: { line: 7, character: 0 } };
    assert.equal(formatted(text, whole), `${UKULELE}${inOrder}\n${system}\n${system}`);
  });

  it('edits no more than what changes, so that the cursor stays', () => {
    const text = UKULELE + lines('A  |0---|', 'E|----', 'C  |----|', 'G  |----|');
    const edits = format(open(text, DEFAULT_SETTINGS));
    assert.deepEqual(
      edits.map(({ range: { start, end }, newText }) => [
        start.line,
        start.character,
        end.character,
        newText,
      ]),
      [
        [3, 1, 1, '  '],
        [3, 6, 6, '|'],
      ],
    );
  });

  it('gives nothing where everything is in order', () => {
    assert.deepEqual(format(open(`${UKULELE}${CASES[0]?.after ?? ''}`, DEFAULT_SETTINGS)), []);
  });
});
