import type { System, TabDocument, TextEdit } from '../notation/tabDocument';
import type { Check } from './check';

/** Rows that say something by themselves: chords over words. */
const ALONE = ['chords', 'words'];

export const rowWithoutStrings: Check = {
  code: 'row-without-strings',
  severity: 'warning',
  title: 'A row without strings',
  help: {
    group: 'Rows',
    meaning:
      'A row belongs to the string lines it stands with; a blank line, a heading, a field or a line of text ends the system. Chords over words may stand alone, but a `count`, `picking`, `fingers`, `palm mute` or `ending` row by itself says nothing about any note.',
    mending: 'Put the row right above or below its string lines, with no blank line between.',
  },
  run: {
    system: ({ system: { lines } }) => {
      const rows = lines.flatMap((item, line) => (item.kind === 'row' ? [{ item, line }] : []));
      if (rows.length < lines.filter(({ kind }) => kind !== 'comment').length) return [];
      const [first] = rows.filter(({ item }) => item.row !== 'text');
      if (!first || rows.some(({ item }) => ALONE.includes(item.row))) return [];
      const { line, item } = first;
      return [
        {
          line,
          start: item.wordStart,
          end: item.wordEnd,
          message: `This ${item.row} row has no string lines with it, so it says nothing. Put it right above them, with no blank line between.`,
          mends: [{ title: 'Take the blank line out', preferred: true, edits: closeGap }],
        },
      ];
    },
  },
  examples: {
    raises: [
      'count |1   2   3   4   |\n\nG|0---0---0---0---|\n',
      'PM |---  |\n',
      'picking |p i m |\nfingers |1 2 3 |\n\nThat is all.\n',
    ],
    quiet: [
      'count |1   2   3   4   |\nG|0---0---0---0---|\n',
      'chords |G   D   |\nwords  |low tide|\n',
      'chords |G   D   |\ncount  |1 2 3 4 |\n',
    ],
  },
};

/** Without the blank lines between the row and the string lines below it. */
function closeGap(document: TabDocument, system: System): readonly TextEdit[] | undefined {
  const end = system.firstLine + system.lines.length;
  let next = end;
  while (next < document.lineCount && document.line(next).kind === 'blank') next += 1;
  const below = document.systemAt(next);
  if (next === end || below?.lines.some(({ kind }) => kind === 'string') !== true) return undefined;
  return [{ range: { start: { line: end, character: 0 }, end: { line: next, character: 0 } }, newText: '' }];
}
