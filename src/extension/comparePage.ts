import type { CompareAnswer, ComparedBar, ComparedChange } from '../service/compare/compareAnswer';
import { markdownTable, markdownText } from './markdownText';

export interface ComparedVersions {
  /** What the two versions are called: `lantern.pegbox as it was saved`. */
  readonly before: string;
  readonly after: string;
}

const KINDS: Readonly<Record<ComparedChange['kind'], string>> = {
  added: 'added',
  lost: 'lost',
  retimed: 'another time',
  repitched: 'another pitch',
  elsewhere: 'elsewhere on the neck',
  played: 'played another way',
};

/** What sets two versions apart, as a page in Markdown: the counts, then bar by bar. */
export function comparePage({ before, after }: ComparedVersions, answer: CompareAnswer): string {
  const { fields, bars, remarks } = answer;
  const pieces = [
    `# From ${markdownText(before)} to ${markdownText(after)}`,
    ...remarks.map(markdownText),
    ...(bars.length > 0 ? [counts(answer)] : []),
    ...(fields.length > 0
      ? [
          '## Fields',
          markdownTable(
            ['Field', 'Before', 'Now'],
            fields.map(({ part, field, before: one, after: other }) => [
              part === null ? field : `${field} of ${part}`,
              one,
              other,
            ]),
          ),
        ]
      : []),
    ...bars.flatMap((bar, i) => barText(bar, bars[i - 1])),
  ];
  return `${pieces.join('\n\n')}\n`;
}

function counts({ counts: all }: CompareAnswer): string {
  const names = Object.entries(KINDS) as [ComparedChange['kind'], string][];
  const rows: (readonly [string, number])[] = [
    ['the same', all.same],
    ...names.map(([kind, name]) => [name, all[kind]] as const).filter(([, count]) => count > 0),
  ];
  return markdownTable(
    ['Notes', 'How many'],
    rows.map(([name, count]) => [name, String(count)]),
  );
}

function barText(bar: ComparedBar, last: ComparedBar | undefined): string[] {
  const heading = headingOf(bar);
  const rows = bar.changes.map(({ kind, words }) => [KINDS[kind], words]);
  return [
    ...(heading !== '' && (!last || headingOf(last) !== heading) ? [`## ${markdownText(heading)}`] : []),
    `### ${bar.title}`,
    rows.length === 0 ? lengthText(bar) : markdownTable(['What', 'Note'], rows),
  ];
}

function lengthText({ before, after }: ComparedBar): string {
  return before !== null && after !== null
    ? 'Its length is another one; its notes are the same.'
    : 'Without notes.';
}

function headingOf({ part, section }: ComparedBar): string {
  return [part, section].filter((name) => name !== null && name !== '').join(', ');
}
