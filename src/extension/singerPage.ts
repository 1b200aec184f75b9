import type { SingerAnswer, SingerWay, SungRange } from '../service/singer/singerAnswer';
import { markdownTable, markdownText } from './markdownText';

/** The ways to fit a singer, as a page in Markdown. */
export function singerPage(file: string, answer: SingerAnswer): string {
  const { voice, tune, here, ways, remarks, cautions } = answer;
  const pieces = [
    `# Fit a singer: ${markdownText(file)}`,
    [
      ...(voice ? [`Voice: ${rangeText(voice)}.`] : []),
      ...(voice && tune ? [`Tune: ${rangeText(tune)}, as it sounds now.`] : []),
      'Every string and fret stays; the sound moves.',
    ].join(' '),
    `As it stands: ${markdownText([here.words, ...(here.lies ? [here.lies.words] : [])].join('. '))}.`,
    ...(cautions.length > 0 ? ['## Before a string goes up', ...cautions.map(markdownText)] : []),
    '## Ways, best first',
    table(ways),
    ...(remarks.length > 0 ? ['## What to know', ...remarks.map(markdownText)] : []),
  ];
  return `${pieces.join('\n\n')}\n`;
}

function rangeText({ name, low, high }: SungRange): string {
  const notes = `${low}–${high}`;
  return markdownText(name === notes ? notes : `${name}, ${notes}`);
}

const HEAD = ['Way', 'Sound', 'How the tune lies', 'Strings', 'Frets left'];

function table(ways: readonly SingerWay[]): string {
  return markdownTable(
    HEAD,
    ways.map(({ title, words, lies, strain, fretsLeft }) => [
      title,
      words,
      lies?.words ?? '',
      strain.words,
      String(fretsLeft),
    ]),
  );
}
