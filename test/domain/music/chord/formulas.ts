import { degree } from '../../../../src/music/chord/degree';
import { parsePitchName, pitchClassOf } from '../../../../src/music/noteName';
import type { Shape } from './shapes';

/**
 * What the data set's suffixes mean: degrees above the root, `?` may be missing. Common practice, no source, but for
 * `alt`, which in this data set is 1 3 b5, and `13b5b9`, which on four strings has neither root nor third. `7sg` is
 * explained nowhere and left out.
 */
const FORMULAS: Readonly<Record<string, string>> = {
  major: '3 5?',
  minor: 'b3 5?',
  dim: 'b3 b5',
  dim7: 'b3 b5 bb7',
  sus2: '2 5?',
  sus4: '4 5?',
  '7sus4': '4 5? b7',
  alt: '3 b5',
  aug: '3 #5',
  '6': '3 5? 6',
  '69': '3 5? 6 9',
  '7': '3 5? b7',
  '7b5': '3 b5 b7',
  aug7: '3 #5 b7',
  '9': '3 5? b7 9',
  '9b5': '3 b5 b7 9',
  aug9: '3 #5 b7 9',
  '7b9': '3 5? b7 b9',
  '7#9': '3 5? b7 #9',
  '11': '3 5? b7 9? 11',
  '9#11': '3 5? b7 9? #11',
  '13': '3 5? b7 9? 11? 13',
  maj7: '3 5? 7',
  maj7b5: '3 b5 7',
  'maj7#5': '3 #5 7',
  maj9: '3 5? 7 9',
  maj11: '3 5? 7 9? 11',
  maj13: '3 5? 7 9? 11? 13',
  m6: 'b3 5? 6',
  m69: 'b3 5? 6 9',
  m7: 'b3 5? b7',
  m7b5: 'b3 b5 b7',
  m9: 'b3 5? b7 9',
  m11: 'b3 5? b7 9? 11',
  mmaj7: 'b3 5? 7',
  mmaj7b5: 'b3 b5 7',
  mmaj9: 'b3 5? 7 9',
  mmaj11: 'b3 5? 7 9? 11',
  add9: '3 5? 9',
  madd9: 'b3 5? 9',
  '7b9#5': '3 #5 b7 b9',
  '13b9': '3 5? b7 b9 11? 13',
  '13b5b9': '3? b5 b7 b9 13',
  b13b9: '3 5? b7 b9 11? b13',
  'b13#9': '3 5? b7 #9 11? b13',
  m9b5: 'b3 b5 b7 9',
};

/** A shape with what its label says and what it holds. */
export interface Judged {
  readonly shape: Shape;
  readonly root: number;
  /** Tones above the root that the label stands for, all and those it needs; bit 0 is the root. */
  readonly full: number;
  readonly needed: number;
  /** Bass that the label states, a pitch class. */
  readonly slash: number | undefined;
  /** What sounds, above the root. */
  readonly sounding: number;
  readonly bass: number;
  readonly rightness: 'sound' | 'rootless' | 'faulty';
}

/** Holds a shape against its label; undefined for a suffix without a formula. */
export function judge(shape: Shape): Judged | undefined {
  const root = classOf(shape.key);
  const slashMatch = /^(m?)\/(.+)$/.exec(shape.suffix);
  const formula = slashMatch ? FORMULAS[slashMatch[1] === 'm' ? 'minor' : 'major'] : FORMULAS[shape.suffix];
  if (formula === undefined || root === undefined) return undefined;
  const slash = slashMatch ? classOf(slashMatch[2] ?? '') : undefined;
  const bit = (pitchClass: number) => 1 << ((pitchClass - root + 12) % 12);
  let [full, needed] = [1, 1];
  for (const text of formula.split(' ')) {
    const tone = 1 << degree(text.replace('?', '')).halfSteps;
    full |= tone;
    if (!text.endsWith('?')) needed |= tone;
  }
  const sounding = shape.midi.reduce((mask, midi) => mask | bit(midi % 12), 0);
  const bass = Math.min(...shape.midi) % 12;
  const allowed = full | (slash === undefined ? 0 : bit(slash));
  const wrongBass = slash !== undefined && bass !== slash;
  const faulty = (sounding & ~allowed) !== 0 || (needed & ~sounding & ~1) !== 0 || wrongBass;
  const rightness = faulty ? 'faulty' : sounding & 1 ? 'sound' : 'rootless';
  return { shape, root, full, needed, slash, sounding, bass, rightness };
}

function classOf(name: string): number | undefined {
  const parsed = parsePitchName(name);
  return parsed && pitchClassOf(parsed);
}

/** `D 7#9 #2`, as the list of faulty labels calls a shape. */
export function labelOf({ key, suffix, number }: Shape): string {
  return `${key} ${suffix} #${number}`;
}

/** Labels of chords-db 0.5.1 whose notes are not what they say, found by this project's formulas. */
export const FAULTY_GUITAR: readonly string[] = expand(
  'C 9 #1 #4; C# aug #1 #2; C# 7b5 #4; C# 11 #1 #2 #3 #4; C# 9#11 #1; D 7#9 #2; D maj9 #2; D mmaj7 #2; D mmaj11 #3; ' +
    'Eb 7b5 #3; Eb maj7b5 #2; Eb m69 #3; Eb 11 #3; E madd9 #1 #2 #3 #4; F /A #3; F# alt #4; G add9 #2; G m11 #3; ' +
    'Ab maj7b5 #3; A dim #2; A m/G# #1; Bb 6 #4; B aug #4',
);
export const FAULTY_UKULELE: readonly string[] = expand('B madd9 #1 #2 #3; F 11 #1');

function expand(list: string): string[] {
  return list.split('; ').flatMap((entry) => {
    const [key = '', suffix = '', ...numbers] = entry.split(' ');
    return numbers.map((number) => `${key} ${suffix} ${number}`);
  });
}
