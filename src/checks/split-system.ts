import { labelAgrees } from '../notation/labels';
import type { StringLine } from '../notation/parsedLine';
import type { System, TabDocument } from '../notation/tabDocument';
import type { Check } from './check';
import { rangeOf } from './support/edits';

export const splitSystem: Check = {
  code: 'split-system',
  severity: 'warning',
  title: 'A system split by a blank line',
  help: {
    group: 'Labels and strings',
    meaning:
      'A blank line ends a system. These two hold some of the strings each, and all of them together, with the same bars: they look like one system that was split, and are played one after the other as they stand.',
    mending: 'Take the blank line out.',
  },
  run: {
    neighbours: (document, before, system) => {
      const end = before.firstLine + before.lines.length;
      if (!isOne(document, before, system)) return [];
      const range = { start: { line: end, character: 0 }, end: { line: system.firstLine, character: 0 } };
      return [
        {
          range: rangeOf(system.firstLine, 0, system.lines[0]?.text.length ?? 0),
          message:
            'A blank line splits the strings of one system, so its two halves are played one after the other. Take the blank line out.',
          mends: [{ title: 'Take the blank line out', preferred: true, edits: [{ range, newText: '' }] }],
        },
      ];
    },
  },
  examples: {
    raises: [
      'E|0---|\nB|----|\nG|----|\n\nD|----|\nA|----|\nE|0---|\n',
      'instrument: bass\n\nG|0---|\n\nD|----|\nA|----|\nE|0---|\n',
      'tuning: DADGAD\n\nD|0---|\nA|----|\nG|----|\nD|----|\n\n\nA|----|\nD|0---|\n',
    ],
    quiet: [
      'E|0---|\nB|----|\nG|----|\nD|----|\nA|----|\nE|0---|\n',
      'A|0---|\nE|----|\n\nA|2---|\nE|----|\n',
      'E4|0---|\nB|----|\nG|----|\n\nThen low:\n\nD|----|\nA|----|\nE2|0---|\n',
    ],
  },
};

function isOne(document: TabDocument, before: System, system: System): boolean {
  const { tuning } = system.header;
  const strings = before.reading.strings.length + system.reading.strings.length;
  if (strings !== tuning.strings.length) return false;
  if (before.header !== system.header || before.firstLine + before.lines.length === system.firstLine)
    return false;
  const top = stringsOf(before);
  const low = stringsOf(system);
  const all = [...top, ...low];
  if (top.length === 0 || low.length === 0) return false;
  for (let line = before.firstLine + before.lines.length; line < system.firstLine; line++) {
    if (document.line(line).kind !== 'blank') return false;
  }
  const bars = (lines: readonly StringLine[]): string =>
    (lines[0]?.tokens ?? []).flatMap((t) => (t.kind === 'bar' ? [t.column] : [])).join();
  return (
    bars(top) === bars(low) && all.every(({ label }, i) => labelAgrees(label, tuning, all.length - 1 - i))
  );
}

function stringsOf(system: System): readonly StringLine[] {
  return system.lines.flatMap((line) => (line.kind === 'string' ? [line] : []));
}
