import type { RowLine } from '../notation/parsedLine';
import type { Check } from './check';
import { rangeOf, replace } from './support/edits';

export const rowMisspelled: Check = {
  code: 'row-misspelled',
  severity: 'hint',
  title: 'A row nearly written',
  help: {
    group: 'Rows',
    meaning:
      'A row may begin with any word and is then kept as text. This word is a letter or two off one that has a meaning (`count`, `chords`, `words`, `picking`, `fingers`, `palm mute`, `ending`), so the row does nothing as it stands.',
    mending: 'Write the word that is meant, or one that is not so near.',
  },
  run: {
    nearMiss: (document, at) => {
      const line = document.line(at);
      if (line.kind !== 'row' || line.nearRow === undefined) return [];
      const { start, end, text } = rewordRow(line, line.nearRow);
      return [
        {
          range: rangeOf(at, line.wordStart, line.wordEnd),
          message: messageFor(line, line.nearRow),
          mends: [
            { title: `Write ${line.nearRow}`, preferred: true, edits: [replace(at, start, end, text)] },
          ],
        },
      ];
    },
    system: ({ system: { lines } }) =>
      lines.flatMap((item, line) => {
        if (item.kind !== 'row' || item.nearRow === undefined) return [];
        return [
          {
            line,
            start: item.wordStart,
            end: item.wordEnd,
            message: messageFor(item, item.nearRow),
            mends: [
              {
                title: `Write ${item.nearRow}`,
                preferred: true,
                edits: [{ line, ...rewordRow(item, item.nearRow) }],
              },
            ],
          },
        ];
      }),
  },
  examples: {
    raises: [
      'cuont |1 & 2 & |\nG     |0---2---|\n',
      'cords |G   D   |\n',
      'pickng |p i m a |\nG      |0-------|\n',
    ],
    quiet: [
      'count |1 & 2 & 3 & 4 & |\nG     |0---2---4---5---|\n',
      'ring |-----   |\nG    |0---2---|\n',
      'strum |D   D U |\nG     |0---2---|\n',
    ],
  },
};

function messageFor(row: RowLine, meant: string): string {
  return `“${row.word}” is a row of text as it stands. Is ${meant} meant?`;
}

/** The new word, in the room that the old one and the spaces behind it have. */
function rewordRow(row: RowLine, meant: string): { start: number; end: number; text: string } {
  const room = row.bodyStart - row.wordStart;
  return { start: row.wordStart, end: row.bodyStart, text: meant.padEnd(room) };
}
