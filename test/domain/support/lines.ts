import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { CELL_CASES, LINE_CASES, SYSTEM_CASES, TUNING_CASES } from '../notation/cases.table';
import type { Random } from './random';

const ROOT = resolve(__dirname, '../../..');
const LINE_END = /\r\n|\r|\n/;

/** The songs that come with Pegbox, each as its text. */
export function demoSongs(): readonly string[] {
  const folder = resolve(ROOT, 'media/demo');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.pegbox'))
    .sort()
    .map((name) => readFileSync(resolve(folder, name), 'utf8'));
}

/** Lines to begin from: the songs, the sixty readings, and what players write into fields and cells. */
export function seedLines(): readonly [string, ...string[]] {
  const lines = [
    ...demoSongs().flatMap((song) => song.split(LINE_END)),
    ...LINE_CASES.map(({ text }) => text),
    ...TUNING_CASES.map(({ value }) => `tuning: ${value}`),
    ...CELL_CASES.map(({ text }) => text),
    ...SYSTEM_CASES.flatMap(({ text }) => text.split(LINE_END)),
    ...OTHERS,
  ];
  return ['', ...new Set(lines)];
}

const OTHERS = [
  'D |x|2|x(3)|',
  'D |x|2| twice',
  'a4||:5h7p5---<12>~--||: let it ring',
  'Bb2/Bb3 |0-(5h7)-5<17>--7b1/2r7--|:|',
  'G |-5////7\\5--7pb9--7b9.5--|x3',
  'E│:–0––2––:│ 2x',
  'E|-0-|-remark',
  'E|0-0|0-0',
  'palm mute |PM---   PM--|',
  'Lyrics|Oh the bees, oh',
  'ring-out |---   -- |',
  'ending |1.  |2.  |',
  'scale length : 25.5 in',
  'REFERENCE PITCH: A4 = 442 Hz',
  'gauges: 46w 36w 26w 17 13 10',
  'key:Em',
  'capo:',
  '  # a comment | with a bar',
  '[Bridge] (x3) softly',
  '[Bridge',
  '[] ',
  'Keep the swarm: eight bars.',
  'The bees | go home',
  '7 |---',
  'x |--5--|',
  'e|---5---7--- and so on',
] as const;

/** What slips into a line: signs, letters, look-alikes, spaces of every kind, marks without width, broken text. */
const HOSTILE = [
  ...'-------|||||:::0123456789xX().<>/\\~hptrbHPTRBeEaAdDgGcCfF#♯♭ \t',
  ...'–—─−│┃¦[]=_^*,;\'"+&oOlIsvkmuniq',
  '\u00a0',
  '\u202f',
  '\ufeff',
  '\u200b',
  '\u0301',
  '\u2028',
  'é',
  '東',
  '🐝',
  '\ud83d',
  '\udc1d',
  '||:',
  ':||',
  ':|:',
  '--',
  '1/4',
  '3/4',
  '9.5',
  'pb',
  'tr',
  '<12>',
  'tuning:',
  'capo: ',
  'count |',
  'PM |',
  'e|',
  'İ',
  'ſ',
  'K',
] as unknown as readonly [string, ...string[]];

/** A seed with one to six slips: characters put in, taken out, replaced, exchanged or doubled, or another line's end. */
export function mutatedLine(seeds: readonly [string, ...string[]], random: Random): string {
  let line = random.pick(seeds);
  for (let times = 1 + random.below(6); times > 0; times--) line = slip(line, seeds, random);
  return line;
}

function slip(line: string, seeds: readonly [string, ...string[]], random: Random): string {
  // Most meanings are settled at the beginning of a line.
  const at = random.below(1 + (random.chance(0.4) ? Math.min(line.length, 8) : line.length));
  const length = random.chance(0.7) ? 1 : 1 + random.below(6);
  const before = line.slice(0, at);
  const after = line.slice(at + length);
  switch (random.below(6)) {
    case 0:
      return before + random.pick(HOSTILE) + line.slice(at);
    case 1:
      return before + after;
    case 2:
      return before + random.pick(HOSTILE) + after;
    case 3:
      return before + line.charAt(at + 1) + line.charAt(at) + line.slice(at + 2);
    case 4:
      return before + line.slice(at, at + length).repeat(2) + after;
    default: {
      const other = random.pick(seeds);
      return before + other.slice(random.below(other.length + 1));
    }
  }
}
