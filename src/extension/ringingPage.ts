import type { RingingAnswer, RingingOver, RingingVerdict } from '../service/ringing/ringingAnswer';
import { markdownTable, markdownText } from './markdownText';

/** Which open strings may ring, as a page in Markdown. */
export function ringingPage(file: string, answer: RingingAnswer): string {
  const { title, keys, chords, remarks } = answer;
  const tunings = [...new Set([...keys, ...chords].map(({ tuning }) => tuning))];
  const pieces = [
    `# Which strings may ring: ${markdownText(file)}`,
    `For ${markdownText(title)}. A string that may ring can be left open for as long as the chord lasts; one in passing does no harm where it is touched on the way; the others are to be muted.`,
    ...tunings.flatMap((tuning) => tableFor(tuning, answer)),
    ...(remarks.length > 0 ? ['## What to know', ...remarks.map(markdownText)] : []),
  ];
  return `${pieces.join('\n\n')}\n`;
}

const HEAD = ['Over', 'Where', 'May ring', 'In passing', 'Mute'];

function tableFor(tuning: string, { keys, chords }: RingingAnswer): string[] {
  const here = (over: RingingOver): boolean => over.tuning === tuning;
  const rows = [
    ...keys.filter(here).map((key) => rowOf(`The key: ${nameOf(key)}`, '', key)),
    ...chords.filter(here).map((chord) => rowOf(nameOf(chord), chord.where, chord)),
  ];
  const [first] = [...keys, ...chords].filter(here);
  const open = (first?.strings ?? []).map(({ string, note }) => `string ${string} ${note}`).join(', ');
  return [`## ${markdownText(tuning)}`, `Open strings: ${markdownText(open)}.`, markdownTable(HEAD, rows)];
}

function nameOf({ name, sounds }: RingingOver): string {
  return sounds === null ? name : `${name} (sounds ${sounds})`;
}

function rowOf(name: string, where: string, over: RingingOver): string[] {
  return [name, where, cell(over, 'free'), cell(over, 'passing'), cell(over, 'mute')];
}

/** `6 and 4: root; 1: fifth`, strings of one reason together. */
function cell({ strings }: RingingOver, verdict: RingingVerdict): string {
  const groups = new Map<string, number[]>();
  for (const { string, reason, verdict: own } of strings) {
    if (own !== verdict) continue;
    const group = groups.get(reason);
    if (group) group.push(string);
    else groups.set(reason, [string]);
  }
  return [...groups].map(([reason, numbers]) => `${numbers.join(', ')}: ${reason}`).join('; ');
}
