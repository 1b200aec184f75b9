import { lazily } from '../lazily';
import { addedTypes, POWER, writtenTypes, type ChordType } from './chordTypes';
import { ordinal, type Degree } from './degree';

/** One way to read a set of tones above a root. */
export interface Reading {
  readonly type: ChordType;
  /** Degrees of the type that do not sound and that a player would miss. */
  readonly omitted: readonly Degree[];
  /** Rank of the type and what the omissions cost. */
  readonly cost: number;
  /** The degrees that sound. */
  readonly sounding: readonly Degree[];
  /** The degree that sounds so many half steps above the root, 1…11. */
  readonly toneAt: readonly (Degree | undefined)[];
  /** Words of the type and of what is left out. */
  readonly words: string;
}

function makeReading(type: ChordType, left: readonly Degree[], cost: number): Reading {
  const omitted = left.filter((tone) => tone.number !== 11);
  const sounding = type.degrees.filter((tone) => !left.includes(tone));
  const toneAt = Array.from({ length: 12 }, (_, i) => sounding.find(({ halfSteps }) => halfSteps === i));
  const without = omitted.map(({ number }) => ordinal(number)).join(' and the ');
  const words = [type.words, without && `without the ${without}`].filter(Boolean).join(', ');
  return Object.freeze({ type, omitted, cost, sounding, toneAt, words });
}

const NONE: readonly Reading[] = Object.freeze([]);

/** What leaving out a degree costs; an eleventh in a thirteenth is counted in by its row, so it gives back. */
function omissionCost(type: ChordType, { number }: Degree): number {
  if (number === 5) return type.symbol.endsWith('sus4') ? 4 : 2;
  if (number === 11) return -2;
  return type.symbol.includes('13') ? 2 : 3;
}

/** By the set of tones relative to a root. Some milliseconds of work, which opening a document need not wait for. */
const table = lazily(compile);

function compile(): readonly (readonly Reading[])[] {
  const readings: Reading[][] = [];
  for (const type of [...writtenTypes(), ...addedTypes()]) {
    const choices = type.optional;
    for (let choice = 0; choice < 1 << choices.length; choice++) {
      const left = choices.filter((_, i) => choice & (1 << i));
      const mask = left.reduce((bits, tone) => bits & ~(1 << tone.halfSteps), type.mask);
      const cost = left.reduce((sum, tone) => sum + omissionCost(type, tone), type.rank);
      (readings[mask] ??= []).push(makeReading(type, left, cost));
    }
  }
  return readings;
}

/** The readings of a set of tones relative to a root (bit 0 set). */
export function readingsOf(relativeMask: number): readonly Reading[] {
  return table()[relativeMask] ?? NONE;
}

/** How many readings the table holds, for its test. */
export function countReadings(): number {
  return table().reduce((sum, readings) => sum + readings.length, 0);
}

/** Types simple enough to stand over a foreign bass; those without a third pay one more. */
const UPPER_SYMBOLS = ' m dim aug sus2 sus4 7 m7 maj7 6 m6 m7b5 dim7 add9 m(add9)'.split(' ');
const upper = lazily(compileUpper);

function compileUpper(): (Reading | undefined)[] {
  const readings: (Reading | undefined)[] = [];
  for (const type of [POWER, ...writtenTypes().filter(({ symbol }) => UPPER_SYMBOLS.includes(symbol))]) {
    const thirdless = type === POWER || type.symbol.startsWith('sus');
    readings[type.mask] = makeReading(type, [], type.rank + (thirdless ? 1 : 0));
  }
  return readings;
}

/** The chord that a set is above a foreign bass, whole and nothing but; undefined for any other set. */
export function upperReading(relativeMask: number): Reading | undefined {
  return upper()[relativeMask];
}

/** The simplest type with exactly this full set of tones. */
export function typeOfFullSet(mask: number): ChordType | undefined {
  if (mask === POWER.mask) return POWER;
  return readingsOf(mask).find(({ type }) => type.mask === mask)?.type;
}
