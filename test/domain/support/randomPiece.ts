import fc from 'fast-check';
import { findInstrument } from '../../../src/instrument/instruments';
import type { Instrument } from '../../../src/instrument/instrument';
import { stepsFrom } from '../../../src/instrument/tuningFormat';
import { readTuning } from '../../../src/instrument/tuningValue';
import type { Tuning } from '../../../src/instrument/tuning';
import { tuningsFor } from '../../../src/instrument/tunings';
import { formatNoteName, formatPitchName } from '../../../src/music/noteName';

/*
 * Pieces as a careful player writes them: a tuning of the trade, labels that agree with it, bar signs in line, and
 * nothing that a hand could not do. Nothing in them is to be told.
 */

const INSTRUMENTS = [
  'guitar',
  'bass',
  'ukulele',
  'banjo',
  'mandolin',
  '12-string guitar',
  'baritone guitar',
  'lap steel',
];

/** A meter, the columns of its bars, and what may be counted over each of them. */
interface Grid {
  readonly meter: string;
  readonly columns: number;
  /** Columns at which notes may begin. */
  readonly step: number;
  readonly count: string;
}

const GRIDS: readonly Grid[] = [
  { meter: '4/4', columns: 32, step: 4, count: '1   &   2   &   3   &   4   &   ' },
  { meter: '3/4', columns: 24, step: 4, count: '1   &   2   &   3   &   ' },
  { meter: '2/4', columns: 16, step: 4, count: '1   &   2   &   ' },
  { meter: '5/4', columns: 40, step: 4, count: '1   &   2   &   3   &   4   &   5   &   ' },
  { meter: '6/8', columns: 24, step: 4, count: '1   &   a   2   &   a   ' },
  { meter: '12/8', columns: 48, step: 4, count: '1   &   a   2   &   a   3   &   a   4   &   a   ' },
  { meter: '7/8', columns: 28, step: 4, count: '1   2   3   4   5   6   7   ' },
];

/** What a stopped note may carry, within four columns; `f` is its fret. */
const SIGNS: readonly ((f: number) => string)[] = [
  (f) => String(f),
  (f) => `${f}~`,
  (f) => `(${f})`,
  (f) => `${f}h${f + 1}`,
  (f) => `${f}/${f + 2}`,
  (f) => (f > 2 ? `${f}p${f - 1}` : String(f)),
  (f) => (f > 2 ? `${f}\\${f - 1}` : String(f)),
  (f) => `${f}b`,
];

/** Signs that stay within the room of one slot. */
const ROOM = 3;

interface Choices {
  /** A number below `n`. */
  below(n: number): number;
}

/** A whole document, at random. */
export function randomPiece(): fc.Arbitrary<string> {
  return fc.infiniteStream(fc.nat({ max: 1_000_000 })).map((stream) => {
    const numbers = stream[Symbol.iterator]();
    return writePiece({ below: (n) => Number(numbers.next().value) % n });
  });
}

function writePiece(choices: Choices): string {
  const instrument = pick(
    choices,
    INSTRUMENTS.map(findInstrument).filter((found) => found !== undefined),
  );
  const { tuning, value } = pickTuning(choices, instrument);
  const grid = pick(choices, GRIDS);
  const capo = choices.below(3) === 0 ? 1 + choices.below(4) : 0;
  const fields = [
    'title: Low Tide',
    ...(instrument.name === 'guitar' ? [] : [`instrument: ${instrument.name}`]),
    `tuning: ${value}`,
    ...(capo > 0 ? [`capo: ${capo}`] : []),
    `meter: ${grid.meter}`,
  ];
  const systems = Array.from({ length: 1 + choices.below(4) }, (_, i) => {
    const heading = i > 0 && choices.below(3) === 0 ? `[Part ${i}]\nLet the strings ring.\n\n` : '';
    return heading + writeSystem(choices, instrument, tuning, grid, capo);
  });
  return `${fields.join('\n')}\n\n${systems.join('\n')}`;
}

