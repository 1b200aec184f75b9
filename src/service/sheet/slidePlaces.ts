import type { Fingerboard } from '../../instrument/sounding';
import { stringNumber } from '../../instrument/tuning';
import { writtenMask, type WrittenChord } from '../../music/chord/writtenChord';
import { pitchClassOf } from '../../music/noteName';

/** One string under a bar. */
export interface UnderBar {
  /** Index in `tuning.strings`. */
  readonly index: number;
  readonly fret: number;
  /** As it sounds. */
  readonly midi: number;
}

/** A bar over neighbouring strings, low string first, that sounds nothing but tones of a chord. */
export interface BarPlace {
  readonly fret: number;
  /** Frets from one string to the next. */
  readonly slant: number;
  readonly strings: readonly UnderBar[];
  /** Half steps above the root of the chord's tones that do not sound. */
  readonly leavesOut: readonly number[];
}

/** How far up the neck is looked: an octave, after which everything comes again. */
const LAST_FRET = 12;
/** Strings under a straight bar, and under a slanted one, and how far it slants (playing-conventions §5.3, from memory). */
const GROUP = { straight: 4, slanted: 3, least: 2, slant: 2 } as const;

/**
 * Every place of a bar over 2 to 4 neighbouring strings that gives a chord: straight, or slanted by one or two frets
 * from string to string over 2 or 3. Nothing but tones of the chord sounds, and what names it (third, seventh …) does;
 * where the tuning has no such place, straight ones with less are given. A group within a larger one that sounds as
 * much is left out. Complete ones first, straight before slanted, low before high.
 * @param shift the full capo's fret: the chord is named as played
 */
export function slidePlaces(board: Fingerboard, chord: WrittenChord, shift: number): readonly BarPlace[] {
  const root = ((chord.root ? pitchClassOf(chord.root) : 0) + shift) % 12;
  const all = writtenMask(chord);
  const must = writtenMask(chord, 'must') & ~1;
  const found = [0, 1, -1, 2, -2].flatMap((slant) => groupsAt(board, root, all, slant));
  const whole = found.filter(({ mask }) => (mask & must) === must);
  const given = whole.length > 0 ? whole : found.filter(({ slant, mask }) => slant === 0 && (mask & 1) === 1);
  return given
    .filter((place) => !given.some((other) => within(place, other)))
    .sort(
      (a, b) =>
        a.leavesOut.length - b.leavesOut.length ||
        Math.abs(a.slant) - Math.abs(b.slant) ||
        a.fret - b.fret ||
        b.strings.length - a.strings.length,
    )
    .map(({ fret, slant, strings, leavesOut }) => ({ fret, slant, strings, leavesOut }));
}

interface Group extends BarPlace {
  /** Half steps above the root that sound, as bits. */
  readonly mask: number;
}

function groupsAt(board: Fingerboard, root: number, all: number, slant: number): readonly Group[] {
  const count = board.tuning.strings.length;
  const most = slant === 0 ? GROUP.straight : GROUP.slanted;
  const groups: Group[] = [];
  for (let first = 0; first < count; first++) {
    for (let fret = 0; fret <= LAST_FRET; fret++) {
      const strings: UnderBar[] = [];
      let mask = 0;
      for (let index = first; index < Math.min(count, first + most); index++) {
        const under = underBar(board, index, fret + slant * (index - first), slant);
        const tone = under && toneOf(under.midi, root);
        if (!under || tone === undefined || (all & (1 << tone)) === 0) break;
        strings.push(under);
        mask |= 1 << tone;
        if (strings.length < GROUP.least || (mask & (mask - 1)) === 0) continue;
        groups.push({ fret, slant, strings: [...strings], leavesOut: bitsOf(all & ~mask), mask });
      }
    }
  }
  return groups;
}

/** A slanted bar touches every string above the nut; a straight one at 0 is no bar, and the strings are open. */
function underBar(board: Fingerboard, index: number, fret: number, slant: number): UnderBar | undefined {
  if (fret < 0 || (slant !== 0 && fret < 1)) return undefined;
  if ((board.tuning.strings[index]?.firstFret ?? 0) > 0) return undefined;
  const midi = board.pitches(index, fret)?.[0];
  return midi === undefined ? undefined : { index, fret, midi };
}

function toneOf(midi: number, root: number): number {
  return (((Math.round(midi) - root) % 12) + 12) % 12;
}

function bitsOf(mask: number): readonly number[] {
  return Array.from({ length: 12 }, (_, bit) => bit).filter((bit) => (mask & (1 << bit)) !== 0);
}

/** Whether one place is part of another that lies in the same way and leaves out no more. */
function within(place: Group, other: Group): boolean {
  if (place === other || place.slant !== other.slant || place.strings.length >= other.strings.length)
    return false;
  return place.strings.every(({ index, fret }) =>
    other.strings.some((one) => one.index === index && one.fret === fret),
  );
}

/** A third under a bar, against the just one. */
export interface ThirdUnderBar {
  readonly low: number;
  readonly high: number;
  readonly kind: 'major' | 'minor';
  /** How much wider (+) or narrower (−) than the just third, octaves aside. */
  readonly cents: number;
}

/** Just thirds, 5/4 and 6/5, in cents (strings-and-frets §2.7: −13.69 and +15.64 from the tempered ones). */
const JUST = { major: 1200 * Math.log2(5 / 4), minor: 1200 * Math.log2(6 / 5) } as const;

/**
 * Every third between two strings of a place, and how far it is from just; string numbers are the player's.
 * @example thirdsUnder(board, place) // [{ low: 3, high: 2, kind: 'major', cents: 13.7 }]
 */
export function thirdsUnder(board: Fingerboard, { strings }: BarPlace): readonly ThirdUnderBar[] {
  return strings.flatMap((low) =>
    strings.flatMap((high) => {
      const cents = ((((high.midi - low.midi) * 100) % 1200) + 1200) % 1200;
      const size = Math.round(cents / 100);
      if (high.midi <= low.midi || (size !== 3 && size !== 4)) return [];
      const kind = size === 4 ? ('major' as const) : ('minor' as const);
      return [
        {
          low: stringNumber(board.tuning, low.index),
          high: stringNumber(board.tuning, high.index),
          kind,
          cents: Math.round((cents - JUST[kind]) * 10) / 10,
        },
      ];
    }),
  );
}
