import { findingAt, numbersFact, problemsOf, type Check, type LineEdit } from './check';
import { rowLineAt, rowOffsetAt } from './support/edits';
import type { RowLine } from '../notation/parsedLine';

export const rowBarOutOfLine: Check = {
  code: 'row-bar-out-of-line',
  severity: 'warning',
  title: 'Bar line of a row out of line',
  help: {
    group: 'Bars',
    meaning:
      'What stands in a row belongs to the columns of the string lines below. A bar line of this row stands over no bar sign of theirs, so the marks about it may have slipped too.',
    mending:
      'Move the bar line and look at the marks beside it. Bar lines after a row’s first may be left out.',
  },
  run: {
    system: (scene) =>
      problemsOf(scene, 'row-bar-out-of-line').map((problem) => {
        const row = rowLineAt(scene, problem.line);
        const edits = row && straighten(row, problem.line, numbersFact(problem, 'expected'));
        return findingAt(
          problem,
          'This bar line stands over no bar sign of the strings. Move it into line, and the marks beside it where they slipped too.',
          edits ? [{ title: 'Move the bar line into line', edits }] : [],
        );
      }),
  },
  examples: {
    raises: [
      'count |1   2  |3   4   |\nG     |0---0---|0---0---|\n',
      'chords |G      |D       |\nG      |0-------|2-------|\n',
      'words |low     tide | ebbs |\nG     |0-------|2-------|\n',
    ],
    quiet: [
      'chords |G       |D       |\nG      |0-------|2-------|\n',
      'chords |G        D\nG      |0-------|2-------|\n',
      'chords | G      |D       |\nG      |:0-----:|2-------|\n',
    ],
  },
};

/** The row with each bar line over a bar sign, where only spaces are in the way; undefined otherwise. */
function straighten(row: RowLine, line: number, columns: readonly number[]): readonly LineEdit[] | undefined {
  const taken = new Set(
    row.bars.filter(({ column }) => columns.includes(column)).map(({ column }) => column),
  );
  const edits: LineEdit[] = [];
  for (const bar of row.bars) {
    const end = bar.column + bar.width - 1;
    if (columns.some((column) => bar.column <= column && column <= end)) continue;
    const to = columns
      .filter((column) => !taken.has(column) && isBlank(row, column))
      .sort((a, b) => Math.abs(a - bar.column) - Math.abs(b - bar.column))[0];
    const at = to === undefined ? undefined : rowOffsetAt(row, to);
    edits.push({ line, start: bar.start, end: bar.start + bar.text.length, text: ' '.repeat(bar.width) });
    if (to === undefined || at === undefined || at >= row.text.length) continue;
    taken.add(to);
    edits.push({ line, start: at, end: at + 1, text: '|' });
  }
  return edits;
}

function isBlank(row: RowLine, column: number): boolean {
  const at = rowOffsetAt(row, column);
  return at !== undefined && row.text[at] === ' ';
}