/** A tuning of the trade that raises no string far above its usual pitch. */
function pickTuning(choices: Choices, instrument: Instrument): { tuning: Tuning; value: string } {
  const usual = readTuning(instrument.usualTuning, { instrument });
  if (!usual.ok) throw new Error(usual.error.message);
  const values = tuningsFor(instrument)
    .map(({ name }) => name)
    .flatMap((value) => {
      const read = readTuning(value, { instrument });
      if (!read.ok || stepsFrom(usual.value, read.value).some((steps) => (steps ?? 0) > 2)) return [];
      return [{ tuning: read.value, value }];
    });
  return pick(choices, values);
}

function writeSystem(
  choices: Choices,
  instrument: Instrument,
  tuning: Tuning,
  grid: Grid,
  capo: number,
): string {
  const bars = 1 + choices.below(4);
  const octaves = choices.below(2) === 0;
  const slots = (grid.columns / grid.step) * bars;
  const count = tuning.strings.length;
  const cells = Array.from({ length: count }, () => Array.from({ length: slots }, () => ''));
  for (let slot = 0; slot < slots; slot++) writeOnset(choices, instrument, tuning, capo, cells, slot);
  const width = 7;
  const repeat = choices.below(4) === 0;
  const lines = cells.map((line, index) => {
    const pitches = tuning.strings[index]?.pitches ?? [];
    const names = pitches.map(({ name }) => (octaves ? formatNoteName(name) : formatPitchName(name)));
    const label = [...new Set(names)].join('/');
    let body = '';
    for (let bar = 0; bar < bars; bar++) {
      const each = slots / bars;
      const texts = line.slice(bar * each, (bar + 1) * each).map((text) => text.padEnd(grid.step, '-'));
      body += `${texts.join('')}${repeat && bar === bars - 1 ? ':' : ''}|`;
    }
    return `${label.padEnd(width)}|${repeat ? ':' : ''}${body}`;
  });
  const row = choices.below(2) === 0 || grid.meter === '7/8' ? [countRow(grid, bars, width, repeat)] : [];
  return `${[...row, ...lines.reverse()].join('\n')}\n`;
}

function countRow(grid: Grid, bars: number, width: number, repeat: boolean): string {
  return `${'count'.padEnd(width)}|${repeat ? ' ' : ''}${`${grid.count}|`.repeat(bars)}`;
}

/** Notes that one hand can stop together: all within three frets, or open. */
function writeOnset(
  choices: Choices,
  instrument: Instrument,
  tuning: Tuning,
  capo: number,
  cells: string[][],
  slot: number,
): void {
  const notes = choices.below(4);
  const position = 5 + choices.below(5);
  const chosen = new Set(Array.from({ length: notes }, () => choices.below(cells.length)));
  for (const index of chosen) {
    const line = cells[index];
    if (!line) continue;
    const first = tuning.strings[index]?.firstFret ?? 0;
    line[slot] = writeNote(choices, {
      fret: Math.max(position, first + 2) + choices.below(2),
      together: chosen.size,
      harmonics: capo === 0 && first === 0,
    });
    if (instrument.slide && chosen.size > 1) line[slot] = String(position);
  }
}

interface Place {
  readonly fret: number;
  /** How many notes begin with it. */
  readonly together: number;
  /** Whether whole frets have their usual harmonics: not on a string that begins up the neck. */
  readonly harmonics: boolean;
}

function writeNote(choices: Choices, { fret, together, harmonics }: Place): string {
  switch (choices.below(8)) {
    case 0:
    case 1:
      return '0';
    case 2:
      return 'x';
    case 3:
      return harmonics && together === 1 ? pick(choices, ['<7>', '<5>']) : '0';
    default: {
      // With others held, what is hammered or slid to must be in reach as well.
      const text = pick(choices, together === 1 ? SIGNS : SIGNS.slice(0, 3))(fret);
      return text.length <= ROOM ? text : String(fret);
    }
  }
}

function pick<T>(choices: Choices, from: readonly T[]): T {
  const item = from[choices.below(from.length)];
  if (item === undefined) throw new Error('Nothing to pick from.');
  return item;
}
