import type { Header } from '../../notation/header';
import { fingerboardOf } from '../../notation/headerViews';
import type { Target } from '../../playing/target';
import { failed, ok, type Result } from '../../music/result';

/** A place of the hand along the neck: the frets that it stops without moving, as frets are written. */
export interface Position {
  /** As in `D dorian, position 5`. */
  readonly words: string;
  readonly openStrings: boolean;
  /** One finger a fret. */
  readonly first: number;
  readonly last: number;
  /** The same with the first finger a fret back and the fourth a fret up. */
  readonly back: number;
  readonly up: number;
}

/** Frets under four fingers, one each. */
const FINGERS = 4;

/**
 * The frets of a position: under the index finger and the three above it, one finger a fret (common practice); a fret
 * to either side may be reached. The open position has open strings and the first four frets.
 * Error: `position`, a fret at which the hand cannot stand on this neck.
 */
export function readPosition(position: number | 'open', header: Header): Result<Position> {
  if (position === 'open')
    return ok({ words: 'open position', openStrings: true, first: 0, last: FINGERS, back: 0, up: FINGERS });
  const most = highestFret(header) - FINGERS + 1;
  if (!Number.isInteger(position) || position < 1 || position > most)
    return failed(
      'position',
      `A position is the fret of the index finger, 1 to ${most} on this neck, or open; ${position} is none.`,
      0,
      String(position).length,
    );
  return ok({
    words: `position ${position}`,
    openStrings: false,
    first: position,
    last: position + FINGERS - 1,
    back: Math.max(1, position - 1),
    up: position + FINGERS,
  });
}

/** The highest number that can be written on any string. */
function highestFret(header: Header): number {
  const board = fingerboardOf(header);
  const mosts = header.tuning.strings.map((_, index) => {
    let fret = board.frets;
    while (fret > 0 && !board.read(index, fret).ok) fret -= 1;
    return fret;
  });
  return Math.max(0, ...mosts);
}

/** The sounding MIDI numbers within a position, from the lowest up; `reach` takes in the frets to either side. */
export function pitchesIn(
  { openStrings, first, last, back, up }: Position,
  header: Header,
  reach: boolean,
): readonly number[] {
  const board = fingerboardOf(header);
  const found = new Set<number>();
  header.tuning.strings.forEach((_, index) => {
    if (openStrings) found.add(Math.round(board.openMidi(index)));
    for (let fret = reach ? back : first; fret <= (reach ? up : last); fret++) {
      const [midi] = fret > 0 ? (board.pitches(index, fret) ?? []) : [];
      if (midi !== undefined) found.add(Math.round(midi));
    }
  });
  return [...found].filter(Number.isFinite).sort((a, b) => a - b);
}

/**
 * A neck on which a pitch has only those places that a position offers: under the four fingers, where there is one;
 * else a fret to the side; else, when the hand must leave its position, all that there are.
 */
export function inPosition(position: Position, target: Target): Target {
  const { fingerboard } = target;
  const strings = fingerboard.tuning.strings.map((_, index) => index);
  const known = new Map<number, readonly [number, number]>();
  const limits = (midi: number): readonly [number, number] => {
    let found = known.get(midi);
    if (found) return found;
    const frets = strings.flatMap((index) => fingerboard.fretFor(index, midi) ?? []);
    const has = (low: number, high: number): boolean =>
      frets.some((fret) => (fret === 0 ? position.openStrings : fret >= low && fret <= high));
    const { first, last, back, up } = position;
    if (has(first, last)) found = [first, last];
    else found = has(back, up) ? [back, up] : [0, Infinity];
    known.set(midi, found);
    return found;
  };
  return {
    ...target,
    fingerboard: {
      ...fingerboard,
      fretFor(index, midi) {
        const fret = fingerboard.fretFor(index, midi);
        if (fret === undefined) return undefined;
        const [low, high] = limits(midi);
        if (fret === 0) return position.openStrings ? 0 : undefined;
        return fret >= low && fret <= high ? fret : undefined;
      },
    },
  };
}
