import type { HandoutContent } from './handoutContent';

/** Characters of a line, so that it prints on any paper and reads in any letter. */
const LINE = 78;

/** The handout as plain text: lines end with LF. */
export function handoutText(content: HandoutContent): string {
  const { title, facts, strings, retuning, barres, lists, shapes } = content;
  const steps = retuning.steps.flatMap((step, at) => wrapped(step, `${at + 1}. `));
  const blocks: readonly (readonly string[])[] = [
    [title, '='.repeat(title.length), ...facts.flatMap((fact) => wrapped(fact))],
    [...heading(strings.heading), ...table(strings.columns, strings.rows)],
    [...heading(retuning.heading), ...steps],
    retuning.notes.flatMap((note) => wrapped(note)),
    retuning.cautions.length > 0
      ? [...heading('Caution'), ...retuning.cautions.flatMap((caution) => wrapped(caution))]
      : [],
    [...heading(barres.heading), ...table(barres.columns, barres.rows), ...wrapped(barres.remark)],
    ...lists.map((list) => [
      ...heading(list.heading),
      ...list.lines.flatMap(({ text, below }) => wrapped(text, below ? '- ' : '')),
    ]),
    ...(shapes.shapes.length > 0
      ? [
          [
            ...heading(shapes.heading),
            ...table(
              [],
              shapes.shapes.map(({ chord, text }) => [chord, text]),
            ),
          ],
        ]
      : []),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

function heading(text: string): readonly string[] {
  return [text, '-'.repeat(text.length)];
}

/** Rows in columns; what stands in the last one goes on below itself. */
function table(columns: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  const all = columns.length > 0 ? [columns, ...rows] : rows;
  const widths = (all[0] ?? [])
    .slice(0, -1)
    .map((_, at) => Math.max(...all.map((row) => (row[at] ?? '').length)));
  return all.flatMap((row) => {
    const before = widths.map((width, at) => `${(row[at] ?? '').padEnd(width)}  `).join('');
    return wrapped(row.at(-1) ?? '', before).map((line) => line.trimEnd());
  });
}

/** A sentence over several lines, those after the first one indented by the mark before it. */
function wrapped(text: string, mark = ''): readonly string[] {
  const lines: string[] = [];
  let line = mark;
  for (const word of text.split(' ')) {
    const longer = line.trimEnd() === '' || line === mark ? line + word : `${line} ${word}`;
    if (longer.length > LINE && line.trim() !== '' && line !== mark) {
      lines.push(line);
      line = ' '.repeat(mark.length) + word;
    } else line = longer;
  }
  return [...lines, line].filter((one) => one.trim() !== '');
}
