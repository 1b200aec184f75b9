import { formatKey } from '../key';
import { formatPitchName } from '../noteName';
import { SILENCE, type ChordContext, type ChordNaming } from './chordNaming';
import { nameSet } from './nameSet';

export type { ChordContext, ChordName, ChordNaming } from './chordNaming';

/** Beyond this from a half step, in half steps, a pitch has no name in a chord (the seventh partial is 0.31 off). */
const OFF_PITCH = 0.25;
/** Contexts whose names are remembered, and names in each: more than a document has. */
const CONTEXTS = 64;
const NAMES = 20_000;

const EMPTY: ChordContext = Object.freeze({});

type Memo = Map<number, ChordNaming>;
const byContents = new Map<string, Memo>();
let byIdentity = new WeakMap<ChordContext, Memo>();
/** A passage is named in one context, so the last one is asked first. */
let lastContext: ChordContext | undefined;
let lastMemo: Memo | undefined;

/** Whether some open string is lower than the one before it, as on a ukulele with a high fourth string. */
export function isReentrant(openMidis: readonly number[]): boolean {
  return openMidis.some((midi, i) => i > 0 && midi < (openMidis[i - 1] ?? midi));
}

/**
 * Names what sounds together, likeliest name first. Octaves and doublings do not count; the lowest pitch is the bass.
 * @param midis sounding MIDI numbers in string order, the string placed lowest first, both notes of a double course;
 * pitches more than 25 cents off a half step stay out
 * @example nameChord([48, 52, 55, 60, 64]).names[0]?.name // 'C'
 */
export function nameChord(midis: readonly number[], context: ChordContext = EMPTY): ChordNaming {
  return nameSounding(midis, context, true);
}

/** The same without the memo: for the benchmark, and for laws that must not be true by memory alone. */
export function nameChordAfresh(midis: readonly number[], context: ChordContext = EMPTY): ChordNaming {
  return nameSounding(midis, context, false);
}

function nameSounding(midis: readonly number[], context: ChordContext, remembered: boolean): ChordNaming {
  let mask = 0;
  let lowest = Infinity;
  let first = -1;
  let highest = -Infinity;
  let count = 0;
  for (const midi of midis) {
    const whole = Math.round(midi);
    if (!(Math.abs(midi - whole) <= OFF_PITCH)) continue;
    const pitchClass = ((whole % 12) + 12) % 12;
    mask |= 1 << pitchClass;
    if (first < 0) first = pitchClass;
    if (whole < lowest) lowest = whole;
    if (whole > highest) highest = whole;
    count++;
  }
  if (count === 0) return SILENCE;
  const bass = ((lowest % 12) + 12) % 12;
  const weak = context.reentrant === true && first !== bass;
  const others = mask & ~(1 << bass);
  // How far apart two notes are decides their name; of more notes only the set and the bass do.
  let spread = 0;
  if (others === 0) spread = count === 1 ? 0 : highest === lowest ? 1 : 2;
  else if ((others & (others - 1)) === 0) spread = lowestOther(midis, lowest);
  const id = mask | (bass << 12) | (weak ? 1 << 16 : 0) | (spread << 17);
  const memo = remembered ? memoOf(context) : undefined;
  let naming = memo?.get(id);
  if (!naming) {
    naming = nameSet(mask, bass, weak, spread, context);
    if (memo && memo.size >= NAMES) memo.clear();
    memo?.set(id, naming);
  }
  return naming;
}

/** The memo of all contexts that say the same. */
function memoOf(context: ChordContext): Memo {
  if (context === lastContext && lastMemo) return lastMemo;
  const memo: Memo = byIdentity.get(context) ?? memoByContents(context);
  byIdentity.set(context, memo);
  [lastContext, lastMemo] = [context, memo];
  return memo;
}

function memoByContents(context: ChordContext): Memo {
  const { key, tuningNames = [], reentrant } = context;
  const contents = [
    key ? formatKey(key) : '',
    ...tuningNames.map(formatPitchName),
    reentrant ? 'r' : '',
  ].join(' ');
  let memo = byContents.get(contents);
  if (!memo) {
    if (byContents.size >= CONTEXTS) {
      byContents.clear();
      byIdentity = new WeakMap();
    }
    byContents.set(contents, (memo = new Map<number, ChordNaming>()));
  }
  return memo;
}

/** Half steps from the lowest pitch to the lowest one of another pitch class. */
function lowestOther(midis: readonly number[], lowest: number): number {
  let other = Infinity;
  for (const midi of midis) {
    const whole = Math.round(midi);
    if (Math.abs(midi - whole) > OFF_PITCH || (whole - lowest) % 12 === 0) continue;
    if (whole < other) other = whole;
  }
  return other - lowest;
}
