import { usualLabel } from '../notation/labels';
import type { ParsedLine } from '../notation/parsedLine';
import type { TabDocument } from '../notation/tabDocument';
import type { Check, Mend } from './check';
import { lastFirst, rangeOf, replace } from './support/edits';

export const stringLineMisspelled: Check = {
  code: 'string-line-misspelled',
  severity: 'warning',
  title: 'A string line nearly written',
  help: {
    group: 'Lines',
    meaning:
      'The line looks like the bars of a string but is none, so it is not played and cuts the system it stands in. A string line begins with a label, the string’s note or number from 1 to 14, and a bar line right behind it. The note B is written B, not H.',
    mending: 'Write the label and the bar line: `E|--0--2--|`.',
  },
  run: {
    nearMiss: (document, at) => {
      // Of several in one run the first tells for all.
      if (!isNearString(document.line(at)) || !isFirst(document, at)) return [];
      const { first, lines } = runAround(document, at);
      const near = lines.flatMap((line, i) => (isNearString(line) ? [first + i] : []));
      const line = document.line(at);
      const start = line.text.length - line.text.trimStart().length;
      const more = near.length > 1 ? ` So do ${near.length - 1} more below it.` : '';
      return [
        {
          range: rangeOf(at, start, line.text.trimEnd().length),
          message: `This looks like the bars of a string but is not played: a label, the string’s note or number, and | come first, such as ${labelFor(document, at)}|.${more}`,
          mends: mendsFor(document, at, first, lines, near),
        },
      ];
    },
  },
  examples: {
    raises: [
      '|--0--2--|\n',
      'G:--0--2--|\n',
      'E|--0--|\nH|--1--|\nG|--0--|\nD|--2--|\nA|--3--|\nE|-----|\n',
      'instrument: bass\n\n|--0--|\n|--2--|\n|--2--|\n|--0--|\n',
      '15|0---|\n',
    ],
    quiet: ['G|--0--2--|\n', '|---|---|---|\n', 'A | D | E | A |\n', '-----------\n'],
  },
};

function isNearString(line: ParsedLine): boolean {
  return line.kind === 'prose' && line.nearMiss?.kind === 'string-line';
}

/** Whether no other near string line stands above this one in its run. */
function isFirst(document: TabDocument, at: number): boolean {
  let line = at - 1;
  while (line >= 0 && document.line(line).kind === 'string') line -= 1;
  return line < 0 || !isNearString(document.line(line));
}

/** The string lines and near ones that stand together about a line. */
function runAround(document: TabDocument, at: number): { first: number; lines: readonly ParsedLine[] } {
  const belongs = (line: number): boolean =>
    line >= 0 &&
    line < document.lineCount &&
    (document.line(line).kind === 'string' || isNearString(document.line(line)));
  let first = at;
  while (belongs(first - 1)) first -= 1;
  let end = at;
  while (belongs(end)) end += 1;
  return { first, lines: Array.from({ length: end - first }, (_, i) => document.line(first + i)) };
}

function labelFor(document: TabDocument, at: number): string {
  const { tuning } = document.headerAt(at);
  return usualLabel(tuning, tuning.strings.length - 1);
}

function mendsFor(
  document: TabDocument,
  at: number,
  first: number,
  lines: readonly ParsedLine[],
  near: readonly number[],
): Mend[] {
  const { tuning } = document.headerAt(at);
  const count = tuning.strings.length;
  if (lines.length === count) {
    const edits = near.map((line) => {
      const label = usualLabel(tuning, count - 1 - (line - first));
      return relabelled(line, document.line(line).text, label);
    });
    const title =
      near.length === 1 ? 'Label the line by the tuning' : `Label the ${near.length} lines by the tuning`;
    return [{ title, preferred: true, edits: lastFirst(edits) }];
  }
  const { text } = document.line(at);
  const named = /^\s*([A-Ga-g][#b♯♭]?\d?|1[0-4]|[1-9])\s*[:;.)]\s*(?=[-–—─−|:\d])/u.exec(text);
  if (!named) return [];
  const label = named[1] ?? '';
  return [
    {
      title: `Write ${label}|`,
      preferred: true,
      edits: [replace(at, 0, named[0].length, `${label}|`)],
    },
  ];
}

/** A label and a bar line before what looks like the bars. */
function relabelled(line: number, text: string, label: string): Mend['edits'][number] {
  const before = /^[^-–—─−|│┃¦]*?(?=\s*(?:[-–—─−|│┃¦]|\d+[-–—─−]))/u.exec(text)?.[0] ?? '';
  const rest = text.slice(before.length).trimStart();
  const bar = /^[|│┃¦]/u.test(rest) ? '' : '|';
  return replace(line, 0, text.length - rest.length, label + bar);
}
