import type { Check } from './check';

export const tabCharacter: Check = {
  code: 'tab-character',
  severity: 'warning',
  title: 'Tab character',
  help: {
    group: 'Lines',
    meaning:
      'A tab character is as wide as each editor pleases, so nobody can say which columns it stands for. It counts as one space.',
    mending: 'Write spaces until the columns stand where you want them.',
  },
  run: {
    system: ({ system: { lines } }) =>
      lines.flatMap((item, line) => {
        if ((item.kind !== 'string' && item.kind !== 'row') || !item.text.includes('\t')) return [];
        const places = [...item.text.matchAll(/\t/g)].map(({ index }) => index);
        const start = places[0] ?? 0;
        return [
          {
            line,
            start,
            end: start + 1,
            message:
              'A tab character is as wide as each editor pleases; it counts as one space here. Write spaces.',
            mends: [
              {
                title: 'Write spaces for tabs in this line',
                preferred: true,
                harmless: true,
                edits: places.map((at) => ({ line, start: at, end: at + 1, text: ' ' })),
              },
            ],
          },
        ];
      }),
  },
  examples: {
    raises: ['G\t|--0--|\n', 'chords\t|G\tD|\nG     |0---|\n', 'A|--0--|\t(twice)\nE|-----|\n'],
    quiet: ['G |--0--|\n', 'Low\ttide.\n', 'title:\tGate\n\nG|0---|\n'],
  },
};
