import { randomFrom, type Random } from '../domain/support/random';

/*
 * Documents for the benchmarks, in three languages and of equal byte size, and edits that no run repeats. ASCII only,
 * so that a character is a byte. The same seed gives the same text.
 */

/** A change of one character: what is typed takes the place of what stands there. */
export interface Key {
  readonly line: number;
  readonly character: number;
  readonly text: string;
}

/** A document that can be edited, one key at a time. */
export interface BenchText {
  readonly languageId: string;
  readonly text: string;
  /**
   * The next two keys, at a place chosen at random: after the first the document has one problem more, after the
   * second it has not. Neither line has been seen before, as far as chance allows.
   */
  nextKeys(): readonly [Key, Key];
  /** A place that has a hover. */
  hoverPlace(): { readonly line: number; readonly character: number };
}

export const BAR_COUNTS = [100, 1_000, 10_000] as const;

const STRINGS = ['E4', 'B3', 'G3', 'D3', 'A2', 'E2'];
const BARS_A_SYSTEM = 4;
const SYSTEMS_A_SECTION = 8;
/** Within one hand's reach, so that no key below brings two notes together that are too wide apart. */
const FRETS = [0, 5, 6, 7, 8, 9] as const;
/** Eight eighths of two columns. */
const BAR_COLUMNS = 16;

/**
 * A song of so many bars, all distinct (99 % and more): four bars a line on six strings, eight eighths a bar, hammer-ons, pull-offs and slides that go the right way, about 11 KB for 100 bars.
 */
export function tabSong(bars: number, seed: number): string {
  const random = randomFrom(seed);
  const lines = ['title: Salt Road', 'tuning: standard', 'meter: 4/4', 'tempo: 96', ''];
  for (let system = 0; system * BARS_A_SYSTEM < bars; system++) {
    if (system % SYSTEMS_A_SECTION === 0) lines.push(`[Verse ${system / SYSTEMS_A_SECTION + 1}]`);
    lines.push(...tabSystem(random), '');
  }
  return lines.join('\n');
}

function tabSystem(random: Random): string[] {
  const cells = STRINGS.map(() => '');
  for (let bar = 0; bar < BARS_A_SYSTEM; bar++) {
    const rows = STRINGS.map(() => Array.from({ length: BAR_COLUMNS }, () => '-'));
    for (let column = 0; column < BAR_COLUMNS; column += 2) {
      const row = rows[random.below(STRINGS.length)];
      if (!row) continue;
      const fret = random.pick(FRETS);
      row[column] = String(fret);
      const other = random.pick(FRETS);
      if (column + 2 < BAR_COLUMNS && fret !== other && random.chance(0.1)) {
        const [low, high] = fret < other ? [fret, other] : [other, fret];
        const [sign, from, target] = random.pick([
          ['h', low, high],
          ['p', high, low],
          ['/', low, high],
        ]);
        row.splice(column, 3, String(from), sign, String(target));
        column += 2;
      }
    }
    rows.forEach((row, i) => (cells[i] = `${cells[i] ?? ''}${row.join('')}|`));
  }
  return STRINGS.map((label, i) => `${label}|${cells[i] ?? ''}`);
}

/** The share of the bars of a song that stand there once. */
export function distinctBars(song: string): number {
  const bars: string[] = [];
  let system: string[][] = [];
  for (const line of [...song.split('\n'), '']) {
    if (/^[A-G]\d\|/.test(line)) {
      system.push(line.slice(line.indexOf('|') + 1).split('|'));
      continue;
    }
    for (let i = 0; i < (system[0]?.length ?? 1) - 1; i++) bars.push(system.map((row) => row[i]).join('\n'));
    system = [];
  }
  return new Set(bars).size / bars.length;
}

/** A song as a document that is played with: a fret typed longer lies past the neck, and shorter again it does not. */
export function tabText(bars: number, seed: number): BenchText {
  const text = tabSong(bars, seed);
  const lines = text.split('\n');
  const random = randomFrom(seed + 1);
  const strings = lines.flatMap((line, i) => (/^[A-G]\d\|/.test(line) ? [i] : []));
  const find = (pattern: RegExp): { line: number; character: number } => {
    for (;;) {
      const line = strings[random.below(strings.length)] ?? 0;
      const all = [...(lines[line] ?? '').matchAll(pattern)];
      const match = all[random.below(all.length)];
      if (match) return { line, character: match.index };
    }
  };
  const write = ({ line, character, text: typed }: Key): void => {
    const old = lines[line] ?? '';
    lines[line] = old.slice(0, character) + typed + old.slice(character + 1);
  };
  return {
    languageId: 'pegbox',
    text,
    nextKeys() {
      // A note goes a column to the right or back to the left, so that there is always one more to move.
      const toRight = random.chance(0.5);
      const { line, character } = find(toRight ? /-[5-9]--/g : /--[5-9]-/g);
      const [from, to] = toRight ? [character + 1, character + 2] : [character + 2, character + 1];
      const keys: readonly [Key, Key] = [
        { line, character: to, text: String(5 + random.below(5)) },
        { line, character: from, text: '-' },
      ];
      keys.forEach(write);
      return keys;
    },
    hoverPlace() {
      const { line, character } = find(/-\d-/g);
      return { line, character: character + 1 };
    },
  };
}

/** Notes as JSON with a schema (`JSON_SCHEMA`), up to a size in bytes; no errors. */
export function jsonText(bytes: number, seed: number): BenchText {
  const random = randomFrom(seed);
  const lines = ['{', '  "notes": ['];
  let size = 20;
  while (size < bytes) {
    const fret = 10 + random.below(20);
    const string = 1 + random.below(6);
    const line = `    { "bar": ${1000 + random.below(9000)}, "fret": ${fret}, "string": ${string}, "name": "n${random.below(100_000)}" },`;
    lines.push(line);
    size += line.length + 1;
  }
  lines[lines.length - 1] = (lines.at(-1) ?? '').slice(0, -1);
  lines.push('  ]', '}');
  return {
    languageId: 'json',
    text: lines.join('\n'),
    nextKeys() {
      const line = 2 + random.below(lines.length - 4);
      const character = (lines[line] ?? '').indexOf('"fret": ') + '"fret": '.length;
      return [
        { line, character, text: '9' },
        { line, character, text: String(1 + random.below(2)) },
      ];
    },
    hoverPlace() {
      const line = 2 + random.below(lines.length - 4);
      return { line, character: (lines[line] ?? '').indexOf('"fret"') + 2 };
    },
  };
}

/** A style sheet up to a size in bytes; no errors. */
export function cssText(bytes: number, seed: number): BenchText {
  const random = randomFrom(seed);
  const lines: string[] = [];
  let size = 0;
  while (size < bytes) {
    const rule = [
      `.bar${random.below(100_000)} .string${random.below(100)} {`,
      `  width: ${10 + random.below(90)}px;`,
      `  color: #${(0x100000 + random.below(0xe00000)).toString(16)};`,
      `  margin: ${1 + random.below(9)}px ${random.below(9)}em;`,
      '}',
    ];
    lines.push(...rule);
    size += rule.join('\n').length + 1;
  }
  const widthLine = (): number => random.below(lines.length / 5) * 5 + 1;
  return {
    languageId: 'css',
    text: lines.join('\n'),
    nextKeys() {
      const line = widthLine();
      const character = '  width: '.length;
      return [
        { line, character, text: '@' },
        { line, character, text: String(1 + random.below(9)) },
      ];
    },
    hoverPlace: () => ({ line: widthLine(), character: 4 }),
  };
}
